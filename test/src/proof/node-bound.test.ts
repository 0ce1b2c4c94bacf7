import { expect, it } from 'vitest';

import type { Proof } from '../../../src/domain/proof.js';
import { groundOf, type StepClaim } from '../../../src/proof/claim.js';
import { measureOf } from '../../../src/proof/measure.js';
import { nodeBound } from '../../../src/proof/node-bound.js';
import { bankOf, boardOf, catalogueOf, pedalOf, policyOf, settingOf, supplyOf } from '../../support/builders.js';
import type { SupplyId } from '../../../src/domain/quantities.js';

const box = supplyOf('box', 10, [bankOf(1, [settingOf(9, 100)])]);
const board = boardOf([pedalOf('one', 10), pedalOf('two', 10)], {
  policy: policyOf({ chains: 'never' }),
  owned: { supplies: new Map<SupplyId, number>([[box.id, 1]]), parts: new Map() },
});
const tiers: Proof['steps'][number]['tiers'] = [{ tier: 'money', unit: 1, weight: 1 }];

/** The best plan buys a second box for 10.00, and this claims 10.01. */
function claimOf(loose: number): StepClaim {
  const value = 1_001n;
  const ground = groundOf(board, catalogueOf([box]), false, null);
  // What comes easily is a bound, as loose as it happens to be. Units that are owned and bought carry alike.
  const carriers = [...ground.carriers].map(([group, carrier]) => {
    const loosely: typeof carrier = (...asked) => {
      const { bound, exactly } = carrier(...asked);
      return { bound: bound + loose, exactly };
    };
    return [group, loosely] as const;
  });
  const [first] = carriers;
  if (first === undefined) throw new Error('there is a box');
  const shared = new Map(carriers.map(([group]) => [group, first[1]] as const));
  const measure = measureOf(tiers, board.policy);
  return { ...ground, carriers: shared, scale: 1n, value, below: value - 1n, measure, earlier: [] };
}

it('shows no more than there is where units carry less than they cost, however loose the first look at them is', () => {
  const tags = { pedals: { one: 900, two: 900 }, conditions: [] };
  for (const loose of [0, 50, 500, 5_000]) {
    const claim = claimOf(loose);
    const most = new Map(claim.stock.groups.map((group) => [group, group.most]));
    const shown = nodeBound(tags, [], most, claim);
    // Two pedals are worth 1800; the owned box carries 900 of them for nothing, a bought one costs more than it carries.
    expect(shown?.bound(({ most: all }) => all)).toBe(900n);
  }
});
