import type { Supply } from '../../domain/supply.js';
import { suitsVenues, wayStart, type WayStart } from '../sources.js';
import { chainShapes } from './chain-shapes.js';
import { placeShapes } from './place-shapes.js';
import type { ProofBench, UnitShape } from './shape.js';
import { burdensIn, limitsOf, type Limit } from './totals.js';

/** Null when the unit can carry nothing, or may not be plugged in at all. */
export function unitShape(supply: Supply, bench: ProofBench): UnitShape | null {
  if (!suitsVenues(supply.source, bench.policy.mains)) return null;
  const limits = limitsOf(supply, bench.policy);
  const { places, chains } = shapesFrom[wayStart(supply.source)](supply, limits, bench);
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

type Shapes = { readonly places: ReturnType<typeof placeShapes>; readonly chains: ReturnType<typeof chainShapes> };

/** What could hang on the unit, by where the ways start. */
const shapesFrom: Readonly<Record<WayStart, (supply: Supply, limits: readonly Limit[], bench: ProofBench) => Shapes>> =
  {
    plug: (supply, limits, bench) => ({
      places: placeShapes(supply, limits, bench).filter((place) => isWithin(place.taken, limits)),
      chains: bench.policy.chains === 'never' ? [] : chainShapes(supply, limits, bench),
    }),
  };

const isWithin = (taken: readonly bigint[], limits: readonly Limit[]): boolean =>
  limits.every(({ most }, index) => (taken[index] ?? 0n) <= most);
