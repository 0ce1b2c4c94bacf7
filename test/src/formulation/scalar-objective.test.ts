import { kitOf } from '../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perCountedTier, perLeadTier } from '../../../src/domain/counted-tiers.js';
import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { choosingAims, choosingTiersOf, type Criterion } from '../../../src/domain/aim.js';
import { minorUnits } from '../../../src/domain/quantities.js';
import {
  beatingObjective,
  scalarValue,
  scalarObjectives,
  type Measures,
} from '../../../src/formulation/scalar-objective.js';
import { tierValues } from '../../../src/formulation/digits.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';
import { firstDifference } from '../../support/tier-figures.js';

const noisePrice = euros(20);
const supplyPrice = euros(7);

/** A question on which every tier can be anything from nothing to its most; one unit costs `price` minor units. */
function question(pedals: number, tiers: readonly Criterion[], price: number): Question {
  const of = { digital: true, highGain: true, prefers: volts(9) };
  const all = Array.from({ length: pedals }, (_, index) => pedalOf(`pedal-${index}`, 1 + index, of));
  const supply = { ...supplyOf('supply', 0, [bankOf(2, [settingOf(9, 100)])]), price: minorUnits(price) };
  const parts = [
    partOf('flip', 5, { kind: 'adapter' }, { reverses: true }),
    partOf('fan', 5, { kind: 'chain', tails: 5 }),
    partOf('stack', 5, { kind: 'join', mode: 'series' }),
  ];
  const board = boardOf(all, { policy: policyOf({ noisePrice, supplyPrice }) });
  return questionOf(kitOf(board, catalogueOf([supply], parts)), { tiers, partial: true });
}

const nothing: Measures = {
  unpowered: 0,
  money: 0,
  exposed: 0,
  newlyExposed: 0,
  moved: 0,
  bricks: 0,
  sockets: 0,
  ...perCountedTier(() => 0),
};

/** What plans for so many pedals may add up to: no more units than pedals, two adapters and a join lead a pedal. */
const measures = (pedals: number, price: number): fc.Arbitrary<Measures> => {
  const count = fc.nat({ max: pedals });
  return fc
    .record({
      unpowered: count,
      units: count,
      leads: fc.nat({ max: 3 * pedals }),
      exposed: count,
      newlyExposed: count,
      moved: count,
      bricks: count,
      sockets: count,
      ...perLeadTier(() => fc.nat({ max: 3 * pedals })),
      ...perPedalTier(() => count),
    })
    .map(({ units, leads, ...rest }) => ({ ...rest, money: units * price + leads * 500 }));
};

const figuresOf = (of: Measures, tiers: readonly Criterion[]): readonly number[] =>
  tiers.map((tier) => {
    if (tier === 'outlay') return of.money + supplyPrice * of.bricks;
    if (tier === 'newCost') return of.money + noisePrice * of.newlyExposed + supplyPrice * of.bricks;
    return tier === 'cost' ? of.money + noisePrice * of.exposed + supplyPrice * of.bricks : of[tier];
  });

/** What plans have to agree in, so that they agree in a tier of money. */
const agreeing: Partial<Record<Criterion, readonly string[]>> = {
  cost: ['money', 'exposed', 'bricks'],
  outlay: ['money', 'bricks'],
};

const prices = fc.constantFrom(1, 999, 1000, 4000, 123_457);

describe.each(choosingAims)('the numbers that stand for the tiers of %s', (aim) => {
  const tiers = choosingTiersOf(aim, policyOf({ supplyPrice }));

  it.each([1, 6, 40])('put plans in the order of the tiers, with %i pedals', (pedals) => {
    const seen = { equal: 0, different: 0 };
    const pair = prices.chain((price) =>
      fc.tuple(fc.constant(price), measures(pedals, price), measures(pedals, price), fc.nat({ max: tiers.length })),
    );
    fc.assert(
      fc.property(pair, ([price, one, drawn, alike]) => {
        // Two plans at random differ in their first tier as a rule; these agree in some of the first ones.
        const agreed = tiers.slice(0, alike).flatMap((tier) => agreeing[tier] ?? [tier]);
        const shared = Object.fromEntries(Object.entries(one).filter(([name]) => agreed.includes(name)));
        const other = { ...drawn, ...shared };
        const objectives = scalarObjectives(question(pedals, tiers, price));
        const valuesOf = (each: Measures): readonly number[] =>
          objectives.map((objective) => scalarValue(objective, each));
        const expected = firstDifference(figuresOf(one, tiers), figuresOf(other, tiers));
        seen[expected === 0 ? 'equal' : 'different'] += 1;
        expect(Math.sign(firstDifference(valuesOf(one), valuesOf(other)))).toBe(Math.sign(expected));
      }),
      trying(500),
    );
    expect(seen.different).toBeGreaterThan(share(200));
    expect(seen.equal).toBeGreaterThan(share(30));
  });

  it('are whole, no greater than their greatest, and tell every tier', () => {
    const given = prices.chain((price) => fc.tuple(fc.constant(price), measures(6, price)));
    fc.assert(
      fc.property(given, ([price, each]) => {
        const objectives = scalarObjectives(question(6, tiers, price));
        const values = objectives.map((objective) => scalarValue(objective, each));
        for (const [index, objective] of objectives.entries()) {
          expect(Number.isSafeInteger(values[index])).toBe(true);
          expect(values[index]).toBeLessThanOrEqual(objective.greatest);
        }
        const figures = figuresOf(each, tiers);
        const told = objectives.flatMap((objective, index) => tierValues(objective, values[index] ?? NaN));
        expect(told).toEqual(tiers.map((tier, index) => [tier, figures[index]]));
      }),
      trying(300),
    );
  });

  it('never say of a bound more than it says', () => {
    const given = prices.chain((price) =>
      fc.tuple(fc.constant(price), measures(6, price), fc.double({ min: 0, max: 1, noNaN: true })),
    );
    fc.assert(
      fc.property(given, ([price, each, share]) => {
        for (const objective of scalarObjectives(question(6, tiers, price))) {
          const value = scalarValue(objective, each);
          const figuresAt = (bound: number): readonly number[] =>
            tierValues(objective, bound).map(([, figure]) => figure);
          expect(firstDifference(figuresAt(Math.floor(value * share)), figuresAt(value))).toBeLessThanOrEqual(0);
        }
      }),
      trying(300),
    );
  });

  it('are few, yet small enough for double precision', () => {
    const foldsWith = (pedals: number, price: number) => scalarObjectives(question(pedals, tiers, price));
    expect(foldsWith(2, 1000)).toHaveLength(1);
    const many = foldsWith(100, 123_457);
    expect(many.length).toBeGreaterThan(1);
    expect(many.flatMap((objective) => objective.tiers.map(({ tier }) => tier))).toEqual(tiers);
    for (const { greatest } of many) expect(greatest).toBeLessThan(2 ** 44);
  });
});

describe('a number', () => {
  it('counts money in what all prices are multiples of', () => {
    const [inTens] = scalarObjectives(question(2, ['money'], 1000));
    const [inCents] = scalarObjectives(question(2, ['money'], 999));
    expect([inTens?.moneyUnit, inCents?.moneyUnit]).toEqual([100, 1]);
    const spent = { ...nothing, money: 9990 };
    expect(inCents === undefined ? null : scalarValue(inCents, spent)).toBe(9990);
  });

  it('counts prices of exposed pedals and of supplies in use in the tiers of money that count them, and only there', () => {
    const exposed = {
      unpowered: 0,
      money: 3000,
      exposed: 2,
      newlyExposed: 1,
      moved: 2,
      bricks: 3,
      sockets: 2,
      ...perCountedTier(() => 0),
    };
    const told = (tier: Criterion) =>
      scalarObjectives(question(2, [tier], 1000)).flatMap((objective) =>
        tierValues(objective, scalarValue(objective, exposed)),
      );
    expect(told('cost')).toEqual([['cost', 3000 + 2 * 2000 + 3 * 700]]);
    expect(told('newCost')).toEqual([['newCost', 3000 + 2000 + 3 * 700]]);
    expect(told('outlay')).toEqual([['outlay', 3000 + 3 * 700]]);
    expect(told('money')).toEqual([['money', 3000]]);
    expect(told('exposed')).toEqual([['exposed', 2]]);
    expect(told('bricks')).toEqual([['bricks', 3]]);
    expect(told('sockets')).toEqual([['sockets', 2]]);
  });

  it('is nothing where any plan will do', () => {
    const [objective, ...more] = scalarObjectives(question(2, [], 1000));
    expect(more).toEqual([]);
    const all = { ...nothing, unpowered: 1, money: 5000, exposed: 2, newlyExposed: 1, moved: 2, bricks: 3, parts: 4 };
    expect(
      objective === undefined ? null : [scalarValue(objective, all), objective.greatest, tierValues(objective, 0)],
    ).toEqual([0, 0, []]);
  });
});

describe('what is worth looking at where a plan is to be beaten', () => {
  const all = question(40, ['money', 'bricks'], 999);
  const [both] = scalarObjectives(all);
  const [money] = scalarObjectives({ ...all, tiers: ['money'] });
  const greatest = (
    objective: typeof both,
    tiers: readonly Criterion[],
    beating: readonly (readonly [Criterion, number])[],
    settled: readonly (readonly [Criterion, number])[] = [],
  ): number => {
    if (objective === undefined) throw new RangeError('there is an objective');
    return beatingObjective(objective, { tiers, beating: new Map(beating) }, new Map(settled)).greatest;
  };
  const numberOf = (objective: typeof both, figures: Partial<Measures>): number =>
    objective === undefined ? NaN : scalarValue(objective, { ...nothing, ...figures });

  it('is one less in the last tier, and as much in a step that others follow', () => {
    const values = [
      ['money', 5000],
      ['bricks', 3],
    ] as const;
    expect(greatest(both, ['money', 'bricks'], values)).toBe(numberOf(both, { money: 5000, bricks: 3 }) - 1);
    expect(greatest(both, ['money', 'bricks', 'parts'], [...values, ['parts', 2]])).toBe(
      numberOf(both, { money: 5000, bricks: 3 }),
    );
  });

  it('is anything where earlier steps are better already, or nothing is to be beaten', () => {
    const order = ['bricks', 'money'] as const;
    const values = [
      ['bricks', 3],
      ['money', 5000],
    ] as const;
    expect(greatest(money, order, values, [['bricks', 3]])).toBe(numberOf(money, { money: 5000 }) - 1);
    expect(greatest(money, order, values, [['bricks', 2]])).toBe(money?.greatest);
    if (both === undefined) throw new RangeError('there is an objective');
    expect(beatingObjective(both, all, new Map())).toBe(both);
  });

  it('is all below a value that no plan can have, whatever comes after it', () => {
    const tens = question(40, ['money', 'bricks'], 1000);
    const [objective] = scalarObjectives(tens);
    const values = [
      ['money', 5050],
      ['bricks', 0],
    ] as const;
    expect(greatest(objective, tens.tiers, values)).toBe(numberOf(objective, { money: 5100 }) - 1);
  });
});
