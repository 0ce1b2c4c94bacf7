import type { Policy } from '../../domain/board.js';
import type { Supply } from '../../domain/supply.js';
import { chainShapes } from './chain-shapes.js';
import { placeShapes } from './place-shapes.js';
import type { Bench, UnitShape } from './shape.js';
import { burdensIn, limitsOf, type Limit } from './totals.js';

/** Null when the unit can carry nothing, or may not be plugged in at all. */
export function unitShape(supply: Supply, bench: Bench): UnitShape | null {
  if (!acceptsMains(supply, bench.policy)) return null;
  const limits = limitsOf(supply, bench.policy);
  const places = placeShapes(supply, limits, bench).filter((place) => isWithin(place.taken, limits));
  const chains = bench.policy.chains === 'never' ? [] : chainShapes(supply, limits, bench);
  if (places.length + chains.length === 0) return null;
  const all = [...places, ...chains.flatMap(({ links }) => links)].map(({ taken }) => taken);
  const pedals = bench.classes.reduce((sum, { members }) => sum + members.length, 0);
  const burdens = burdensIn(limits, all, pedals);
  const settled = <Shape extends { readonly taken: readonly bigint[] }>({ taken, ...rest }: Shape) => ({
    ...rest,
    burdens: burdens.of(taken),
  });
  return {
    banks: supply.banks,
    caps: burdens.caps,
    places: places.map(settled),
    chains: chains.map((chain) => ({ ...chain, links: chain.links.map(settled) })),
  };
}

/** The rule `mains`: a supply that does not state its mains is refused where the venue's are stated. */
function acceptsMains({ mains }: Supply, policy: Policy): boolean {
  if (policy.mains === null) return true;
  return mains !== null && mains.from <= policy.mains && policy.mains <= mains.to;
}

const isWithin = (taken: readonly bigint[], limits: readonly Limit[]): boolean =>
  limits.every(({ most }, index) => (taken[index] ?? 0n) <= most);
