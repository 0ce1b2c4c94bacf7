import { isMap, isSeq, parseDocument, type YAMLMap } from 'yaml';

import type { Data } from '../text/data.js';
import {
  appending,
  endOfPair,
  pairOf,
  says,
  settingKey,
  valueText,
  withEdits,
  withoutLines,
  type Edit,
} from '../text/text-edits.js';

/** A key of a file, and a key of the map under it: `['policy', 'budget']`; or the first alone. */
export type KeyPath = readonly [string] | readonly [string, string];

/**
 * A YAML or JSON file with a value at a key, which goes where the value is undefined; all else stays letter by letter. Null
 * where the file is no map, or its form has no room for it.
 */
export function withValue(text: string, path: KeyPath, value: unknown): string | null {
  const document = parseDocument(text);
  const root = document.contents;
  if (document.errors.length > 0 || !isMap(root)) return null;
  const data = document.toJS() as Data;
  if (value === undefined && valueAt(data, path) === undefined) return text;
  const edit = value === undefined ? removing(text, root, data, path) : setting(text, root, path, value);
  const edited = withEdits(text, [edit]);
  return says(edited, meant(data, path, value)) ? edited : null;
}

function setting(text: string, root: YAMLMap.Parsed, [first, second]: KeyPath, value: unknown): Edit {
  const json = root.flow === true;
  if (second === undefined) return settingKey(text, { map: root, key: first, json }, valueText(value, json));
  const inner = pairOf(root, first)?.value ?? null;
  return isMap(inner)
    ? settingKey(text, { map: inner, key: second, json }, valueText(value, json))
    : settingKey(text, { map: root, key: first, json }, valueText({ [second]: value }, json));
}

/** What stands in braces, or is the last of a map, is written anew without it. */
function removing(text: string, root: YAMLMap.Parsed, data: Data, [first, second]: KeyPath): Edit {
  const json = root.flow === true;
  const inner = pairOf(root, first)?.value ?? null;
  const [map, key] = second !== undefined && isMap(inner) ? [inner, second] : [root, first];
  const pair = pairOf(map, key);
  if (pair !== null && map.flow !== true && map.items.length > 1)
    return withoutLines(text, pair.key.range[0], endOfPair(pair));
  const { [key]: _, ...others } = (map === inner ? data[first] : data) as Data;
  return map === inner
    ? settingKey(text, { map: root, key: first, json }, valueText(others, json))
    : { start: root.range[0], end: root.range[1], text: valueText(others, json) };
}

/** The same file with one more entry at the end of a list, which is begun where there is none. */
export function withAppended(text: string, path: KeyPath, value: unknown): string | null {
  const document = parseDocument(text);
  const list: unknown = document.getIn(path, true);
  const had = (document.toJS() as Data | null) ?? {};
  const before = valueAt(had, path);
  const all = [...(Array.isArray(before) ? (before as readonly unknown[]) : []), value];
  if (!isSeq(list) || list.items.length === 0) return withValue(text, path, all);
  const json = text.trimStart().startsWith('{');
  const edited = withEdits(text, [appending(text, list as Parameters<typeof appending>[1], [valueText(value, json)])]);
  return says(edited, meant(had, path, all)) ? edited : null;
}

/** What a file says that says this at the key. */
export function meant(data: Data, [key, ...rest]: KeyPath, value: unknown): Data {
  const [inner] = rest;
  const next = inner === undefined ? value : meant((data[key] as Data | undefined) ?? {}, [inner], value);
  if (next !== undefined) return { ...data, [key]: next };
  const { [key]: _, ...others } = data;
  return others;
}

/** What a file says at a key; undefined where it says nothing. */
export const valueAt = (data: Data, [key, inner]: KeyPath): unknown =>
  inner === undefined ? data[key] : (data[key] as Data | null | undefined)?.[inner];
