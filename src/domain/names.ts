import { listed, quoted } from './shown-text.js';

/** Names as they are compared: capitals and blanks around them make no difference. */
export const plainName = (name: string): string => name.trim().toLowerCase();

/** A thing with an id and a name. */
export type Called = { readonly id: string; readonly name: string };

/**
 * The ids of all things that a text may mean: the one whose id it is, else those that have it for a name. People take names
 * where ids are asked for; a name is as good as an id when only one thing has it.
 */
export function idsMeant<Thing extends Called>(text: string, things: Iterable<Thing>): readonly Thing['id'][] {
  const named: Thing['id'][] = [];
  for (const { id, name } of things) {
    if (id === text) return [id];
    if (plainName(name) === plainName(text)) named.push(id);
  }
  return named;
}

/** A sentence for a name that several things have. */
export const severalFault = (name: string, ids: readonly string[]): string =>
  `${quoted(name)} is the name of ${ids.length} things. Write the id of the one that is meant: ${listed(ids, 'or')}.`;
