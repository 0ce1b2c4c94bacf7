import type { OwnedLine as ReadLine } from '../../reading/typed/owned-line.js';
import { ownedReadBack } from '../../report/words/owned-read-back.js';
import { LineHelp } from '../board/line-help.js';
import { labelAgrees, owningAnother, owningOneLess } from '../document/change-supplies.js';
import { owningTyped } from '../document/own-typed.js';
import type { PageDocument } from '../document/page-document.js';
import type { PageState } from '../page-state.js';
import type { ToldThing } from '../worker/told-shelf.js';
import { ownedFound, takenText } from './owned-found.js';
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
        <button type="button" class="quiet" onClick={() => state.change(labelAgrees(kind, id))}>
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
  const line = state.document.value.ownedLine;
  const { found, read, taken } = ownedFound(line, things);
  const told = taken !== null || read === null || read.kind === 'unclear' ? null : read;
  const owning = (change: (document: PageDocument) => PageDocument): void =>
    state.change((document) => ({ ...change(document), ownedLine: '' }));
  const pick = ({ kind, id }: ToldThing): void => owning(owningAnother(kind, id));
  const take = (): void => {
    const [first] = found;
    if (first !== undefined) pick(first);
    else if (told !== null) owning(owningTyped(told));
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <label for="owned-line">
        A supply, a lead or a battery that you own, by its name in the shop or by what it is
      </label>
      <div class="type-line-row">
        <input
          id="owned-line"
          type="text"
          autocomplete="off"
          placeholder="old box 6 isolated 9v 150, total 1500"
          value={line}
          aria-invalid={read?.kind === 'unclear' || taken !== null}
          aria-describedby="owned-line-read"
          onInput={({ currentTarget: { value } }) => state.change((document) => ({ ...document, ownedLine: value }))}
        />
        <button type="submit" disabled={found.length === 0 && told === null}>
          Add
        </button>
      </div>
      <div id="owned-line-read" class="understood" aria-live="polite">
        {saidOf(read, taken).map((text) => (
          <p key={text}>{text}</p>
        ))}
      </div>
      <Offers found={found} pick={pick} />
      <LineHelp summary="What can be told here" words={ownedWords} />
    </form>
  );
}

function saidOf(read: ReadLine | null, taken: ToldThing | null): readonly string[] {
  if (taken !== null) return [takenText(taken)];
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
