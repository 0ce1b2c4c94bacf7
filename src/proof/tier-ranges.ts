import type { Tier } from '../domain/aim.js';
import type { ProofGround } from './claim.js';
import { countsNoise, countsSupplies, isMoney } from './measure.js';
import { mostExposed, mostOf, mostOnLeads } from './ranking.js';
import { unitCounts } from './sources.js';

/** From the least to the most that a tier comes to, both included, money in minor units; nothing when the least is more. */
export type Range = { readonly least: number; readonly most: number };

/** What a tier can come to in a plan whose more important tiers come to what is known of them. */
export function rangeOf(tier: Tier, known: ReadonlyMap<Tier, number>, ground: ProofGround): Range {
  const most = mostOf(tier, ground);
  const bricks = known.get('bricks');
  if (isMoney(tier) && bricks !== undefined) {
    const money = moneyOf(bricks, tier, ground);
    return { least: money.least, most: Math.min(most, money.most) };
  }
  if (tier !== 'bricks') return { least: 0, most };
  const paid = [...known].filter(([each]) => isMoney(each));
  const isPaid = (count: number): boolean =>
    paid.every(([each, value]) => {
      const money = moneyOf(count, each, ground);
      return money.least <= value && value <= money.most;
    });
  const fitting = Array.from({ length: most + 1 }, (_, count) => count).filter(isPaid);
  return { least: fitting[0] ?? Infinity, most: fitting.at(-1) ?? 0 };
}

/** So many bricks cost at least the cheapest units that there are, at most the dearest with all leads and all noise. */
function moneyOf(bricks: number, tier: Tier, ground: ProofGround): Range {
  const units = ground.stock.groups.map(({ supply, price, most }) => ({ price, most, ...unitCounts(supply.source) }));
  const counted = units.filter((unit) => unit.bricks > 0n);
  const { supplyPrice, noisePrice } = ground.board.policy;
  const beside = countsSupplies(tier) ? supplyPrice * bricks : 0;
  const noise = countsNoise(tier) ? noisePrice * mostExposed(ground) : 0;
  // What is no brick may cost whatever it does.
  const dearest = counted.length < units.length ? Infinity : sumOfFirst(bricks, byPrice(counted, -1));
  return {
    least: sumOfFirst(bricks, byPrice(counted, 1)) + beside,
    most: dearest + mostOnLeads(ground) + beside + noise,
  };
}

type Units = readonly { readonly price: number; readonly most: number }[];

const byPrice = (units: Units, sign: 1 | -1): Units => [...units].sort((one, two) => sign * (one.price - two.price));

/** Infinity where there are not so many. */
function sumOfFirst(count: number, units: Units): number {
  let left = count;
  let sum = 0;
  for (const { price, most } of units) {
    const here = Math.min(left, most);
    sum += here * price;
    left -= here;
  }
  return left === 0 ? sum : Infinity;
}
