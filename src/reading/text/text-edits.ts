import {
  isCollection,
  isMap,
  isPair,
  isScalar,
  parseDocument,
  type ParsedNode,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';

import type { Data } from './data.js';
import { flowText } from './yaml-text.js';

/** What stands from `start` to before `end` becomes `text`. */
export type Edit = { readonly start: number; readonly end: number; readonly text: string };

/** The text with all edits, none of which reaches into another one; what is put in at one place stands in the order of the edits. */
export const withEdits = (text: string, edits: readonly Edit[]): string =>
  edits
    .toReversed()
    .sort((one, other) => other.start - one.start)
    .reduce((edited, { start, end, text: put }) => `${edited.slice(0, start)}${put}${edited.slice(end)}`, text);

/** Whether a text says just that. What cannot be read says nothing, such as an alias before what it stands for. */
export function says(text: string, wanted: unknown): boolean {
  const document = parseDocument(text);
  if (document.errors.length > 0) return false;
  try {
    return flowText(document.toJS()) === flowText(wanted);
  } catch {
    return false;
  }
}

/** The same of data with another list under a key; where a list has nothing, there may be none. */
export const saysWithList = (text: string, data: Data, key: string, list: readonly unknown[]): boolean =>
  says(text, { ...data, [key]: list }) || (list.length === 0 && says(text, { ...data, [key]: null }));

/** The map that a text is. @throws RangeError when it is none: whoever edits a file has read it before. */
export function mapIn(text: string): YAMLMap.Parsed {
  const { contents } = parseDocument(text);
  if (!isMap(contents)) throw new RangeError('the file is no map');
  return contents;
}

/** A pair of a map that a text was parsed into. */
export type ParsedPair = YAMLMap.Parsed['items'][number];

export const pairOf = (map: YAMLMap.Parsed, key: string): ParsedPair | null =>
  map.items.find((pair) => isScalar(pair.key) && String(pair.key.value) === key) ?? null;

/** Whether there is no value, as in `key:` alone. */
export const isNothing = (value: ParsedNode | null): boolean =>
  value === null || (isScalar(value) && value.value === null);

/** Where a value ends, without the comments behind it: those of lines by themselves count to a list or map otherwise. */
export function endOf(node: ParsedNode): number {
  if (!isCollection(node) || node.flow === true) return node.range[1];
  const last = node.items.at(-1);
  if (last === undefined) return node.range[1];
  return isPair(last) ? endOfPair(last) : endOf(last);
}

export const endOfPair = ({ key, value }: ParsedPair): number =>
  value === null || isNothing(value) ? key.range[1] + 1 : endOf(value);

/** Before the line break of the line in which an offset is; what begins a line ends the one before. */
export function endOfLine(text: string, offset: number): number {
  const newline = text.indexOf('\n', offset > 0 && text[offset - 1] === '\n' ? offset - 1 : offset);
  if (newline < 0) return text.length;
  return text[newline - 1] === '\r' ? newline - 1 : newline;
}

/** Takes whole lines out, from that of one offset to that of another. */
export function withoutLines(text: string, from: number, to: number): Edit {
  const end = text.indexOf('\n', to);
  return { start: from - columnOf(text, from), end: end < 0 ? text.length : end + 1, text: '' };
}

/** The line ends that a text has. */
export const lineEndOf = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');

/** A value as it is written on one line. */
export const valueText = (value: unknown, json: boolean): string => (json ? JSON.stringify(value) : flowText(value));

/** How far in its line an offset stands. */
export const columnOf = (text: string, offset: number): number => offset - (text.lastIndexOf('\n', offset - 1) + 1);

type KeyPlace = {
  readonly map: YAMLMap.Parsed;
  readonly key: string;
  /** Whether a new key is written in quotes, as JSON has it. */
  readonly json: boolean;
  /** The pair behind which a key that is not there yet comes; the last one when left out. */
  readonly behind?: ParsedPair | undefined;
};

/** A key of a map gets a value, which is handed in as it is to be written; what stands around it stays. */
export function settingKey(
  text: string,
  { map, key, json, behind = map.items.at(-1) }: KeyPlace,
  written: string,
): Edit {
  const pair = pairOf(map, key);
  if (pair !== null) {
    const start = pair.key.range[1];
    const { value } = pair;
    if (value === null || isNothing(value)) return { start, end: start + 1, text: `: ${written}` };
    return isCollection(value) && value.flow !== true
      ? { start, end: endOf(value), text: `: ${written}` }
      : { start: value.range[0], end: value.range[1], text: written };
  }
  const entry = `${json ? JSON.stringify(key) : key}: ${written}`;
  if (behind === undefined) return { start: map.range[0], end: map.range[1], text: `{${entry}}` };
  const end = endOfPair(behind);
  const line = `${lineEndOf(text)}${' '.repeat(columnOf(text, behind.key.range[0]))}`;
  if (map.flow !== true) {
    const at = endOfLine(text, end);
    return { start: at, end: at, text: `${line}${entry}` };
  }
  const hasOwnLine = text.slice(map.range[0], behind.key.range[0]).includes('\n');
  return { start: end, end, text: `,${hasOwnLine ? line : ' '}${entry}` };
}

/** Items, handed in as they are to be written, at the end of a list that has some. */
export function appending(text: string, list: YAMLSeq.Parsed, items: readonly string[]): Edit {
  const last = list.items.at(-1);
  const end = last === undefined ? list.range[1] : endOf(last);
  if (list.flow === true) return { start: end, end, text: items.map((item) => `, ${item}`).join('') };
  const at = endOfLine(text, end);
  const before = `${lineEndOf(text)}${' '.repeat(columnOf(text, list.range[0]))}- `;
  return { start: at, end: at, text: items.map((item) => `${before}${item}`).join('') };
}
