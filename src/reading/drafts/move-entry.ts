import { isMap, isSeq, parse } from 'yaml';

import type { Data } from '../text/data.js';
import { endOf, endOfLine, mapIn, pairOf, says, withEdits, type ParsedPair } from '../text/text-edits.js';
import type { Spot } from './set-keys.js';

type Span = { readonly start: number; readonly end: number };

/**
 * A YAML or JSON file with an entry of a list at another place in it, counted from 0; all else stays letter by letter. In a
 * list of lines, comments above an entry and behind it go along. Null where that cannot be done by moving text alone.
 */
export function withEntryMoved(text: string, { list, index }: Spot, to: number): string | null {
  const pair = pairOf(mapIn(text), list);
  const spans = pair === null ? null : spansOf(text, pair);
  if (spans === null || [index, to].some((at) => spans[at] === undefined)) return null;
  const texts = movedIn(
    spans.map(({ start, end }) => text.slice(start, end)),
    index,
    to,
  );
  const edited = withEdits(
    text,
    spans.map((span, at) => ({ ...span, text: texts[at] ?? '' })),
  );
  const before = parse(text) as Data;
  // An entry must not be parted from what an alias in it stands for.
  return says(edited, { ...before, [list]: movedIn(before[list] as readonly unknown[], index, to) }) ? edited : null;
}

/** What belongs to each entry; null where an entry shares its lines with something else. */
function spansOf(text: string, { key, value }: ParsedPair): readonly Span[] | null {
  if (!isSeq(value) || !value.items.every(isMap)) return null;
  if (value.flow === true) return value.items.map((entry) => ({ start: entry.range[0], end: endOf(entry) }));
  const ends = value.items.map((entry) => endOfLine(text, endOf(entry)));
  return ends.map((end, at) => ({ start: text.indexOf('\n', ends[at - 1] ?? key.range[1]) + 1, end }));
}

function movedIn<Item>(items: readonly Item[], from: number, to: number): readonly Item[] {
  const rest = items.filter((_, at) => at !== from);
  return [...rest.slice(0, to), ...items.slice(from, from + 1), ...rest.slice(to)];
}
