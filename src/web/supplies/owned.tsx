import { useId, useState } from 'preact/hooks';

import { ownedLine, type OwnedLine } from '../../reading/typed/owned-line.js';
import { ownedReadBack } from '../../report/words/owned-read-back.js';
import { LineHelp } from '../board/line-help.js';
import { labelAgrees, owningAnother, owningOneLess } from '../document/change-supplies.js';
import { idTyped, owningTyped } from '../document/own-typed.js';
import type { PageState } from '../page-state.js';
import type { ToldThing } from '../worker/told-shelf.js';
import { ownedWords } from './owned-words.js';

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
  const read = line.trim() === '' || found.length > 0 ? null : ownedLine(line);
  const told = read === null || read.kind === 'unclear' ? null : read;
  const isTaken = told !== null && things.some(({ id: taken }) => taken === idTyped(told));
  const pick = ({ kind, id: picked }: ToldThing): void => {
    state.change(owningAnother(kind, picked));
    type('');
  };
  const take = (): void => {
    const [first] = found;
    if (first !== undefined) pick(first);
    else if (told !== null && !isTaken) {
      state.change(owningTyped(told));
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
      <label for={id}>A supply, a lead or a battery that you own, by its name in the shop or by what it is</label>
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
        <button type="submit" disabled={found.length === 0 && (told === null || isTaken)}>
          Add
        </button>
      </div>
      <div id={`${id}-read`} class="understood" aria-live="polite">
        {saidOf(read, isTaken).map((text) => (
          <p key={text}>{text}</p>
        ))}
      </div>
      <Offers found={found} pick={pick} />
      <LineHelp summary="What can be told here" words={ownedWords} />
    </form>
  );
}

function saidOf(read: OwnedLine | null, isTaken: boolean): readonly string[] {
  if (isTaken)
    return ['That is there already: press + for more of it, or add a word to its name that tells them apart.'];
  return read === null ? [] : ownedReadBack(read);
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
