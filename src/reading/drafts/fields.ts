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
export const itemLines = (fields: readonly Field[]): readonly string[] =>
  fields.map((field, index) => `${index === 0 ? '- ' : '  '}${fieldLine(field)}`);

/** Text for people, as comment lines of the file. */
export const commentLines = (lines: readonly string[]): readonly string[] =>
  lines.map((line) => (line === '' ? '#' : `# ${escapedText(line)}`));

/** The entry as data. */
export const dataOf = (fields: readonly Field[]): Readonly<Record<string, unknown>> =>
  Object.fromEntries(fields.map(({ key, value }) => [key, value]));
