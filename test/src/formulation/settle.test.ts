import { kitOf } from '../../../src/domain/kit.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { audit } from '../../../src/audit/audit.js';
import { soundPlan } from '../../../src/audit/audit-wiring.js';
import { choosingAims, tiersOf, tierValue, type Tier } from '../../../src/domain/aim.js';
import type { Policy } from '../../../src/domain/board.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import { partId, supplyId } from '../../../src/domain/quantities.js';
import type { Supply } from '../../../src/domain/supply.js';
import { scalarObjectives, type SettledStep } from '../../../src/formulation/scalar-objective.js';
import { tierValues } from '../../../src/formulation/digits.js';
import { namedFeeds } from '../../../src/formulation/named-feeds.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import { settle } from '../../../src/formulation/settle.js';
import { loadoutPricer } from '../../../src/loadout/best-loadout.js';
import type { Loadout } from '../../../src/loadout/loadout.js';
import { tinyCase } from '../../support/arbitraries.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  factor,
  listed,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';
import { loadoutOf, type Hanging } from './loadouts.js';
import { share, trying } from '../../support/runs.js';

const box = supplyOf('box', 20, [bankOf(2, [settingOf(9, 100)])]);
const pair = partOf('pair', 5, { kind: 'chain', tails: 2 });
const fan = partOf('fan', 8, { kind: 'chain', tails: 3 });
const abc = [pedalOf('a', 10), pedalOf('b', 20), pedalOf('c', 30)];

const counted: readonly Tier[] = ['unpowered', 'cost', 'bricks', 'parts', 'offPreferred'];

type Given = {
  readonly pedals?: readonly Pedal[];
  readonly supplies?: readonly Supply[];
  readonly parts?: readonly Part[];
  readonly policy?: Partial<Policy>;
  readonly owned?: {
    readonly supplies?: Readonly<Record<string, number>>;
    readonly parts?: Readonly<Record<string, number>>;
  };
  readonly tiers?: readonly Tier[];
  readonly partial?: boolean;
  /** How many pedals of the first class must be fed. */
  readonly required?: number;
};

function question({
  pedals = abc,
  supplies = [box],
  parts = [pair, fan],
  policy = {},
  owned = {},
  ...terms
}: Given): Question {
  const board = boardOf(pedals, {
    policy: policyOf(policy),
    owned: {
      supplies: new Map(Object.entries(owned.supplies ?? {}).map(([id, count]) => [supplyId(id), count])),
      parts: new Map(Object.entries(owned.parts ?? {}).map(([id, count]) => [partId(id), count])),
    },
  });
  const { tiers = counted, partial = false, required = 0 } = terms;
  return questionOf(kitOf(board, catalogueOf(supplies, parts)), { tiers, partial, required: new Map([[0, required]]) });
}

type Unit = readonly [supply: string, ...hanging: readonly Hanging[]];

/** What the units make of themselves: tier by tier, the most important first; null where they make no plan. */
function settled(given: Given, units: readonly Unit[], earlier: readonly SettledStep[] = []): readonly number[] | null {
  const asked = question(given);
  const [objective, ...more] = scalarObjectives(asked);
  if (objective === undefined || more.length > 0) throw new RangeError('the tiers take more than one number');
  const loadouts = units.map(([supply, ...hanging]) => loadoutOf(asked, supply, ...hanging));
  const plan = settle(loadouts, asked, asked.supplies, objective, earlier);
  return plan === null ? null : tierValues(objective, plan.value).map(([, figure]) => figure);
}

/** Those of `counted`; the cost in euros. */
const plan = (cost: number, bricks: number, parts = 0, offPreferred = 0, unpowered = 0): readonly number[] => [
  unpowered,
  euros(cost),
  bricks,
  parts,
  offPreferred,
];

describe('a plan of loadouts', () => {
  const whole: readonly Unit[] = [
    ['box', 'a', 'b'],
    ['box', 'c'],
  ];

  it('costs what its units and leads cost', () => {
    expect(settled({}, whole)).toEqual(plan(40, 2));
    expect(settled({}, [['box', ['pair', 'a', 'b'], 'c']])).toEqual(plan(25, 1, 1));
    expect(settled({}, [['box', ['fan', 'a', 'b', 'c']]])).toEqual(plan(28, 1, 1));
  });

  it('counts exposed pedals and those off their preferred volts', () => {
    const pedals = [
      pedalOf('a', 10, { digital: true }),
      pedalOf('b', 20, { highGain: true }),
      pedalOf('c', 30, { accepts: listed(9, 12), prefers: volts(12) }),
    ];
    expect(settled({ pedals }, whole)).toEqual(plan(40, 2, 0, 1));
    expect(settled({ pedals }, [['box', ['pair', 'a', 'b'], 'c']])).toEqual(plan(45, 1, 1, 1));
  });

  it('is none where a pedal is missing', () => {
    expect(settled({}, [['box', 'a', 'b']])).toBeNull();
    expect(settled({}, [])).toBeNull();
  });

  it('may leave pedals out where it may be partial, but none that must be fed', () => {
    expect(settled({ partial: true }, [['box', 'b', 'c']])).toEqual(plan(20, 1, 0, 0, 1));
    expect(settled({ partial: true }, [])).toEqual(plan(0, 0, 0, 0, 3));
    expect(settled({ partial: true, required: 1 }, [['box', 'b', 'c']])).toBeNull();
    expect(settled({ partial: true, required: 1 }, [['box', 'a', 'c']])).toEqual(plan(20, 1, 0, 0, 1));
  });
});

describe('a pedal that is fed twice', () => {
  it('is taken off, and with it a unit on which nothing else hangs', () => {
    expect(
      settled({}, [
        ['box', 'a', 'b'],
        ['box', 'b', 'c'],
      ]),
    ).toEqual(plan(40, 2));
    expect(
      settled({}, [
        ['box', 'a', 'b'],
        ['box', 'b'],
        ['box', 'c'],
      ]),
    ).toEqual(plan(40, 2));
    expect(
      settled({}, [
        ['box', 'a', 'b'],
        ['box', 'a', 'b'],
        ['box', 'c'],
      ]),
    ).toEqual(plan(40, 2));
  });

  it('is taken off where that saves the most', () => {
    // From the chain it would save nothing, from the unit that has no other pedal it saves the unit.
    expect(
      settled({}, [
        ['box', ['fan', 'a', 'b', 'c']],
        ['box', 'c'],
      ]),
    ).toEqual(plan(28, 1, 1));
    expect(
      settled({}, [
        ['box', 'c'],
        ['box', ['fan', 'a', 'b', 'c']],
      ]),
    ).toEqual(plan(28, 1, 1));
  });

  it('leaves a chain without its lead when one pedal stays', () => {
    expect(
      settled({}, [
        ['box', ['pair', 'a', 'b']],
        ['box', ['pair', 'b', 'c']],
      ]),
    ).toEqual(plan(45, 2, 1));
  });

  it('stays on a chain where the other one could not stay alone', () => {
    // 60 mA × 2 is beyond 100 mA for a pedal alone; on a chain they need no headroom.
    const policy = { headroom: { alone: factor(2), chained: factor(1), supply: factor(1) } };
    const heavy = pedalOf('a', 60);
    const twice: readonly Unit[] = [
      ['box', ['pair', 'a', 'b']],
      ['box', ['pair', 'b', 'c']],
    ];
    expect(settled({ policy, pedals: [heavy, pedalOf('b', 20), pedalOf('c', 30)] }, twice)).toEqual(plan(45, 2, 1));
    expect(settled({ policy, pedals: [heavy, pedalOf('b', 20), pedalOf('c', 61)] }, twice)).toBeNull();
  });
});

describe('what there is', () => {
  const two: readonly Unit[] = [
    ['box', 'a', 'b'],
    ['box', 'c'],
  ];

  it('of units is taken owned ones first, and no more than there are', () => {
    const few = (stock: number): readonly Supply[] => [{ ...box, stock }];
    expect(settled({ supplies: few(2) }, two)).toEqual(plan(40, 2));
    expect(settled({ supplies: few(1) }, two)).toBeNull();
    expect(settled({ supplies: few(1), owned: { supplies: { box: 1 } } }, two)).toEqual(plan(20, 2));
    expect(settled({ supplies: few(0), owned: { supplies: { box: 2 } } }, two)).toEqual(plan(0, 2));
  });

  it('of leads is taken owned ones first, then the cheapest, and no more than there are', () => {
    const chained: readonly Unit[] = [['box', ['pair', 'a', 'b'], ['pair', 'c', 'd']]];
    const given = (parts: readonly Part[], owned = 0): Given => ({
      pedals: [...abc, pedalOf('d', 40)],
      parts,
      owned: { parts: { pair: owned } },
    });
    expect(settled(given([pair]), chained)).toEqual(plan(30, 1, 2));
    expect(settled(given([pair], 1), chained)).toEqual(plan(25, 1, 2));
    expect(settled(given([{ ...pair, stock: 1 }], 1), chained)).toEqual(plan(25, 1, 2));
    expect(settled(given([{ ...pair, stock: 1 }]), chained)).toBeNull();
    const dear = partOf('dear', 9, { kind: 'chain', tails: 2 });
    expect(settled(given([dear, { ...pair, stock: 1 }]), chained)).toEqual(plan(34, 1, 2));
  });
});

describe('a limit', () => {
  const two: readonly Unit[] = [
    ['box', 'a', 'b'],
    ['box', 'c'],
  ];

  it.each<[string, Partial<Policy>, Partial<Policy>]>([
    ['of the budget', { budget: euros(39.99) }, { budget: euros(40) }],
    ['of bricks', { bricks: 1 }, { bricks: 2 }],
    ['of sockets', { sockets: 1 }, { sockets: 2 }],
  ])('%s bites and spares', (_, bites, spares) => {
    expect(settled({ policy: bites }, two)).toBeNull();
    expect(settled({ policy: spares }, two)).toEqual(plan(40, 2));
  });

  it('of the budget is for what is bought, not for noise', () => {
    const pedals = [pedalOf('a', 10, { digital: true }), pedalOf('b', 20, { highGain: true }), pedalOf('c', 30)];
    const chained: readonly Unit[] = [['box', ['pair', 'a', 'b'], 'c']];
    expect(settled({ pedals, policy: { budget: euros(25) } }, chained)).toEqual(plan(45, 1, 1));
    expect(settled({ pedals, policy: { budget: euros(5) }, owned: { supplies: { box: 1 } } }, chained)).toEqual(
      plan(25, 1, 1),
    );
  });

  it('is what an earlier step has reached', () => {
    const earlierWith = (value: number): readonly SettledStep[] =>
      scalarObjectives(question({ tiers: ['bricks'] })).map((objective) => ({ objective, value }));
    expect(settled({}, two, earlierWith(2))).toEqual(plan(40, 2));
    expect(settled({}, two, earlierWith(1))).toBeNull();
    // What counts is what is left when pedals that are fed twice have been taken off.
    expect(settled({}, [...two, ['box', 'a']], earlierWith(2))).toEqual(plan(40, 2));
  });
});

describe('whatever loadouts there are', () => {
  const draws = fc.array(fc.nat({ max: 9_999 }), { minLength: 30, maxLength: 30, size: 'max' });

  /** Some of the best loadouts of every supply under dual prices made of the numbers. */
  function someLoadouts({ supplies, bench }: Question, numbers: readonly number[]): readonly Loadout[] {
    const counts = bench.classes.map(({ members }) => members.length);
    const at = (index: number): number => numbers[index % numbers.length] ?? 0;
    return supplies.flatMap((uses, place) => {
      const pricer = loadoutPricer(uses, bench);
      return [0, 7, 19].flatMap((shift) => {
        const duals = {
          pedals: Float64Array.from(bench.classes, (_, index) => at(shift + place + index)),
          leads: Float64Array.from(bench.kinds, (_, index) => at(shift + index) / 10),
          ...perPedalTier(() => at(shift) / 10),
          exposed: at(shift + 1) / 2,
          newlyExposed: 0,
          moved: 0,
        };
        return pricer.best(duals, counts, 0, 'quick').loadouts.map(({ loadout }) => loadout);
      });
    });
  }

  it('what they are made into is a plan that passes the audit, worth what it says', () => {
    const seen = { plans: 0, trimmed: 0, none: 0 };
    fc.assert(
      fc.property(
        tinyCase,
        fc.constantFrom(...choosingAims),
        fc.boolean(),
        draws,
        ({ board, catalogue }, aim, partial, numbers) => {
          const tiers = tiersOf(aim, board.policy);
          const asked = questionOf(kitOf(board, catalogue), { tiers, partial });
          const [objective, ...more] = scalarObjectives(asked);
          const all = someLoadouts(asked, numbers);
          if (objective === undefined || more.length > 0 || all.length === 0) return;
          const picked = numbers
            .slice(0, 1 + ((numbers[9] ?? 0) % 4))
            .flatMap((number) => all[number % all.length] ?? []);
          const made = settle(picked, asked, asked.supplies, objective, []);
          if (made === null) {
            seen.none += 1;
            return;
          }
          seen.plans += 1;
          const hanging = (loadouts: readonly Loadout[]): number => loadouts.flatMap(({ hung }) => hung).length;
          if (hanging(made.contents) < hanging(picked)) seen.trimmed += 1;
          const wiring = soundPlan(audit(board, catalogue, namedFeeds(made.contents, asked), { partial }));
          const figures = tiers.map((tier) => [tier, tierValue(tier, wiring.score, board.policy)]);
          expect(tierValues(objective, made.value)).toEqual(figures);
        },
      ),
      trying(1500),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(100)]).toEqual([what, true]);
  });
});
