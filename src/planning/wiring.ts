import type { Board, Catalogue } from '../domain/board.js';
import type { Pedal } from '../domain/pedal.js';
import { feedMillivolts, type Feed, type Purchase, type Wiring } from '../domain/plan.js';
import { minorUnits, type MinorUnits, type PartId, type PedalId, type SupplyId } from '../domain/quantities.js';

/** What feeds amount to: what must be bought for them, who is exposed, and the score. */
export function wiringOf(board: Board, catalogue: Catalogue | null, feeds: readonly Feed[]): Wiring {
  const powered = new Map(feeds.map((feed) => [feed.pedal, feed]));
  const exposed = exposedPedals(board, catalogue, powered);
  const units = countBy(distinctUnits(feeds), ({ supply }) => supply);
  const parts = countBy(partsInUse(feeds), (part) => part);
  const supplies = [...(catalogue?.supplies ?? []), ...board.gear.supplies];
  const leads = [...(catalogue?.parts ?? []), ...board.gear.parts];
  const buy = {
    supplies: purchases(supplies, units, board.owned.supplies),
    parts: purchases(leads, parts, board.owned.parts),
  };
  const unpowered = board.pedals.filter(({ id }) => !powered.has(id)).map(({ id }) => id);
  return {
    feeds,
    unpowered,
    exposed,
    buy,
    score: {
      unpowered: unpowered.length,
      money: spent([...buy.supplies, ...buy.parts]),
      exposed: exposed.length,
      bricks: sumOf(units),
      parts: sumOf(parts),
      offPreferred: board.pedals.filter((pedal) => isOffPreferred(pedal, powered.get(pedal.id))).length,
      moved: null,
    },
  };
}

const isOffPreferred = (pedal: Pedal, feed: Feed | undefined): boolean =>
  feed !== undefined && pedal.prefers !== null && feedMillivolts(feed) !== pedal.prefers;

const distinctUnits = (feeds: readonly Feed[]): readonly Feed[] => [
  ...new Map(feeds.map((feed) => [JSON.stringify([feed.supply, feed.unit]), feed])).values(),
];

/** Every lead once: a chain lead serves all pedals of its output. */
function partsInUse(feeds: readonly Feed[]): readonly PartId[] {
  const chained = feeds.filter(({ chain }) => chain !== null);
  const chains = new Map(chained.map((feed) => [JSON.stringify([feed.supply, feed.unit, feed.outputs]), feed.chain]));
  return [
    ...[...chains.values()].flatMap((part) => part ?? []),
    ...feeds.flatMap(({ join, adapters }) => [...(join === null ? [] : [join.part]), ...adapters]),
  ];
}

/** High-gain pedals that share a ground with another pedal that is digital, in the order of the board. */
function exposedPedals(
  board: Board,
  catalogue: Catalogue | null,
  powered: ReadonlyMap<PedalId, Feed>,
): readonly PedalId[] {
  const domains = new Map<string, Pedal[]>();
  const domainOf = new Map<PedalId, string>();
  for (const pedal of board.pedals) {
    const feed = powered.get(pedal.id);
    if (feed === undefined) continue;
    const domain = groundDomain(feed, board, catalogue);
    domainOf.set(pedal.id, domain);
    domains.set(domain, [...(domains.get(domain) ?? []), pedal]);
  }
  return board.pedals
    .filter((pedal) => {
      const neighbours = domains.get(domainOf.get(pedal.id) ?? '') ?? [];
      return pedal.highGain && neighbours.some((other) => other !== pedal && other.digital);
    })
    .map(({ id }) => id);
}

function groundDomain(feed: Feed, board: Board, catalogue: Catalogue | null): string {
  const supply = [...(catalogue?.supplies ?? []), ...board.gear.supplies].find(({ id }) => id === feed.supply);
  const output = feed.outputs[0] ?? 0;
  const bank = supply?.banks.find(
    ({ firstOutput, outputs }) => firstOutput <= output && output < firstOutput + outputs,
  );
  return JSON.stringify([feed.supply, feed.unit, bank?.isolated === true ? output : 'common']);
}

function countBy<Value, Key>(values: readonly Value[], key: (value: Value) => Key): ReadonlyMap<Key, number> {
  const counts = new Map<Key, number>();
  for (const value of values) counts.set(key(value), (counts.get(key(value)) ?? 0) + 1);
  return counts;
}

const sumOf = (counts: ReadonlyMap<unknown, number>): number => [...counts.values()].reduce((sum, n) => sum + n, 0);

/** What is used beyond what is owned, in the order of the files. */
function purchases<Id extends SupplyId | PartId>(
  things: readonly { readonly id: Id; readonly price: MinorUnits | null }[],
  used: ReadonlyMap<Id, number>,
  owned: ReadonlyMap<Id, number>,
): readonly Purchase<Id>[] {
  return things.flatMap(({ id, price }) => {
    const units = (used.get(id) ?? 0) - (owned.get(id) ?? 0);
    return units > 0 ? [{ id, units, price: price ?? minorUnits(0) }] : [];
  });
}

const spent = (all: readonly Purchase<unknown>[]): MinorUnits =>
  minorUnits(all.reduce((sum, { units, price }) => sum + units * price, 0));
