import { ownedLine, type OwnedLine } from '../../reading/typed/owned-line.js';
import { idTyped } from '../document/own-typed.js';
import type { ToldThing } from '../worker/told-shelf.js';

/** What was found of a line for what is owned. */
export type OwnedFound = {
  /** Of the shop and of what is owned, by the words of their names. */
  readonly found: readonly ToldThing[];
  /** The line as a label; null where it is empty, or names something. */
  readonly read: OwnedLine | null;
  /** What is called so already, and not typed in anew. */
  readonly taken: ToldThing | null;
};

/** Names that have all words of the line in them come first; all else is read as a label. */
export function ownedFound(line: string, things: readonly ToldThing[]): OwnedFound {
  const words = line
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const isEmpty = words.length === 0;
  const found = isEmpty ? [] : things.filter(({ name }) => words.every((word) => name.toLowerCase().includes(word)));
  const read = isEmpty || found.length > 0 ? null : ownedLine(line);
  const id = read === null || read.kind === 'unclear' ? null : idTyped(read);
  return { found, read, taken: things.find((thing) => thing.id === id) ?? null };
}

/** What to do about a name that is there already: with the button beside it, or where it is not owned yet by its name alone. */
export const takenText = ({ name, units }: ToldThing): string =>
  `That is there already: ${units > 0 ? 'press + for more of it' : `write ${name} alone to have it`}, or add a word to its name that tells them apart.`;
