import { escapedText } from '../../domain/shown-text.js';
import { flowText } from '../text/yaml-text.js';

/** A key of an entry that is to be written, with a remark for whoever reads the file. */
export type Field = {
  readonly key: string;
  /** Null when it is not known: it is then written as `…`, in a comment. */
  readonly value: unknown;
  readonly remark?: string | undefined;
};

/** Where remarks begin, counted from the entry's own keys. */
const remarkColumn = 28;

/** A key with its value and its remark, without indentation. */
function fieldLine({ key, value, remark }: Field): string {
  const text = `${key}: ${value === null ? '…' : flowText(value)}`;
  // A remark may hold a name, which may hold anything.
  return remark === undefined ? text : `${text.padEnd(remarkColumn - 1)} # ${escapedText(remark)}`;
}

/** An entry of a list, a key a line. */
const itemLines = (fields: readonly Field[]): readonly string[] =>
  fields.map((field, index) => `${index === 0 ? '- ' : '  '}${fieldLine(field)}`);

/** Text for people, as comment lines of the file. */
const commentLines = (lines: readonly string[]): readonly string[] =>
  lines.map((line) => (line === '' ? '#' : `# ${escapedText(line)}`));

/** The entry as data. */
export const dataOf = (fields: readonly Field[]): Readonly<Record<string, unknown>> =>
  Object.fromEntries(fields.map(({ key, value }) => [key, value]));

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
