import { isMap, isScalar, isSeq, parseDocument, type YAMLMap } from 'yaml';

import { flowText } from '../text/yaml-text.js';

type Data = Readonly<Record<string, unknown>>;

/** Which entry of a list of the file. */
export type Spot = { readonly list: string; readonly index: number };

/**
 * Writes values into an entry of a list of a YAML or JSON file: in the place of those that are there, with the remark on their
 * line taken off, or after the others. All else stays letter by letter. Null where the entry is not written out in that list.
 */
export function withKeys(text: string, { list, index }: Spot, values: Data): string | null {
  let current = text;
  for (const [key, value] of Object.entries(values)) {
    const document = parseDocument(current);
    const entries = document.get(list, true);
    const entry = isSeq(entries) ? entries.items[index] : undefined;
    if (document.errors.length > 0 || !isMap(entry)) return null;
    const edited = withKey(current, entry as YAMLMap.Parsed, { key, value });
    if (edited === null || !holds(edited, document.toJS() as Data, { list, index }, { [key]: value })) return null;
    current = edited;
  }
  return current;
}

function withKey(
  text: string,
  entry: YAMLMap.Parsed,
  { key, value }: { readonly key: string; readonly value: unknown },
): string | null {
  const written = text.trimStart().startsWith('{') ? JSON.stringify(value) : flowText(value);
  const there = entry.items.find((pair) => isScalar(pair.key) && pair.key.value === key);
  if (there?.value) {
    const [start, end] = there.value.range;
    return `${text.slice(0, start)}${written}${withoutRemark(text.slice(end))}`;
  }
  const last = entry.items.at(-1);
  const end = last?.value?.range[1];
  if (last === undefined || end === undefined) return null;
  const name = text.trimStart().startsWith('{') ? JSON.stringify(key) : key;
  if (entry.flow === true) return `${text.slice(0, end)}, ${name}: ${written}${text.slice(end)}`;
  const lineEnd = /\r?\n/.exec(text.slice(end)) ?? null;
  const at = lineEnd === null ? text.length : end + lineEnd.index;
  const column = last.key.range[0] - (text.lastIndexOf('\n', last.key.range[0] - 1) + 1);
  return `${text.slice(0, at)}${lineEnd?.[0] ?? '\n'}${' '.repeat(column)}${name}: ${written}${text.slice(at)}`;
}

/** What stood beside a value that was not known told where to look for it. */
const withoutRemark = (rest: string): string => rest.replace(/^[ \t]+#[^\r\n]*/, '');

/** Whether the text is what it was but for the values. */
function holds(text: string, before: Data, { list, index }: Spot, values: Data): boolean {
  const after = parseDocument(text);
  const entries = before[list] as readonly Data[];
  const wanted = { ...before, [list]: entries.map((entry, at) => (at === index ? { ...entry, ...values } : entry)) };
  return after.errors.length === 0 && flowText(after.toJS()) === flowText(wanted);
}
