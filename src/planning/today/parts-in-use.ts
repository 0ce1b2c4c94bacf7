import type { Feed } from '../../domain/plan.js';
import type { PartId } from '../../domain/quantities.js';

/** What of a feed says which leads it uses. */
export type LaidLeads = Pick<Feed, 'supply' | 'unit' | 'outputs' | 'join' | 'chain' | 'adapters'>;

/** How many pieces of each part are in use: a chain lead counts once for its output, every other lead for its pedal. */
export function partsInUse(feeds: readonly LaidLeads[]): ReadonlyMap<PartId, number> {
  const chains = new Map(
    feeds.map(({ supply, unit, outputs, chain }) => [JSON.stringify([supply, unit, outputs, chain]), chain]),
  );
  const uses = [
    ...[...chains.values()].flatMap((chain) => chain ?? []),
    ...feeds.flatMap(({ join, adapters }) => [...(join === null ? [] : [join.part]), ...adapters]),
  ];
  const counts = new Map<PartId, number>();
  for (const part of uses) counts.set(part, (counts.get(part) ?? 0) + 1);
  return counts;
}
