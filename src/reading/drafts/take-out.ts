import { isMap, isSeq, parse } from 'yaml';

import type { Data } from '../text/data.js';
import { endOf, mapIn, pairOf, saysWithList, withEdits, withoutLines, type Edit } from '../text/text-edits.js';
import type { Spot } from './set-keys.js';

/**
 * A YAML or JSON file without an entry of a list; all else stays letter by letter. Null where the entry is not written out
 * there in a way that can be taken out by itself.
 */
export function withoutEntry(text: string, spot: Spot): string | null {
  const edit = takingOut(text, spot);
  if (edit === null) return null;
  const edited = withEdits(text, [edit]);
  const before = parse(text) as Data;
  const rest = (before[spot.list] as readonly unknown[]).filter((_, at) => at !== spot.index);
  return saysWithList(edited, before, spot.list, rest) ? edited : null;
}

function takingOut(text: string, { list, index }: Spot): Edit | null {
  const entries = pairOf(mapIn(text), list)?.value ?? null;
  if (!isSeq(entries)) return null;
  const [before, entry, behind] = [entries.items[index - 1], entries.items[index], entries.items[index + 1]];
  if (!isMap(entry)) return null;
  const [start, end] = [entry.range[0], endOf(entry)];
  if (entries.flow !== true) return withoutLines(text, start, end);
  if (behind !== undefined) return { start, end: behind.range[0], text: '' };
  return { start: before === undefined ? start : endOf(before), end, text: '' };
}
