import type { Feed } from '../../../src/domain/plan.js';
import type { ProofApart, ProofCount } from '../../../src/domain/proof.js';
import type { PartId } from '../../../src/domain/quantities.js';
import type { Case } from '../../support/arbitraries.js';
import { batteryUses } from '../../support/brute-force-judge.js';

/** The number of a plan that a branch goes by. Units told apart are a plan's first ones of a group. */
export function counted(
  feeds: readonly Feed[],
  { count, supply, among, source, slot, of = [] }: ProofCount,
  { board, catalogue }: Case,
  apart: readonly ProofApart[] = [],
): number {
  const named = new Set<string>(of);
  const isOwned = (feed: Feed): boolean => feed.unit <= (board.owned.supplies.get(feed.supply) ?? 0);
  /** The number of a feed's unit among those of its group that are told apart. */
  const slotOf = (feed: Feed): number | undefined => {
    const alike = feeds.filter((other) => other.supply === feed.supply && isOwned(other) === isOwned(feed));
    const place = [...new Set(alike.map(({ unit }) => unit))].sort((one, two) => one - two).indexOf(feed.unit) + 1;
    const told = apart.find((entry) => entry.supply === feed.supply && (entry.source === 'owned') === isOwned(feed));
    return place <= (told?.units ?? 0) ? place : undefined;
  };
  const concerned = feeds.filter((feed) => {
    if (source !== null && (source === 'owned') !== isOwned(feed)) return false;
    if (supply === null) return among?.includes(feed.supply) !== false;
    return feed.supply === supply && slotOf(feed) === slot;
  });
  switch (count) {
    case 'units':
      return new Set(concerned.map(({ supply: id, unit }) => JSON.stringify([id, unit]))).size;
    case 'pedals':
      return concerned.filter(({ pedal }) => named.has(pedal)).length;
    case 'inlets':
      return concerned.filter(({ inletOf }) => inletOf !== undefined && named.has(inletOf.supply)).length;
    case 'leads':
      return [...leadsOf(concerned), ...batteryUses(board, catalogue, concerned)].filter((part) => named.has(part))
        .length;
  }
}

/** Every lead once: a chain lead serves all pedals of its output. */
function leadsOf(feeds: readonly Feed[]): readonly PartId[] {
  const chains = new Map(feeds.map((feed) => [JSON.stringify([feed.supply, feed.unit, feed.outputs]), feed.chain]));
  return [
    ...[...chains.values()].flatMap((part) => part ?? []),
    ...feeds.flatMap(({ join, adapters }) => [...(join === null ? [] : [join.part]), ...adapters]),
  ];
}
