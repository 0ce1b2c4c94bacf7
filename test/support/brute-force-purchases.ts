/**
 * Every purchase for a tiny board by trying everything: what each comes to at best, which pairs of money and another figure
 * nothing beats, and which of money, exposed pedals and supplies in use at once. Shares no code with what finds the best
 * purchases.
 */
import { compareScores, type ChoosingAim } from '../../src/domain/aim.js';
import type { Board, Catalogue } from '../../src/domain/board.js';
import type { Score } from '../../src/domain/plan.js';
import { everyPlan } from './brute-force.js';
import { scoreOf, withinLimits } from './brute-force-score.js';
import type { Unit } from './brute-force-unit.js';

/** Bought units by the supply's id; supplies of which there are none are left out. */
export type Counts = ReadonlyMap<string, number>;

export type PurchaseFound = { readonly bought: Counts; readonly score: Score };

export type Everything = {
  /** The best score of each purchase that powers every pedal; all of it is in use. */
  readonly purchases: readonly PurchaseFound[];
  /** Money and the other figure of every plan that no other plan beats, the cheapest first. */
  readonly unbeaten: Readonly<Record<'exposed' | 'bricks', readonly (readonly [money: number, amount: number])[]>>;
  /** The plans that no other beats on all three at once: the best score under the aim of those alike in the three. */
  readonly unbeatenScores: readonly Score[];
};

export function everyPurchase(board: Board, catalogue: Catalogue, aim: ChoosingAim): Everything {
  const shop = { board, catalogue };
  const purchases = new Map<string, PurchaseFound>();
  const scores = new Map<string, Score>();
  const pairs = { exposed: new Set<string>(), bricks: new Set<string>() };
  everyPlan(shop, false, (units, left, isWhole) => {
    const score = scoreOf(units, left.length, shop);
    if (!withinLimits(units, score, shop)) return false;
    if (!isWhole) return true;
    const bought = boughtOf(units, board);
    const key = JSON.stringify([...bought].sort());
    const known = purchases.get(key);
    if (known === undefined || compareScores(score, known.score, aim, board.policy) < 0)
      purchases.set(key, { bought, score });
    const three = JSON.stringify([score.money, score.exposed, score.bricks]);
    const alike = scores.get(three);
    if (alike === undefined || compareScores(score, alike, aim, board.policy) < 0) scores.set(three, score);
    pairs.exposed.add(JSON.stringify([score.money, score.exposed]));
    pairs.bricks.add(JSON.stringify([score.money, score.bricks]));
    return true;
  });
  return {
    purchases: [...purchases.values()],
    unbeaten: { exposed: unbeatenOf(pairs.exposed), bricks: unbeatenOf(pairs.bricks) },
    unbeatenScores: unbeatenScores([...scores.values()]),
  };
}

/** Each differs from every other in one of the three at least. */
function unbeatenScores(scores: readonly Score[]): readonly Score[] {
  const isBeaten = (score: Score): boolean =>
    scores.some(
      (other) =>
        other !== score && other.money <= score.money && other.exposed <= score.exposed && other.bricks <= score.bricks,
    );
  return scores.filter((score) => !isBeaten(score));
}

function boughtOf(units: readonly Unit[], { owned }: Board): Counts {
  const counts = new Map<string, number>();
  for (const { supply } of units) {
    const used = units.filter((unit) => unit.supply === supply).length;
    const beyond = used - (owned.supplies.get(supply.id) ?? 0);
    if (beyond > 0) counts.set(supply.id, beyond);
  }
  return counts;
}

/** Whether the first has all that the second has. */
export const contains = (first: Counts, second: Counts): boolean =>
  [...second].every(([id, units]) => (first.get(id) ?? 0) >= units);

function unbeatenOf(texts: ReadonlySet<string>): readonly (readonly [number, number])[] {
  const pairs = [...texts].map((text) => JSON.parse(text) as [number, number]);
  const isBeaten = ([money, amount]: readonly [number, number]): boolean =>
    pairs.some((other) => other[0] <= money && other[1] <= amount && (other[0] < money || other[1] < amount));
  return pairs.filter((pair) => !isBeaten(pair)).sort((first, second) => first[0] - second[0]);
}
