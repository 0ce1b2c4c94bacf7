import type { ProofTags } from '../domain/proof.js';
import { carriedUnder, type CarriedBy } from './carried-under.js';
import type { StepClaim } from './claim.js';
import type { Condition } from './conditions.js';
import { nodePrices, type NodePrices } from './node-prices.js';
import type { StockGroup } from './stock.js';

/** The most units of a group that a better plan can use. */
export type MostUnits = (group: StockGroup) => number;

/** What the tags of a node show where they do not close it. */
export type NodeBound = {
  /** Scaled; a better plan's number is no greater. */
  readonly target: bigint;
  /** Scaled; the least number of a plan with no more units than these. */
  readonly bound: (most: MostUnits) => bigint;
  /**
   * How many units of a group fit into a better plan, when the bound is below the target by `slack`: as comes easily, or
   * exactly. Infinity where the tags do not tell.
   */
  readonly fitting: (group: StockGroup, slack: bigint, effort: 'quick' | 'exact') => number;
};

/**
 * Null when the tags show that no better plan is in the case, with no more units of these groups than so many.
 * @throws Flaw when the tags are not sound.
 */
export function nodeBound(
  tags: ProofTags,
  path: readonly Condition[],
  most: ReadonlyMap<StockGroup, number>,
  claim: StepClaim,
): NodeBound | null {
  const prices = nodePrices(tags, path, claim);
  const carriedBy = carriedUnder(prices, claim);
  const target = claim.scale * claim.below;
  const gains = [...most].flatMap(([group, units]) => gainOf(group, units, prices, carriedBy));
  gains.sort((one, other) => (one.lost === other.lost ? 0 : one.lost > other.lost ? -1 : 1));
  let bound = gains.reduce((rest, { lost }) => rest - lost, prices.base);
  const gaining = new Map<StockGroup, bigint>();
  // What lowers the bound most is looked at closely first, and no more of it than it takes.
  for (const { group, units, lost, exactly } of gains) {
    if (bound > target) return null;
    const gain = exactly();
    bound += lost - units * gain;
    if (gain > 0n) gaining.set(group, gain);
  }
  if (bound > target) return null;
  return {
    target,
    bound: (mostOf) => [...gaining].reduce((rest, [group, gain]) => rest - BigInt(mostOf(group)) * gain, prices.base),
    fitting: (group, slack, effort) =>
      gaining.has(group) ? Infinity : fittingUnits(group, prices.unit(group), slack, carriedBy, effort),
  };
}

/** Units that carry more than they cost: each lowers the bound by the difference. */
type Gain = {
  readonly group: StockGroup;
  readonly units: bigint;
  /** By all of them; above 0, and no less than it is. */ readonly lost: bigint;
  /** By one of them; never below 0. */ readonly exactly: () => bigint;
};

function gainOf(group: StockGroup, most: number, prices: NodePrices, carriedBy: CarriedBy): readonly Gain[] {
  if (most === 0) return [];
  const cost = prices.unit(group);
  const carried = carriedBy(group, cost);
  if (carried === null || carried.bound <= cost) return [];
  const units = BigInt(most);
  // A closer look may find that it carries no more than it costs: then none of it need be in use.
  const above = (carries: number): bigint => (carries > cost ? BigInt(carries) - BigInt(cost) : 0n);
  return [{ group, units, lost: units * above(carried.bound), exactly: () => above(carried.exactly()) }];
}

/** A unit that costs more than it carries makes a plan worse by the difference: so many fit into what is left. */
function fittingUnits(
  group: StockGroup,
  cost: number,
  slack: bigint,
  carriedBy: CarriedBy,
  effort: 'quick' | 'exact',
): number {
  // What makes a plan worse by more than what is left need not be known any better.
  const enough = BigInt(cost) - slack - 1n;
  const least = BigInt(-Number.MAX_SAFE_INTEGER);
  const carried = carriedBy(group, Number(enough < least ? least : enough));
  if (carried === null) return 0;
  const excess = BigInt(cost) - BigInt(effort === 'exact' ? carried.exactly() : carried.bound);
  return excess <= 0n ? Infinity : Math.max(0, Number(slack / excess));
}
