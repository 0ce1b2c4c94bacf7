import { escapeMarkdown } from './markdown-text.js';
import type { Passage } from '../words/reasons.js';

/** Lines of Markdown, in which every text is escaped. */
export type Lines = readonly string[];

export const text = escapeMarkdown;
export const paragraph = (words: string): Lines => [text(words), ''];
/** Nothing at all for no items. */
export const bullets = (items: readonly string[]): Lines =>
  items.length === 0 ? [] : [...items.map((item) => `- ${text(item)}`), ''];

/** A heading with what follows; nothing at all when nothing does. */
export const section = (title: string, lines: Lines): Lines =>
  lines.length === 0 ? [] : [`## ${text(title)}`, '', ...lines];

/** What a passage says, with all that stands below its entries. */
export const passageLines = ({ title, entries }: Passage): Lines =>
  section(title, [
    ...entries.flatMap(({ name, text: words, below }) => [
      name === null ? `- ${text(words)}` : `- **${text(name)}** ${text(words)}`,
      ...below.map((line) => `  - ${text(line)}`),
    ]),
    '',
  ]);

/** A table whose cells are escaped; the columns of these numbers are set to the right. */
export function table(
  columns: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): Lines {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const rule = columns.map((_, at) => (right.includes(at) ? '--:' : '---'));
  return [line(columns), line(rule), ...rows.map((row) => line(row.map(text))), ''];
}

/** Without blank lines at the end. */
export const trimmed = (lines: Lines): Lines => lines.slice(0, lines.findLastIndex((line) => line !== '') + 1);
