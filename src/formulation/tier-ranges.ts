import { gathered } from '../../solver/gathered.js';
import { remembered } from '../../solver/remembered.js';
import { countedBeside, isMoney, type Criterion, type MoneyTier } from '../domain/aim.js';
import { natureOf } from '../domain/source.js';
import { mostUnits } from '../loadout/bench.js';
import type { UnitGroup } from './loadout-groups.js';
import type { Question } from './question.js';
import { mostOf } from './tier-extents.js';

/** From the least to the most that a tier can come to, both included; of nothing when the least is more. */
export type Range = { readonly least: number; readonly most: number };

/** What some tiers come to. */
export type Known = ReadonlyMap<Criterion, number>;

/** What a tier can come to where earlier ones are known, from what is known for free: so many supplies cost at least so much. */
export type TierRanges = (tier: Criterion, known: Known) => Range;

export function tierRanges(question: Question, groups: readonly UnitGroup[]): TierRanges {
  const counts = Array.from({ length: mostUnits(question.bench) + 1 }, (_, bricks) => bricks);
  const moneyAt = moneyOfBricks(question, groups);
  return (tier, known) => {
    const most = mostOf(tier, question);
    const bricks = known.get('bricks');
    if (isMoney(tier) && bricks !== undefined) {
      const range = moneyAt(tier, bricks);
      return { least: range.least, most: Math.min(most, range.most) };
    }
    const money = [...known].find(([each]) => isMoney(each));
    if (tier !== 'bricks' || money === undefined) return { least: 0, most };
    const [paid, value] = money as [MoneyTier, number];
    const fitting = counts.filter((count) => {
      const range = moneyAt(paid, count);
      return range.least <= value && value <= range.most;
    });
    return { least: fitting[0] ?? Infinity, most: fitting.at(-1) ?? 0 };
  };
}

/** What so many bricks cost: at least the cheapest ones, at most the dearest with every lead that pedals can have. */
function moneyOfBricks(question: Question, groups: readonly UnitGroup[]) {
  const { kinds, policy } = question.bench;
  const units = groups.map(({ uses, price, most }) => ({ price, most, ...natureOf(uses.supply.source) }));
  const counted = units.filter(({ bricks }) => bricks > 0).sort((one, two) => one.price - two.price);
  // Units that are no bricks may be bought besides.
  const isAll = counted.length === units.length;
  const lead = Math.max(0, ...gathered(kinds, ({ supplyOf }) => supplyOf.map(({ price }) => price)));
  const leads = lead * mostOf('parts', question);
  const mostExposed = mostOf('exposed', question);
  const dearestFirst = counted.toReversed();
  const known = new Map<MoneyTier, Range[]>();
  const rangeOf = (tier: MoneyTier, bricks: number): Range => {
    const { noise, supplies } = countedBeside[tier];
    const beside = supplies ? policy.supplyPrice * bricks : 0;
    const exposed = noise === null ? 0 : policy.noisePrice * mostExposed;
    const dearest = isAll ? priceOfFirst(bricks, dearestFirst) + leads : Infinity;
    return { least: priceOfFirst(bricks, counted) + beside, most: dearest + beside + exposed };
  };
  return (tier: MoneyTier, bricks: number): Range => {
    const ofTier = remembered(known, tier, () => []);
    return (ofTier[bricks] ??= rangeOf(tier, bricks));
  };
}

/** What the first so many units cost; Infinity where there are not so many. */
function priceOfFirst(count: number, units: readonly { readonly price: number; readonly most: number }[]): number {
  let [left, sum] = [count, 0];
  for (const { price, most } of units) {
    if (left === 0) break;
    const taken = Math.min(left, most);
    sum += taken * price;
    left -= taken;
  }
  return left > 0 ? Infinity : sum;
}
