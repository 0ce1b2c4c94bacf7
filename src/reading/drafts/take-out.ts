import { isMap, isSeq, parseDocument, type ParsedNode, type YAMLSeq } from 'yaml';

import type { Data } from '../text/data.js';
import { endOf, says, withEdits, withoutLines, type Edit } from '../text/text-edits.js';
import { pathOf, type EntrySpot } from './set-keys.js';
import { meant, valueAt } from './set-value.js';

/**
 * A YAML or JSON file without an entry of a list; all else stays letter by letter. Null where the entry is not written out
 * there in a way that can be taken out by itself.
 */
export function withoutEntry(text: string, spot: EntrySpot): string | null {
  const [document, path] = [parseDocument(text), pathOf(spot)];
  const entries = document.getIn(path, true);
  const edit = isSeq(entries) ? takingOut(text, entries as YAMLSeq<ParsedNode>, spot.index) : null;
  if (edit === null) return null;
  const edited = withEdits(text, [edit]);
  const before = document.toJS() as Data;
  const rest = (valueAt(before, path) as readonly unknown[]).filter((_, at) => at !== spot.index);
  // Where a list has nothing, there may be none.
  const lists = rest.length === 0 ? [rest, null] : [rest];
  return lists.some((list) => says(edited, meant(before, path, list))) ? edited : null;
}

function takingOut(text: string, { items, flow }: YAMLSeq<ParsedNode>, index: number): Edit | null {
  const [before, entry, behind] = [items[index - 1], items[index], items[index + 1]];
  if (!isMap(entry)) return null;
  const [start, end] = [entry.range[0], endOf(entry)];
  if (flow !== true) return withoutLines(text, start, end);
  if (behind !== undefined) return { start, end: behind.range[0], text: '' };
  return { start: before === undefined ? start : endOf(before), end, text: '' };
}
