import type { StepClaim } from './claim.js';
import type { Condition } from './conditions.js';
import type { MostUnits, NodeBound } from './node-bound.js';
import { unitCounts } from './sources.js';
import type { StockGroup } from './stock.js';

/**
 * The most units of each group that a better plan can use in a case: as the cases on the way to it tell easily, and exactly.
 * That is worked out for one group after the other, where a case would be left open otherwise.
 */
export type UnitCaps = { readonly quick: ReadonlyMap<StockGroup, number>; readonly exact: MostUnits };

/** As each unit adds at least itself to every step's number. */
export function capsAtFirst(claim: StepClaim): UnitCaps {
  const quick = new Map(claim.stock.groups.map((group) => [group, mostInBetter(group, claim)]));
  return { quick, exact: (group) => quick.get(group) ?? 0 };
}

function mostInBetter(group: StockGroup, { measure, below, earlier }: StepClaim): number {
  const { bricks } = unitCounts(group.supply.source);
  const limits = [...earlier, { measure, value: below }].map(({ measure: each, value: limit }) => {
    const least = bricks * each.bricks + each.money(group.price);
    return least === 0n ? group.most : Number(limit / least);
  });
  return Math.max(0, Math.min(group.most, ...limits));
}

/** Those that the tags of a case leave of the ones before. */
export function capsBehind({ quick, exact }: UnitCaps, { target, bound, fitting }: NodeBound): UnitCaps {
  const slack = target - bound((group) => quick.get(group) ?? 0);
  const left = [...quick].map(
    ([group, most]) => [group, most === 0 ? 0 : Math.min(most, fitting(group, slack, 'quick'))] as const,
  );
  let exactSlack: bigint | null = null;
  return {
    quick: new Map(left),
    exact: remembered((group) => {
      const most = exact(group);
      if (most === 0) return 0;
      exactSlack ??= target - bound(exact);
      return Math.min(most, fitting(group, exactSlack, 'exact'));
    }),
  };
}

/** At most so many units, of whatever groups, are at most so many of each. */
export function capped({ quick, exact }: UnitCaps, { counts, concerns, amount }: Condition): UnitCaps {
  if (counts !== 'units') return { quick, exact };
  const within = (group: StockGroup, most: number): number => (concerns(group) ? Math.min(most, amount) : most);
  return {
    quick: new Map([...quick].map(([group, most]) => [group, within(group, most)])),
    exact: (group) => within(group, exact(group)),
  };
}

function remembered(tell: MostUnits): MostUnits {
  const known = new Map<StockGroup, number>();
  return (group) => {
    const most = known.get(group) ?? tell(group);
    known.set(group, most);
    return most;
  };
}
