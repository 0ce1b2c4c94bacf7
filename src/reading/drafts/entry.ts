import { flowText } from '../text/yaml-text.js';
import { commentLines, dataOf, itemLines, type Field } from './fields.js';

/** A thing that is to be written into a list of a file. */
export type DraftEntry = {
  readonly name: string;
  readonly fields: readonly Field[];
  /** What must be known before it can be used, and where to find it; nothing when it is whole. */
  readonly missing: readonly { readonly key: string; readonly lookFor: string }[];
  /** Written on one line. */
  readonly inline?: boolean;
};

/** Whether plans may count on it. */
export const isWhole = ({ missing }: DraftEntry): boolean => missing.length === 0;

/** The lines of an entry that is whole; of another one a comment that says what to look for. */
export function entryLines(entry: DraftEntry): readonly string[] {
  if (entry.inline === true) return [`- ${flowText(dataOf(entry.fields))}`];
  if (isWhole(entry)) return itemLines(entry.fields);
  return commentLines([
    '',
    `Left out of every plan until this is known: ${entry.name}`,
    ...entry.missing.map(({ key, lookFor }) => `  ${key}: look for ${lookFor}.`),
    'Then write it for each …, and take the signs # off these lines:',
    ...itemLines(entry.fields),
  ]);
}
