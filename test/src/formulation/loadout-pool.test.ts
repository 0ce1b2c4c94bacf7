import { expect, it } from 'vitest';

import { kitOf } from '../../../src/domain/kit.js';
import { LoadoutPool } from '../../../src/formulation/loadout-pool.js';
import { questionOf } from '../../../src/formulation/question.js';
import type { Hung, Loadout } from '../../../src/loadout/loadout.js';
import type { SupplyUses } from '../../../src/loadout/supply-uses.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../support/builders.js';

const board = boardOf([pedalOf('a', 10), pedalOf('b', 20), pedalOf('c', 30)], {
  policy: policyOf({ chains: 'allow' }),
});
const boxes = ['box', 'twin'].map((id) => supplyOf(id, 20, [bankOf(3, [settingOf(9, 100)])]));
const fan = partOf('fan', 8, { kind: 'chain', tails: 3 });
const { supplies } = questionOf(kitOf(board, catalogueOf(boxes, [fan])), { tiers: [], partial: false });

const [box, twin] = supplies;
if (box === undefined || twin === undefined) throw new RangeError('both boxes feed the pedals');

const solo = (pedal: number, uses: SupplyUses): Hung => {
  const use = uses.solos.find((each) => each.pedal === pedal);
  if (use === undefined) throw new RangeError(`nothing feeds ${pedal}`);
  return { kind: 'solo', use };
};

const chain = (pedals: readonly number[], { chains: [pool] }: SupplyUses): Hung => {
  if (pool === undefined) throw new RangeError('there are no chains');
  return { kind: 'chain', pool, lead: 0, places: pool.places.filter(({ pedal }) => pedals.includes(pedal)) };
};

const loadout = (uses: SupplyUses, ...hung: readonly Hung[]): Loadout => ({
  supply: uses.supply,
  unit: null,
  mode: null,
  hung,
});

/** The same supply with everything struck out that has to do with a pedal. */
const without = (pedal: number, uses: SupplyUses): SupplyUses => ({
  ...uses,
  solos: uses.solos.filter((use) => use.pedal !== pedal),
  chains: uses.chains.map((pool) => ({ ...pool, places: pool.places.filter((place) => place.pedal !== pedal) })),
});

function poolOf(loadouts: readonly Loadout[]): LoadoutPool {
  const pool = new LoadoutPool();
  for (const each of loadouts) pool.add(each);
  return pool;
}

it('hands on the loadouts of a supply, however many units there are of it', () => {
  const [one, two] = [loadout(box, solo(0, box), chain([1, 2], box)), loadout(twin, solo(1, twin))];
  const pool = poolOf([one, two]);
  expect(pool.fitting({ ...box, owned: 0, forSale: 1 })).toEqual([one]);
  expect(pool.fitting(twin)).toEqual([two]);
});

it('hands a loadout on once, in whichever order its pedals hang', () => {
  const pool = poolOf([
    loadout(box, solo(0, box), chain([1, 2], box)),
    loadout(box, chain([1, 2], box), solo(0, box)),
    loadout(box, solo(1, box), chain([0, 2], box)),
  ]);
  expect(pool.fitting(box)).toHaveLength(2);
});

it('hands on no loadout of which a use has been struck out, be it alone or in a chain', () => {
  const alone = loadout(box, solo(0, box));
  const chained = loadout(box, chain([0, 1], box));
  const others = loadout(box, chain([1, 2], box), solo(1, box));
  expect(poolOf([alone, chained, others]).fitting(without(0, box))).toEqual([others]);
});

it('hands on nothing to a supply that is worked out anew', () => {
  const again = questionOf(kitOf(board, catalogueOf(boxes, [fan])), { tiers: [], partial: false }).supplies;
  const pool = poolOf([loadout(box, solo(0, box)), loadout(box, chain([0, 1], box))]);
  expect(again.flatMap((uses) => pool.fitting(uses))).toEqual([]);
});

it('hands on the plans of which all loadouts fit, the latest first', () => {
  const pool = new LoadoutPool();
  const one = [loadout(box, solo(0, box)), loadout(twin, solo(1, twin), solo(2, twin))];
  const two = [loadout(box, solo(0, box), chain([1, 2], box))];
  const three = [loadout(twin, solo(0, twin), chain([1, 2], twin))];
  for (const plan of [one, two, three]) pool.addPlan(plan);
  expect(pool.fittingPlans([box, twin])).toEqual([three, two, one]);
  expect(pool.fittingPlans([box])).toEqual([two]);
  expect(pool.fittingPlans([without(2, box), twin])).toEqual([three, one]);
  expect(pool.fittingPlans([])).toEqual([]);
});
