import { describe, expect, it } from 'vitest';

import { instance, type Chains } from '../../bench/instances.js';
import type { Board, Catalogue } from '../../src/domain/board.js';
import type { Pedal } from '../../src/domain/pedal.js';
import { bruteForce } from './brute-force.js';
import { hookupsOf } from './brute-force-hookups.js';
import { fits, newUnit } from './brute-force-unit.js';

const sizes = [
  { pedals: 6, supplies: 6 },
  { pedals: 12, supplies: 40 },
  { pedals: 20, supplies: 100 },
  { pedals: 60, supplies: 300 },
];
const kinds: readonly Chains[] = ['none', 'adapters', 'all'];
const seeds = [1, 2, 3, 4, 5];
const shapes = sizes.flatMap((size) =>
  kinds.flatMap((chains) =>
    seeds.filter((seed) => seed === 1 || size.pedals < 60).map((seed) => ({ ...size, chains, seed })),
  ),
);

/** The least that a unit of its own costs for the pedal, counting only what never runs out. Infinity when nothing fits. */
function aloneCost(pedal: Pedal, { policy }: Board, { supplies, parts }: Catalogue): number {
  const endless = parts.filter((part) => part.stock === null);
  const costs = supplies
    .filter((supply) => supply.stock === null)
    .flatMap((supply) => hookupsOf([pedal], supply, endless, policy))
    .filter((hookup) => fits(newUnit(hookup.supply), hookup, policy))
    .map(({ supply, tails, join }) =>
      [supply, ...tails.flatMap(({ parts }) => parts), ...(join === null ? [] : [join.lead])].reduce(
        (sum, { price }) => sum + (price ?? 0),
        0,
      ),
    );
  return Math.min(...costs);
}

describe('bench instances', () => {
  it('are the same for the same seed, and differ between seeds', () => {
    const shape = { pedals: 12, supplies: 40, chains: 'all' } as const;
    expect(instance({ ...shape, seed: 7 })).toEqual(instance({ ...shape, seed: 7 }));
    expect(instance({ ...shape, seed: 7 })).not.toEqual(instance({ ...shape, seed: 8 }));
  });

  it.each(shapes)('have a plan within their limits: $pedals × $supplies, chains $chains, seed $seed', (shape) => {
    const { board, catalogue } = instance(shape);
    expect([board.pedals.length, catalogue.supplies.length]).toEqual([shape.pedals, shape.supplies]);
    const costs = board.pedals.map((pedal) => aloneCost(pedal, board, catalogue));
    expect(costs.reduce((sum, cost) => sum + cost, 0)).toBeLessThanOrEqual(board.policy.budget ?? 0);
    expect(board.policy.sockets).toBe(shape.pedals);
    expect(board.policy.bricks).toBeNull();
  });

  it.each(seeds)('chain where they should: seed %i', (seed) => {
    const shape = { pedals: 12, supplies: 40, seed };
    const fitting = (chains: Chains) => {
      const { supplies, parts } = instance({ ...shape, chains }).catalogue;
      const plugs = parts.filter((part) => part.role.kind === 'chain').map((part) => part.fits);
      return supplies.filter((supply) => supply.banks.some((bank) => plugs.includes(bank.plug)));
    };
    const outputs = fitting('adapters').map(({ banks }) => banks.reduce((sum, bank) => sum + bank.outputs, 0));
    expect(outputs.length).toBeGreaterThan(0);
    expect(outputs.every((count) => count === 1)).toBe(true);
    expect(fitting('all')).toHaveLength(40);
    expect(instance({ ...shape, chains: 'none' }).board.policy.chains).toBe('never');
  });

  it.each(seeds)('can be solved when small: seed %i', (seed) => {
    const { board, catalogue } = instance({ pedals: 3, supplies: 6, chains: 'all', seed });
    expect(bruteForce(board, catalogue, { aim: 'cost', partial: false }).kind).toBe('plan');
  });

  it('refuse a shop that is too small for the board', () => {
    expect(() => instance({ pedals: 60, supplies: 1, chains: 'all', seed: 1 })).toThrow(RangeError);
  });
});
