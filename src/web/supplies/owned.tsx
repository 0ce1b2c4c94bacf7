import { useId, useState } from 'preact/hooks';

import { supplyLine } from '../../reading/typed/supply-line.js';
import { supplyReadBack } from '../../report/words/supply-read-back.js';
import { labelAgrees, owningAnother, owningOneLess, owningTyped } from '../document/change-supplies.js';
import type { PageState } from '../page-state.js';
import type { ToldThing } from '../worker/told-shelf.js';

/** What is owned already: picked from the shop, or typed as its label describes it. */
export function Owned({ state }: { readonly state: PageState }) {
  const { things } = state.heard.value;
  const owned = things.filter(({ units }) => units > 0);
  return (
    <details open={owned.length > 0}>
      <summary>What you own already{owned.length > 0 ? ` (${owned.length})` : ''}</summary>
      <ul class="owned-list" aria-label="What you own">
        {owned.map((thing) => (
          <OwnedThing key={thing.id} thing={thing} state={state} />
        ))}
      </ul>
      <OwnedLine state={state} things={things} />
    </details>
  );
}

function OwnedThing({
  thing: { kind, id, name, units, taken },
  state,
}: {
  readonly thing: ToldThing;
  readonly state: PageState;
}) {
  return (
    <li>
      <span>
        {units} × {name}
        {taken !== '' && <span class="minor"> Taken to be so: {taken}.</span>}
      </span>
      {taken !== '' && (
        <button type="button" class="quiet" onClick={() => state.change(labelAgrees(id))}>
          Its label agrees<span class="unseen">: {name}</span>
        </button>
      )}
      <button type="button" aria-label={`One ${name} less`} onClick={() => state.change(owningOneLess(kind, id))}>
        −
      </button>
      <button type="button" aria-label={`One ${name} more`} onClick={() => state.change(owningAnother(kind, id))}>
        +
      </button>
    </li>
  );
}

const mostFound = 8;

/** One line for either: names of the shop that have its words in them are offered, all else is read as a label. */
function OwnedLine({ state, things }: { readonly state: PageState; readonly things: readonly ToldThing[] }) {
  const id = useId();
  const [line, type] = useState('');
  const words = line
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const found =
    words.length === 0 ? [] : things.filter(({ name }) => words.every((word) => name.toLowerCase().includes(word)));
  const read = line.trim() === '' || found.length > 0 ? null : supplyLine(line);
  const isTaken = read?.kind === 'supply' && things.some(({ name }) => name === read.draft.name);
  const pick = ({ kind, id: picked }: ToldThing): void => {
    state.change(owningAnother(kind, picked));
    type('');
  };
  const take = (): void => {
    const [first] = found;
    if (first !== undefined) pick(first);
    else if (read?.kind === 'supply' && !isTaken) {
      state.change(owningTyped(read.draft, read.taken));
      type('');
    }
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <label for={id}>A supply, a lead or a battery that you own, by its name in the shop or by its label</label>
      <div class="type-line-row">
        <input
          id={id}
          type="text"
          autocomplete="off"
          placeholder="old box 6 isolated 9v 150, total 1500"
          value={line}
          aria-invalid={read?.kind === 'unclear' || isTaken}
          aria-describedby={`${id}-read`}
          onInput={({ currentTarget }) => type(currentTarget.value)}
        />
        <button type="submit" disabled={found.length === 0 && (read?.kind !== 'supply' || isTaken)}>
          Add
        </button>
      </div>
      <div id={`${id}-read`} class="understood" aria-live="polite">
        {saidOf(read, isTaken).map((text) => (
          <p key={text}>{text}</p>
        ))}
      </div>
      <Offers found={found} pick={pick} />
    </form>
  );
}

function saidOf(read: ReturnType<typeof supplyLine> | null, isTaken: boolean): readonly string[] {
  if (isTaken) return ['That name is there already: add a word that tells them apart.'];
  if (read === null) return [];
  return read.kind === 'supply' ? supplyReadBack(read.draft, read.taken).split('\n') : read.faults;
}

type OffersProps = { readonly found: readonly ToldThing[]; readonly pick: (thing: ToldThing) => void };

const Offers = ({ found, pick }: OffersProps) => (
  <ul class="offers" aria-label="In the shop">
    {found.slice(0, mostFound).map((thing) => (
      <li key={thing.id}>
        <button type="button" onClick={() => pick(thing)}>
          {thing.name}
        </button>
      </li>
    ))}
  </ul>
);
