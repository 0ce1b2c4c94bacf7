import type { Board, Catalogue } from '../../src/domain/board.js';
import type { Part } from '../../src/domain/part.js';
import type { Pedal } from '../../src/domain/pedal.js';
import type { Score } from '../../src/domain/plan.js';
import { minorUnits, type MinorUnits } from '../../src/domain/quantities.js';
import type { Hookup } from './brute-force-hookups.js';
import { bricksAmong, socketsAmong } from './brute-force-sources.js';
import { countedOf, leadsCounted } from './brute-force-tiers.js';
import { domainsOf, type Unit } from './brute-force-unit.js';

export type Shop = { readonly board: Board; readonly catalogue: Catalogue };

/** The score of what is plugged so far; every figure can only grow as more is plugged. */
export function scoreOf(units: readonly Unit[], unpowered: number, { board }: Shop): Score {
  const hookups = units.flatMap((unit) => unit.hookups);
  const parts = hookups.flatMap(partsOf);
  const money =
    priceOfMissing(
      units.map((unit) => unit.supply),
      board.owned.supplies,
    ) + priceOfMissing(parts, board.owned.parts);
  return {
    unpowered,
    money: minorUnits(money),
    exposed: units.flatMap(domainsOf).flatMap(exposedOf).length,
    bricks: bricksAmong(units.map(({ supply }) => supply)),
    ...leadsCounted(parts),
    ...countedOf(hookups),
    moved: null,
  };
}

/** The rules `stock` and `limit`. */
export function withinLimits(units: readonly Unit[], score: Score, { board }: Shop): boolean {
  const { budget, bricks, sockets } = board.policy;
  if (budget !== null && score.money > budget) return false;
  const supplies = units.map(({ supply }) => supply);
  if (bricks !== null && bricksAmong(supplies) > bricks) return false;
  if (sockets !== null && socketsAmong(supplies) > sockets) return false;
  const parts = units.flatMap((unit) => unit.hookups).flatMap(partsOf);
  return isInStock(supplies, board.owned.supplies) && isInStock(parts, board.owned.parts);
}

/** Every lead beyond the supply's own straight ones. A chain lead counts once for all its pedals. */
function partsOf({ join, chain, tails }: Hookup): readonly Part[] {
  return [
    ...(join === null ? [] : [join.lead]),
    ...(chain === null ? [] : [chain]),
    ...tails.flatMap(({ parts }) => parts),
  ];
}

/** High-gain pedals that share their ground with a digital pedal other than themselves. */
export const exposedOf = (domain: readonly Pedal[]): readonly Pedal[] =>
  domain.filter((pedal) => pedal.highGain && domain.some((other) => other !== pedal && other.digital));

type Article<Id> = { readonly id: Id; readonly price: MinorUnits | null; readonly stock: number | null };

function countsOf<Id>(articles: readonly Article<Id>[]): ReadonlyMap<Article<Id>, number> {
  const counts = new Map<Article<Id>, number>();
  for (const article of articles) counts.set(article, (counts.get(article) ?? 0) + 1);
  return counts;
}

/** What must be paid for the articles beyond the owned ones. What has no price is not for sale: see `isInStock`. */
function priceOfMissing<Id>(articles: readonly Article<Id>[], owned: ReadonlyMap<Id, number>): number {
  let sum = 0;
  for (const [{ id, price }, count] of countsOf(articles))
    sum += Math.max(0, count - (owned.get(id) ?? 0)) * (price ?? 0);
  return sum;
}

function isInStock<Id>(articles: readonly Article<Id>[], owned: ReadonlyMap<Id, number>): boolean {
  for (const [{ id, price, stock }, count] of countsOf(articles)) {
    const missing = count - (owned.get(id) ?? 0);
    if (missing > 0 && (price === null || (stock !== null && missing > stock))) return false;
  }
  return true;
}
