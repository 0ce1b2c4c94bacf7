import { groupBy } from './group-by.js';
import { everyWired, type WiredFeed } from './board.js';
import { pluggedOf, type Kit } from './kit.js';
import type { PedalId, SupplyId } from './quantities.js';

/** A feed as far as it tells which lead it is: all pedals on one output, or on two joined ones, hang on one lead. */
type Hung = {
  readonly pedal: PedalId;
  readonly supply: SupplyId;
  readonly unit: number;
  readonly outputs: readonly number[];
};

/**
 * The number of each pedal's lead, for life; a battery in the pedal has none. A lead that the board file numbers keeps its number as long as one of its pedals
 * is plugged, wherever it goes: where pedals part, the lead with the most of them keeps it. Other leads get the numbers above
 * all that the file remembers, in the order of hooking up, so that no number is ever given to another lead. Those of kept
 * places come last: no file remembers these before they are plugged.
 */
export function leadNumbers(kit: Kit, feeds: readonly Hung[]): ReadonlyMap<PedalId, number> {
  const leads = leadsInOrder(
    kit,
    feeds.filter(({ supply }) => kit.supplies.get(supply)?.source.kind !== 'battery'),
  );
  const known = numbered(everyWired(kit.board));
  const kept = keptNumbers(leads, known);
  let last = Math.max(0, ...known.keys());
  const numbers = new Map<PedalId, number>();
  for (const lead of leads) {
    const number = kept.get(lead) ?? (last += 1);
    for (const { pedal } of lead) numbers.set(pedal, number);
  }
  return numbers;
}

type Lead = readonly Hung[];

/** By their supplies in the order of gear and catalogue, then by units and outputs; kept places last. */
function leadsInOrder(kit: Kit, feeds: readonly Hung[]): readonly Lead[] {
  const plugged = new Set(pluggedOf(kit, feeds));
  const order = [...kit.supplies.keys()];
  const rank = (lead: readonly [Hung, ...Hung[]]): readonly number[] => {
    const [{ supply, unit, outputs }] = lead;
    return [lead.some((feed) => plugged.has(feed)) ? 0 : 1, order.indexOf(supply), unit, outputs[0] ?? 0];
  };
  const leads = groupBy(feeds, ({ supply, unit, outputs }) => JSON.stringify([supply, unit, outputs]));
  return [...leads].sort((one, other) => {
    const [first, second] = [rank(one), rank(other)];
    return first.map((figure, at) => figure - (second[at] ?? 0)).find((difference) => difference !== 0) ?? 0;
  });
}

/** The pedals of each number that the board file gives. */
function numbered(wiring: readonly WiredFeed[]): ReadonlyMap<number, ReadonlySet<PedalId>> {
  const known = new Map<number, Set<PedalId>>();
  for (const { lead, pedal } of wiring)
    if (lead !== undefined) known.set(lead, (known.get(lead) ?? new Set()).add(pedal));
  return known;
}

/** Each number goes to the lead that has the most of its pedals, each lead takes one. */
function keptNumbers(
  leads: readonly Lead[],
  known: ReadonlyMap<number, ReadonlySet<PedalId>>,
): ReadonlyMap<Lead, number> {
  const claims = leads
    .flatMap((lead) =>
      [...known].map(([number, pedals]) => ({
        lead,
        number,
        shared: lead.filter(({ pedal }) => pedals.has(pedal)).length,
      })),
    )
    .filter(({ shared }) => shared > 0)
    .sort((one, other) => other.shared - one.shared || one.number - other.number);
  const kept = new Map<Lead, number>();
  const given = new Set<number>();
  for (const { lead, number } of claims) {
    if (kept.has(lead) || given.has(number)) continue;
    kept.set(lead, number);
    given.add(number);
  }
  return kept;
}
