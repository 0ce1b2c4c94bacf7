import { isMap, isSeq, type ParsedNode, type YAMLMap } from 'yaml';

import type { WiredFeed } from '../../domain/board.js';
import { isInletId, unitOfInlet } from '../../domain/inlet.js';
import { numberOfThousandths } from '../../domain/quantities.js';
import {
  endOf,
  endOfPair,
  lineEndOf,
  pairOf,
  settingKey,
  withEdits,
  withoutLines,
  type Edit,
} from '../text/text-edits.js';
import { flowText } from '../text/yaml-text.js';
import { withEntries } from './add-to-list.js';
import type { DraftEntry } from './entry.js';

/** How a board is plugged before and after: pedals, then inlets, each before in the order of the file. */
type Replugged = { readonly before: readonly WiredFeed[]; readonly after: readonly WiredFeed[] };

/**
 * The text of a board file, whose root is a map, with another wiring: an entry that stays true is not touched, one that
 * changes is changed where it stands, one whose pedal is not plugged any more goes, and new ones come last. Null where the
 * text has no room for it.
 */
export function withWiring(text: string, root: YAMLMap.Parsed, { before, after }: Replugged): string | null {
  const value = pairOf(root, 'wiring')?.value ?? null;
  const isListInBrackets = isSeq(value) && value.flow === true && before.length > 0;
  if (root.flow === true || isListInBrackets) {
    const all = inOrder(before, after).map(entryData);
    const written = root.flow === true ? listInJson(text, all) : flowText(all);
    return withEdits(text, [settingKey(text, { map: root, key: 'wiring', json: root.flow === true }, written)]);
  }
  const next = new Map(after.map((feed) => [feed.pedal, feed]));
  const items = isSeq(value)
    ? value.items.flatMap((item) => (isMap<ParsedNode, ParsedNode | null>(item) ? item : []))
    : [];
  const isOfInlet = (item: YAMLMap.Parsed): boolean => pairOf(item, 'inlet') !== null;
  const inFile = [...items.filter((item) => !isOfInlet(item)), ...items.filter(isOfInlet)];
  const edits = before.flatMap((feed, index) => {
    const item = inFile[index];
    return item === undefined ? [] : entryEdits(text, item, feed, next.get(feed.pedal));
  });
  const known = new Set(before.map(({ pedal }) => pedal));
  const added = after.filter(({ pedal }) => !known.has(pedal)).map(draftOf);
  const kept = withEdits(text, edits);
  if (added.length === 0) return kept;
  const extended = withEntries(kept, 'wiring', added);
  return extended.kind === 'closed' ? null : extended.text;
}

/** An entry a line, where the file has lines. */
function listInJson(text: string, entries: readonly unknown[]): string {
  if (!text.trim().includes('\n')) return JSON.stringify(entries);
  const line = `${lineEndOf(text)}  `;
  return `[${entries.map((entry) => `${line}  ${JSON.stringify(entry)}`).join(',')}${line}]`;
}

/** Those that are there already first, in the order of the file. */
export const inOrder = (before: readonly WiredFeed[], after: readonly WiredFeed[]): readonly WiredFeed[] => {
  const order = before.map(({ pedal }) => pedal);
  const rank = ({ pedal }: WiredFeed): number => (order.includes(pedal) ? order.indexOf(pedal) : order.length);
  return [...after].sort((one, other) => rank(one) - rank(other));
};

/** The keys of an entry, in the order in which they are written; undefined where one has nothing to say. */
const keys: Readonly<Record<string, (feed: WiredFeed) => unknown>> = {
  pedal: ({ pedal }) => (isInletId(pedal) ? undefined : pedal),
  inlet: ({ pedal }) => unitOfInlet(pedal)?.supply,
  inletUnit: ({ pedal }) => unitOfInlet(pedal)?.unit,
  supply: ({ supply, battery }) => (battery === undefined ? supply : undefined),
  battery: ({ battery }) => battery,
  unit: ({ own, unit }) => (own === true ? undefined : unit),
  output: ({ own, outputs: [output, ...others] }) => (own === true || others.length > 0 ? undefined : output),
  outputs: ({ outputs }) => (outputs.length === 1 ? undefined : outputs),
  volts: ({ own, millivolts }) => (own === true ? undefined : numberOfThousandths(millivolts)),
  join: ({ join }) => join ?? undefined,
  chain: ({ chain }) => chain ?? undefined,
  parts: ({ adapters }) => (adapters.length === 0 ? undefined : adapters),
  lead: ({ lead }) => lead,
  tail: ({ tail }) => tail,
};

export const entryData = (feed: WiredFeed): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    Object.entries(keys)
      .map(([key, of]) => [key, of(feed)] as const)
      .filter(([, value]) => value !== undefined),
  );

const draftOf = (feed: WiredFeed): DraftEntry => ({
  name: feed.pedal,
  fields: Object.entries(entryData(feed)).map(([key, value]) => ({ key, value })),
  missing: [],
  inline: true,
});

/** What changes in an entry; all of it goes where its pedal is not plugged any more. */
function entryEdits(
  text: string,
  item: YAMLMap.Parsed,
  before: WiredFeed,
  after: WiredFeed | undefined,
): readonly Edit[] {
  if (after === undefined) return [withoutLines(text, item.range[0], endOf(item))];
  const changed = Object.entries(keys).filter(([, of]) => JSON.stringify(of(before)) !== JSON.stringify(of(after)));
  if (changed.length === 0) return [];
  if (item.flow === true) return [{ start: item.range[0], end: item.range[1], text: flowText(entryData(after)) }];
  const gone = changed.flatMap(([key, of]) => (of(after) === undefined ? (pairOf(item, key) ?? []) : []));
  // The first key stands behind the dash of the list, whose line cannot go.
  if (gone.some((pair) => pair === item.items[0]))
    return [{ start: item.range[0], end: endOf(item), text: flowText(entryData(after)) }];
  const behind = item.items.findLast((pair) => !gone.includes(pair));
  return [
    ...gone.map((pair) => withoutLines(text, pair.key.range[0], endOfPair(pair))),
    ...changed.flatMap(([key, of]) => {
      const value = of(after);
      return value === undefined ? [] : [settingKey(text, { map: item, key, json: false, behind }, flowText(value))];
    }),
  ];
}
