import type { Board } from '../../../src/domain/board.js';
import type { Feed } from '../../../src/domain/plan.js';
import type { ProofCount } from '../../../src/domain/proof.js';
import type { PartId } from '../../../src/domain/quantities.js';

/** The number of a plan that a branch goes by. */
export function counted(feeds: readonly Feed[], { count, supply, source, of = [] }: ProofCount, board: Board): number {
  const named = new Set<string>(of);
  const concerned = feeds.filter((feed) => {
    const isOwned = feed.unit <= (board.owned.supplies.get(feed.supply) ?? 0);
    return (supply === null || feed.supply === supply) && (source === null || (source === 'owned') === isOwned);
  });
  switch (count) {
    case 'units':
      return new Set(concerned.map(({ supply: id, unit }) => JSON.stringify([id, unit]))).size;
    case 'pedals':
      return concerned.filter(({ pedal }) => named.has(pedal)).length;
    case 'leads':
      return leadsOf(concerned).filter((part) => named.has(part)).length;
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
