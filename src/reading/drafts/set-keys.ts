import { isMap, isSeq, parseDocument, type YAMLMap } from 'yaml';

import type { Data } from '../text/data.js';
import {
  endOfPair,
  pairOf,
  says,
  settingKey,
  valueText,
  withEdits,
  withoutLines,
  type Edit,
} from '../text/text-edits.js';
import { meant, valueAt, type KeyPath } from './set-value.js';

/** Which entry of a list of the file. */
export type Spot = { readonly list: string; readonly index: number };

/** The same, also of a list that stands in a map. */
export type EntrySpot = Spot | { readonly list: KeyPath; readonly index: number };

export const pathOf = ({ list }: EntrySpot): KeyPath => (typeof list === 'string' ? [list] : list);

/**
 * Writes values into an entry of a list of a YAML or JSON file: in the place of those that are there, with the remark on their
 * line taken off, or after the others; a key without a value goes. All else stays letter by letter. Null where the entry is not written out in that list.
 */
export const withKeys = (text: string, spot: EntrySpot, values: Data): string | null =>
  Object.entries(values).reduce<string | null>(
    (current, [key, value]) => (current === null ? null : withKey(current, spot, key, value)),
    text,
  );

function withKey(text: string, spot: EntrySpot, key: string, value: unknown): string | null {
  const document = parseDocument(text);
  const entries = document.getIn(pathOf(spot), true);
  const entry = isSeq(entries) ? entries.items[spot.index] : undefined;
  if (document.errors.length > 0 || !isMap(entry)) return null;
  const map = entry as YAMLMap.Parsed;
  const json = text.trimStart().startsWith('{');
  if (value === undefined) {
    const gone = withEdits(text, removing(text, map, key));
    return holds(gone, document.toJS() as Data, spot, { [key]: value }) ? gone : null;
  }
  const setting = settingKey(text, { map, key, json }, valueText(value, json));
  const remark = pairOf(map, key) === null ? '' : remarkAt(text, setting.end);
  const edited = withEdits(text, [{ ...setting, end: setting.end + remark.length }]);
  return holds(edited, document.toJS() as Data, spot, { [key]: value }) ? edited : null;
}

/** Of a map in braces the key goes with the comma before it; it is never the first, which names the entry. */
function removing(text: string, map: YAMLMap.Parsed, key: string): readonly Edit[] {
  const at = map.items.findIndex((pair) => pair === pairOf(map, key));
  const [pair, before] = [map.items[at], map.items[at - 1]];
  if (pair === undefined || before === undefined) return [];
  return map.flow === true
    ? [{ start: endOfPair(before), end: endOfPair(pair), text: '' }]
    : [withoutLines(text, pair.key.range[0], endOfPair(pair))];
}

/** What stands beside a value that was not known told where to look for it. */
const remarkAt = (text: string, at: number): string => /^[ \t]+#[^\r\n]*/.exec(text.slice(at))?.[0] ?? '';

/** Whether the text is what it was but for the values. */
function holds(text: string, before: Data, spot: EntrySpot, values: Data): boolean {
  const entries = valueAt(before, pathOf(spot)) as readonly Data[];
  const changed = entries.map((entry, at) => (at === spot.index ? { ...entry, ...values } : entry));
  return says(text, meant(before, pathOf(spot), changed));
}
