import { withEntries } from './add-to-list.js';
import type { DraftEntry } from './entry.js';

/** What is to be added to a list of a file. */
export type Addition = { readonly list: string; readonly entry: DraftEntry };

/** A text with all additions; `untold` are those that its form has no room for. Null when nothing can be added to it. */
export function withAdditions(
  text: string,
  additions: readonly Addition[],
): { readonly text: string; readonly untold: readonly DraftEntry[] } | null {
  let current = text;
  const untold: DraftEntry[] = [];
  for (const list of new Set(additions.map((addition) => addition.list))) {
    const entries = additions.filter((addition) => addition.list === list).map(({ entry }) => entry);
    const extended = withEntries(current, list, entries);
    if (extended.kind === 'closed') return null;
    current = extended.text;
    untold.push(...extended.untold);
  }
  return { text: current, untold };
}
