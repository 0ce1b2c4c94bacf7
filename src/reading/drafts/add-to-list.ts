import { isMap, isSeq, parseDocument, type ParsedNode, type YAMLMap } from 'yaml';

import { listOf, type Data } from '../text/data.js';
import { columnOf, endOfLine, isNothing, lineEndOf, pairOf, saysWithList } from '../text/text-edits.js';
import { flowText } from '../text/yaml-text.js';
import { dataOf, entryLines, isWhole, type DraftEntry } from './entry.js';

/** A file with more in one of its lists, everything else as it was; or why nothing can be added. */
type Extended =
  | {
      readonly kind: 'extended';
      readonly text: string;
      /** What the file's form has no room for: JSON has no comments. */
      readonly untold: readonly DraftEntry[];
    }
  | { readonly kind: 'closed' };

/**
 * Adds entries to the list under a key of a YAML or JSON file. The document is read to find the place; the lines are put
 * there, so that comments, order and layout of all the rest stay as they are.
 */
export function withEntries(text: string, key: string, entries: readonly DraftEntry[]): Extended {
  const document = parseDocument(text);
  if (document.errors.length > 0 || !isMap(document.contents)) return { kind: 'closed' };
  const root = document.contents;
  const edited = root.flow === true ? inFlow(text, root, key, entries) : inBlock(text, root, key, entries);
  if (edited === null) return { kind: 'closed' };
  const data = document.toJS() as Data;
  return saysWithList(edited, data, key, [...listOf(data[key]), ...wholeData(entries)])
    ? { kind: 'extended', text: edited, untold: root.flow === true ? entries.filter((entry) => !isWhole(entry)) : [] }
    : { kind: 'closed' };
}

const wholeData = (entries: readonly DraftEntry[]) => entries.filter(isWhole).map(({ fields }) => dataOf(fields));

function inBlock(text: string, root: YAMLMap.Parsed, key: string, entries: readonly DraftEntry[]): string | null {
  const pair = pairOf(root, key);
  const lines = entries.flatMap(entryLines);
  if (pair === null) return withLines(text, text.length, [`${key}:`, ...indented(lines, 2)]);
  const value: ParsedNode | null = pair.value;
  if (value === null || isNothing(value))
    return withLines(text, endOfLine(text, pair.key.range[1]), indented(lines, 2));
  if (!isSeq(value)) return null;
  const list = value;
  const last = list.items.at(-1);
  if (list.flow !== true) {
    const end = last?.range[1] ?? list.range[1];
    const column = columnOf(text, list.range[0]);
    return withLines(text, pastRemarks(text, endOfLine(text, end), column), indented(lines, column));
  }
  // An empty list may be right as it is: a comment does not change that.
  if (last === undefined && !entries.some(isWhole))
    return withLines(text, endOfLine(text, list.range[1]), indented(lines, 2));
  if (last === undefined) {
    const emptied = `${text.slice(0, list.range[0]).replace(/[ \t]+$/, '')}${text.slice(list.range[1])}`;
    return withLines(emptied, endOfLine(emptied, pair.key.range[1]), indented(lines, 2));
  }
  const more = wholeData(entries).map((data) => `, ${flowText(data)}`);
  const inserted = `${text.slice(0, last.range[1])}${more.join('')}${text.slice(last.range[1])}`;
  const comments = entries.filter((entry) => !isWhole(entry)).flatMap(entryLines);
  return comments.length === 0 ? inserted : withLines(inserted, inserted.length, comments);
}

/** In JSON, or in YAML that is written like it. */
function inFlow(text: string, root: YAMLMap.Parsed, key: string, entries: readonly DraftEntry[]): string | null {
  const value: ParsedNode | null = pairOf(root, key)?.value ?? null;
  if (value === null || !isSeq(value)) return null;
  const list = value;
  const last = list.items.at(-1);
  const more = wholeData(entries).map((data) => JSON.stringify(data));
  if (more.length === 0) return text;
  const at = last?.range[1] ?? list.range[0] + 1;
  return `${text.slice(0, at)}${last === undefined ? '' : ', '}${more.join(', ')}${text.slice(at)}`;
}

const indented = (lines: readonly string[], columns: number): readonly string[] =>
  lines.map((line) => `${' '.repeat(columns)}${line}`);

/** Lines put in at the end of a line, with the line ends that the text has. */
function withLines(text: string, end: number, lines: readonly string[]): string {
  const lineEnd = lineEndOf(text);
  const before = text.slice(0, end);
  const isBetweenLines = before === '' || before.endsWith('\n');
  const gap = isBetweenLines ? '' : lineEnd;
  const after = isBetweenLines ? text.slice(end) : text.slice(end).replace(/^\r?\n/, '');
  return `${before}${gap}${lines.map((line) => `${line}${lineEnd}`).join('')}${after}`;
}

/** Past the comments below an entry that belong to the list, by their indentation. */
function pastRemarks(text: string, end: number, column: number): number {
  let past = end;
  const line = /\r?\n(?:[ \t]*\r?\n)*([ \t]*)#[^\n]*/y;
  for (;;) {
    line.lastIndex = past;
    const match = line.exec(text);
    if (match === null || (match[1] ?? '').length < Math.max(column, 1)) return past;
    past = endOfLine(text, line.lastIndex - 1);
  }
}
