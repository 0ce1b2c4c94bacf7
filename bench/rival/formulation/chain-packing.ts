import type { Policy } from '../../../src/domain/board.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { takesThePlace } from '../../../src/loadout/ground-mode.js';
import { withinFactor } from '../../../src/loadout/load.js';
import type { ChainPlace, ChainPool } from '../../../src/loadout/uses.js';

/** How many steps the search takes before it gives up; giving up is never taken for an answer. */
const stepLimit = 50_000;

/**
 * Deals places out to chains of one pool with the given numbers of tails, so that every chain has two pedals or more,
 * a tail for each, and keeps the rules `current` and `startup`. Exact: depth first, largest loads first, like chains
 * tried once.
 * @returns the places of every chain, in the order of `tails`; null when there is no way or none was found in time.
 */
export function packChains(
  pool: ChainPool,
  tails: readonly number[],
  places: readonly ChainPlace[],
  likes: (place: ChainPlace) => Pedal,
  policy: Policy,
): readonly (readonly ChainPlace[])[] | null {
  const chains: ChainPlace[][] = tails.map(() => []);
  const order = [...places].sort((a, b) => (a.load === b.load ? Number(b.surge - a.surge) : a.load > b.load ? -1 : 1));
  const owned = new Set(
    pool.mode.noise === 'sole' && places.length > 0 ? places.filter((p) => takesThePlace(pool.mode, likes(p))) : [],
  );
  let steps = 0;

  const fits = (chain: readonly ChainPlace[], place: ChainPlace, room: number): boolean =>
    chain.length < room &&
    !(owned.has(place) && chain.some((other) => owned.has(other))) &&
    chainHolds([...chain, place], pool, policy);

  const lacking = (): number => chains.reduce((sum, chain) => sum + Math.max(0, 2 - chain.length), 0);

  const pack = (depth: number): boolean => {
    const place = order[depth];
    if (place === undefined) return lacking() === 0;
    if (order.length - depth < lacking()) return false;
    const tried = new Set<string>();
    for (const [index, chain] of chains.entries()) {
      const room = tails[index] ?? 0;
      const state = `${room}:${chain.map((each) => places.indexOf(each)).join()}`;
      if (tried.has(state) || !fits(chain, place, room)) continue;
      tried.add(state);
      if (++steps > stepLimit) return false;
      chain.push(place);
      if (pack(depth + 1)) return true;
      chain.pop();
    }
    return false;
  };
  return pack(0) ? chains : null;
}

/** Rules `current` and `startup` for several pedals on one output. */
export function chainHolds(chain: readonly ChainPlace[], pool: ChainPool, policy: Policy): boolean {
  const load = chain.reduce((sum, place) => sum + place.load, 0n);
  const surge = chain.reduce((sum, place) => sum + place.surge, 0n);
  return withinFactor(load, policy.headroom.chained, pool.rating) && surge <= pool.rating;
}
