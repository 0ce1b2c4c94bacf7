import { plainName } from '../../domain/names.js';
import { listed } from '../../domain/shown-text.js';
import type { Shelf } from './resolve-for-sale.js';

/** The id that a text stands for: its own, or that of the only thing that has it for a name; else the text as it is. */
export function idNamed<Id extends string>(text: string, shelf: Shelf<Id, unknown>): string {
  const ids = idsCalled(text, shelf);
  const [only] = ids;
  return ids.length === 1 && only !== undefined ? only : text;
}

/** That several things have a text for a name, as the end of a sentence; null when they do not. */
export function severalCalled(text: string, shelf: Shelf<string, unknown>): string | null {
  const { length } = idsCalled(text, shelf);
  return length > 1 ? `is the name of ${length} things` : null;
}

/** How to say which of several things with that name is meant; null when there are no several. */
export function oneOfThem(text: string, shelf: Shelf<string, unknown>): string | null {
  const ids = idsCalled(text, shelf);
  return ids.length > 1 ? `Write the id of the one that is meant: ${listed(ids, 'or')}.` : null;
}

function idsCalled<Id extends string>(text: string, { byId, byName }: Shelf<Id, unknown>): readonly Id[] {
  const all: ReadonlyMap<string, unknown> = byId;
  return all.has(text) ? [] : (byName.get(plainName(text)) ?? []);
}
