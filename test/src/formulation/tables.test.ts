import { expect, it } from 'vitest';

import { withoutPedals, withPolicy, withThings } from '../../../src/domain/changed-kit.js';
import { kitOf, type Kit } from '../../../src/domain/kit.js';
import { pedalId } from '../../../src/domain/quantities.js';
import { Tables } from '../../../src/formulation/tables.js';
import { nothingToday, type Today } from '../../../src/loadout/today.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  factor,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../support/builders.js';

const pedals = [pedalOf('a', 10), pedalOf('b', 20)];
const policy = policyOf({ chains: 'allow', budget: euros(90), bricks: 3, sockets: 3 });
const box = supplyOf('box', 20, [bankOf(2, [settingOf(9, 100)])]);
const other = supplyOf('other', 10, [bankOf(1, [settingOf(9, 100)])], { stock: 2 });
const parts = [partOf('fan', 8, { kind: 'chain', tails: 3 })];
const kit = kitOf(boardOf(pedals, { policy }), catalogueOf([box, other], parts));

/** What is worked out of two kits, one after the other. */
function bothOf(one: Kit, two: Kit, today: Today = nothingToday) {
  const tables = new Tables();
  return [tables.offeredBy(one, nothingToday), tables.offeredBy(two, today)] as const;
}

it.each([
  ['limits', { budget: euros(50), bricks: 1, sockets: null }],
  ['what noise and supplies are worth', { noisePrice: euros(1), supplyPrice: euros(2) }],
])('uses are not worked out again for other %s, which are the policy of the question all the same', (_, changed) => {
  const [before, after] = bothOf(kit, withPolicy(kit, changed));
  expect(after.bench.classes).toBe(before.bench.classes);
  expect(after.supplies.map(({ solos }) => solos)).toEqual(before.supplies.map(({ solos }) => solos));
  for (const [index, uses] of after.supplies.entries()) expect(uses.solos).toBe(before.supplies[index]?.solos);
  expect(after.supplies).toHaveLength(2);
  expect(after.bench.policy).toEqual({ ...kit.board.policy, ...changed });
  expect(before.bench.policy).toEqual(kit.board.policy);
});

it('of a supply that is changed alone the uses are worked out again', () => {
  const lessOf = withThings(kit, (supply) => (supply.id === other.id ? { ...supply, stock: 1 } : supply));
  const [before, after] = bothOf(kit, lessOf);
  expect(after.supplies.map(({ forSale }) => forSale)).toEqual([Infinity, 1]);
  expect(after.supplies[0]?.solos).toBe(before.supplies[0]?.solos);
  expect(after.supplies[1]?.solos).not.toBe(before.supplies[1]?.solos);
  expect(after.supplies[1]?.supply.stock).toBe(1);
});

it('a supply of which there is none is left out, and is there again where there is', () => {
  const none = withThings(kit, (supply) => (supply.id === other.id ? { ...supply, stock: 0 } : supply));
  const tables = new Tables();
  const counted = (of: Kit): number => tables.offeredBy(of, nothingToday).supplies.length;
  expect([none, kit, none].map(counted)).toEqual([1, 2, 1]);
});

it.each<[string, Kit, Today]>([
  ['a rule of the policy', withPolicy(kit, { headroom: { ...policy.headroom, alone: factor(2) } }), nothingToday],
  ['chains', withPolicy(kit, { chains: 'never' }), nothingToday],
  ['the pedals', withoutPedals([pedalId('a')], kit), nothingToday],
  [
    'the price of a lead',
    withThings(
      kit,
      (s) => s,
      (part) => ({ ...part, price: euros(1) }),
    ),
    nothingToday,
  ],
  ['a pedal that is kept to its place', kit, { ...nothingToday, pinned: new Set([pedalId('a')]) }],
])('all is worked out again where %s differs', (_, changed, today) => {
  const [before, after] = bothOf(kit, changed, today);
  expect(after.bench.classes).not.toBe(before.bench.classes);
  const alone = new Tables().offeredBy(changed, today);
  expect(after.supplies).toEqual(alone.supplies);
  const { classes, kinds, policy: ruling } = after.bench;
  expect({ classes, kinds }).toEqual({ classes: alone.bench.classes, kinds: alone.bench.kinds });
  expect(ruling).toBe(changed.board.policy);
});
