/**
 * The best score of a tiny case by trying everything: for every pedal every output, setting, group on a chain and way
 * through the leads. A branch ends when a rule is broken or when what is placed so far is no better than the best plan
 * found, as every tier can only grow. The cost is exponential: up to about four pedals and three supplies of four outputs.
 */
import { compareScores, type Aim, type ChoosingAim } from '../../src/domain/aim.js';
import type { Board, Catalogue } from '../../src/domain/board.js';
import type { Pedal } from '../../src/domain/pedal.js';
import type { Feed, Score } from '../../src/domain/plan.js';
import type { Supply } from '../../src/domain/supply.js';
import { firstUnfed, inletHookupsOf, type UnfedUnit } from './brute-force-inlets.js';
import { hookupsOf, type Hookup } from './brute-force-hookups.js';
import { feedsOf, fits, newUnit, withHookup, type Unit } from './brute-force-unit.js';
import { mayFeedInlets } from './brute-force-sources.js';
import { scoreOf, withinLimits, type Shop } from './brute-force-score.js';
import { subsetsOf } from './subsets.js';

export type BruteForceAnswer =
  { readonly kind: 'plan'; readonly score: Score; readonly feeds: readonly Feed[] } | { readonly kind: 'impossible' };

type Options = {
  readonly aim: ChoosingAim;
  /** Pedals may stay unpowered. */
  readonly partial: boolean;
};

/** A best plan's score and feeds. Another plan may be as good under the aim with another score: compare by tiers. */
export function bruteForce(board: Board, catalogue: Catalogue, { aim, partial }: Options): BruteForceAnswer {
  const shop: Shop = { board, catalogue };
  const best = bestUnits(shop, partial, aim, (units, left) => scoreOf(units, left.length, shop));
  if (best === null) return { kind: 'impossible' };
  const feeds = feedsOf(best.units);
  return {
    kind: 'plan',
    score: best.score,
    feeds: [
      ...board.pedals.flatMap((pedal) => feeds.filter((feed) => feed.pedal === pedal.id)),
      ...feeds.filter(({ inletOf }) => inletOf !== undefined),
    ],
  };
}

/**
 * What a plan so far is worth when some pedals are left out; null when nothing that is added can make it right. No figure
 * may fall as more is plugged.
 */
export type Judge = (units: readonly Unit[], left: readonly Pedal[]) => Score | null;

/** The best of all ways to plug everything, or everything but some pedals where the plan may be partial. */
export function bestUnits(
  shop: Shop,
  partial: boolean,
  aim: Aim,
  judge: Judge,
): { readonly score: Score; readonly units: readonly Unit[] } | null {
  let best: { readonly score: Score; readonly units: readonly Unit[] } | null = null;
  everyPlan(shop, partial, (units, left, isWhole) => {
    const score = judge(units, left);
    if (score === null || !withinLimits(units, score, shop)) return false;
    if (best !== null && compareScores(score, best.score, aim, shop.board.policy) >= 0) return false;
    if (isWhole) best = { score, units };
    return true;
  });
  return best;
}

/**
 * Goes through all ways to plug everything, pedal by pedal and then inlet by inlet of the fed units in use, or everything but
 * some pedals where the plan may be partial. Each
 * plan so far is shown, and nothing is added to one that is not worth going on with.
 */
export function everyPlan(
  shop: Shop,
  partial: boolean,
  isWorthwhile: (units: readonly Unit[], left: readonly Pedal[], isWhole: boolean) => boolean,
): void {
  const { board } = shop;
  const hookups = hookupTable(shop);
  const inletHookups = inletTable(shop);

  const search = (waiting: readonly Pedal[], left: readonly Pedal[], units: readonly Unit[]): void => {
    const [pedal, ...rest] = waiting;
    const unit = pedal === undefined ? firstUnfed(units) : null;
    if (!isWorthwhile(units, left, pedal === undefined && unit === null)) return;
    if (unit !== null) {
      for (const hookup of inletHookups(unit))
        for (const next of placements(units, hookup, board)) search(waiting, left, next);
      return;
    }
    if (pedal === undefined) return;
    for (const partners of subsetsOf(rest)) {
      const others = rest.filter((other) => !partners.includes(other));
      for (const hookup of hookups([pedal, ...partners]))
        for (const next of placements(units, hookup, board)) search(others, left, next);
    }
    if (partial) search(rest, [...left, pedal], units);
  };

  const ways = new Map(board.pedals.map((pedal) => [pedal, hookups([pedal]).length]));
  search(
    [...board.pedals].sort((first, second) => (ways.get(first) ?? 0) - (ways.get(second) ?? 0)),
    [],
    [],
  );
}

/** Looks up every way to hang a group on one output of any supply, few parts first so that good plans come early. */
function hookupTable({ board, catalogue }: Shop): (pedals: readonly Pedal[]) => readonly Hookup[] {
  const supplies: readonly Supply[] = [...board.gear.supplies, ...catalogue.supplies];
  const parts = [...board.gear.parts, ...catalogue.parts];
  const known = new Map<string, readonly Hookup[]>();
  const partCount = ({ join, chain, tails }: Hookup): number =>
    (join === null ? 0 : 1) + (chain === null ? 0 : 1) + tails.flatMap(({ parts }) => parts).length;
  return (pedals) => {
    const key = JSON.stringify(pedals.map((pedal) => pedal.id).sort());
    const found =
      known.get(key) ??
      supplies
        .flatMap((supply) => hookupsOf(pedals, supply, parts, board.policy))
        .sort((first, second) => partCount(first) - partCount(second));
    known.set(key, found);
    return found;
  };
}

/** Looks up every way to hang the inlet of a unit on an output of a supply that may feed it. */
function inletTable({ board, catalogue }: Shop): (unit: UnfedUnit) => readonly Hookup[] {
  const supplies = [...board.gear.supplies, ...catalogue.supplies].filter(({ source }) => mayFeedInlets(source));
  const parts = [...board.gear.parts, ...catalogue.parts];
  return ({ supply, number }) =>
    supplies.flatMap((feeder) => inletHookupsOf(supply, number, feeder, parts, board.policy));
}

/** The units after the hookup went into a unit in use that has room for it, or into the next new one of its supply. */
function* placements(units: readonly Unit[], hookup: Hookup, board: Board): Generator<readonly Unit[]> {
  for (const [index, unit] of units.entries())
    if (unit.supply === hookup.supply && fits(unit, hookup, board.policy))
      yield units.with(index, withHookup(unit, hookup));
  const fresh = newUnit(hookup.supply);
  if (fits(fresh, hookup, board.policy)) yield [...units, withHookup(fresh, hookup)];
}
