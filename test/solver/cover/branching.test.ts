import { describe, expect, it } from 'vitest';

import { branchesOf } from '../../../solver/cover/branching.js';
import { ColumnPool } from '../../../solver/cover/column-pool.js';
import { anyCost } from './small-covers.js';
import type { Amounts, BranchingConstraint, CoverProgram } from '../../../solver/cover/program.js';

/** Features of these programs: a pedal's class, two kinds of leads, and the unit. */
const [pedal, fan, daisy, unit] = [0, 1, 2, 3];

type Part = { readonly group: number; readonly amounts: Amounts; readonly share: number };

/** What can be branched on where so much of some columns is used. */
function branches(parts: readonly Part[], sets: readonly (readonly number[])[] = []) {
  return branchesWhere({ parts, sets }).foremost.map(([fewer, more]) => {
    expect([fewer.sense, more.sense, more.bound]).toEqual(['at most', 'at least', fewer.bound + 1]);
    expect([more.feature, more.groups]).toEqual([fewer.feature, fewer.groups]);
    return { feature: fewer.feature, groups: fewer.groups, most: fewer.bound };
  });
}

type Where = {
  readonly parts: readonly Part[];
  readonly sets?: readonly (readonly number[])[];
  /** Which of the groups are alike. */
  readonly alike?: readonly (string | null)[];
  readonly conditions?: readonly BranchingConstraint[];
};

function branchesWhere({ parts, sets = [], alike = [], conditions = [] }: Where) {
  const program: CoverProgram<null> = {
    features: 4,
    unit,
    rows: [],
    fixed: [],
    start: [],
    groups: [...Array(8).keys()].map((group) => ({
      name: `group ${group}`,
      most: 9,
      leastCost: 0,
      alike: alike[group] ?? null,
    })),
    greatest: 1_000,
    branching: { inAll: [fan, daisy], sets: () => sets, withinGroups: [[pedal], [fan, daisy]] },
    capped: [pedal],
    possible: anyCost,
    price: () => ({ bound: 0, columns: [] }),
    complete: () => null,
  };
  const pool = new ColumnPool<null>(program);
  for (const { group, amounts } of parts) pool.add({ group, cost: 1, amounts: [...amounts, [unit, 1]], content: null });
  const point = Float64Array.from(parts, ({ share }) => share);
  return branchesOf(program, pool, point, conditions);
}

const unitsAlone: Amounts = [];

describe('what a search branches on', () => {
  it('is nothing where every number is whole', () => {
    expect(branches([{ group: 0, amounts: [[fan, 1]], share: 2 }])).toEqual([]);
  });

  it('is the number of units in all, then those of groups, the farthest from whole first', () => {
    const parts = [0.8, 1.4, 0.1].map((share, group) => ({ group, amounts: unitsAlone, share }));
    expect(branches(parts)).toEqual([
      { feature: unit, groups: null, most: 2 },
      { feature: unit, groups: [1], most: 1 },
      { feature: unit, groups: [0], most: 0 },
      { feature: unit, groups: [2], most: 0 },
    ]);
  });

  it('is how many leads of a kind there are in all, beside units that are not whole', () => {
    const parts: readonly Part[] = [
      { group: 0, amounts: [[fan, 1]], share: 0.5 },
      { group: 1, amounts: [[fan, 2]], share: 0.5 },
      { group: 2, amounts: [[daisy, 3]], share: 1 },
    ];
    expect(branches(parts)).toEqual([
      { feature: fan, groups: null, most: 1 },
      { feature: unit, groups: [0], most: 0 },
      { feature: unit, groups: [1], most: 0 },
    ]);
  });

  it('is no sum of leads that is all but whole', () => {
    const parts: readonly Part[] = [
      { group: 0, amounts: [[fan, 1]], share: 0.51 },
      { group: 1, amounts: [[daisy, 1]], share: 0.49 },
      { group: 2, amounts: [[fan, 1]], share: 0.48 },
      { group: 3, amounts: [[daisy, 1]], share: 0.52 },
    ];
    const leads = branches(parts).filter(({ feature }) => feature !== unit);
    expect(leads).toEqual([]);
  });

  it('is what a group has of pedals and leads only where the units of all groups are whole', () => {
    const parts: readonly Part[] = [
      { group: 0, amounts: [[pedal, 2]], share: 0.25 },
      { group: 0, amounts: [[pedal, 3]], share: 0.75 },
      { group: 1, amounts: [[daisy, 1]], share: 0.5 },
      { group: 1, amounts: unitsAlone, share: 0.5 },
    ];
    expect(branches(parts)).toEqual([
      { feature: daisy, groups: null, most: 0 },
      { feature: pedal, groups: [0], most: 2 },
    ]);
  });

  it('is of one list the six farthest from whole, and the others where those tell little', () => {
    const halves = [0.05, 0.11, 0.19, 0.29, 0.49, 0.62, 0.77, 0.9].flatMap((share, group): readonly Part[] => [
      { group, amounts: [[pedal, 1]], share },
      { group, amounts: unitsAlone, share: 1 - share },
    ]);
    const groupsOf = (found: readonly (readonly BranchingConstraint[])[]) => found.map(([one]) => one?.groups?.[0]);
    const { foremost, others } = branchesWhere({ parts: halves });
    expect(groupsOf(foremost)).toEqual([4, 5, 3, 6, 2, 1]);
    expect(groupsOf(others())).toEqual([7, 0]);
  });

  it('is what comes after where all that seems to tell most is decided: of the same list, then of later ones', () => {
    const parts = [0.5, 0.49, 0.48, 0.47, 0.46, 0.45, 0.3].flatMap((share, group): readonly Part[] => [
      { group, amounts: [[pedal, 1]], share },
      { group, amounts: [[fan, 1]], share: 1 - share },
    ]);
    const decided = (feature: number, ...groups: readonly number[]): BranchingConstraint[] =>
      groups.map((group) => ({ feature, groups: [group], sense: 'at most', bound: 0 }));
    const fans = decided(fan, 0, 1, 2, 3, 4, 5, 6);
    const sums = [{ feature: fan, groups: null, sense: 'at most', bound: 3 }] as const;
    const found = (conditions: readonly BranchingConstraint[]) =>
      branchesWhere({ parts, conditions: [...sums, ...conditions] }).foremost.map(([one]) => [one.feature, one.groups]);
    expect(found([...fans, ...decided(pedal, 0, 1, 2, 3, 4, 5)])).toEqual([[pedal, [6]]]);
    expect(found([...fans.slice(1), ...decided(pedal, 0, 1, 2, 3, 4, 5, 6)])).toEqual([[fan, [0]]]);
    expect(found([...fans, ...decided(pedal, 0, 1, 2, 3, 4, 5, 6)])).toEqual([]);
  });

  it('is, where all is whole, what a column has more of by itself than its group should have', () => {
    const twice: readonly Part[] = [
      { group: 0, amounts: [[pedal, 2]], share: 0.5 },
      { group: 0, amounts: unitsAlone, share: 0.5 },
    ];
    expect(branches(twice)).toEqual([{ feature: pedal, groups: [0], most: 1 }]);
    const once: readonly Part[] = [
      { group: 0, amounts: [[pedal, 1]], share: 0.5 },
      {
        group: 0,
        amounts: [
          [pedal, 1],
          [fan, 2],
        ],
        share: 0.5,
      },
      { group: 1, amounts: [[daisy, 2]], share: 0.5 },
      { group: 1, amounts: unitsAlone, share: 0.5 },
    ];
    expect(branches(once)).toEqual([]);
  });

  it('is how many units a set of groups has, the farthest from whole first, and of equal ones the first', () => {
    const parts = [0.25, 0.6, 0.15, 0.25].map((share, group) => ({ group, amounts: unitsAlone, share }));
    const sets = [
      [0, 1],
      [0, 1, 2],
      [0, 1, 3],
      [1, 3],
      [1, 2],
      [0, 3],
    ];
    const found = branches(parts, sets).filter(({ groups }) => (groups?.length ?? 0) > 1);
    expect(found).toEqual([
      { feature: unit, groups: [0, 3], most: 0 },
      { feature: unit, groups: [1, 2], most: 0 },
      { feature: unit, groups: [0, 1], most: 0 },
      { feature: unit, groups: [0, 1, 3], most: 1 },
    ]);
  });

  it('is no more than eight sets, and none that has all but a whole number of units', () => {
    const parts = Array.from({ length: 40 }, (_, group) => ({ group, amounts: unitsAlone, share: 0.03 }));
    const sets = Array.from({ length: 39 }, (_, index) => Array.from({ length: index + 2 }, (__, group) => group));
    const found = branches(parts, sets).filter(({ groups }) => (groups?.length ?? 0) > 1);
    expect(found).toHaveLength(8);
    const almost = [0.01, 0.005, 0.995].map((share, group) => ({ group, amounts: unitsAlone, share }));
    expect(branches(almost, [[0, 1]]).filter(({ groups }) => (groups?.length ?? 0) > 1)).toEqual([]);
  });
});

describe('where groups can be exchanged for one another', () => {
  const alike = [null, 'twins', 'twins', 'twins'];
  const half = (group: number): readonly Part[] => [
    { group, amounts: [[pedal, 1]], share: 0.5 },
    { group, amounts: [], share: 0.5 },
  ];
  const says = (feature: number, groups: readonly number[], sense: 'at most' | 'at least', bound: number) =>
    ({ feature, groups, sense, bound }) as const;
  const none = (...groups: readonly number[]) => says(pedal, groups, 'at most', 0);
  const some = (group: number) => says(pedal, [group], 'at least', 1);

  it('the first of them has what one of them has, or none of them has any', () => {
    expect(branchesWhere({ parts: half(2), alike }).foremost).toEqual([[none(1, 2, 3), some(1)]]);
    expect(branchesWhere({ parts: [...half(2), ...half(3)], alike }).foremost).toEqual([[none(1, 2, 3), some(1)]]);
  });

  it('a group that is like no other is taken by itself', () => {
    expect(branchesWhere({ parts: half(0), alike }).foremost).toEqual([[none(0), some(0)]]);
  });

  it('those are no longer alike of which different things are decided', () => {
    const first = says(daisy, [1], 'at least', 1);
    expect(branchesWhere({ parts: half(2), alike, conditions: [first] }).foremost).toEqual([[none(2, 3), some(2)]]);
    const all = [1, 2, 3].map((group) => says(daisy, [group], 'at least', 1));
    expect(branchesWhere({ parts: half(2), alike, conditions: all }).foremost).toEqual([[none(1, 2, 3), some(1)]]);
    const together = says(daisy, [2, 3], 'at most', 0);
    expect(branchesWhere({ parts: half(3), alike, conditions: [together] }).foremost).toEqual([[none(2, 3), some(2)]]);
    const across = says(unit, [0, 1, 2], 'at most', 2);
    expect(branchesWhere({ parts: half(1), alike, conditions: [across] }).foremost).toEqual([[none(1, 2), some(1)]]);
  });

  it('of more than one of something each is taken by itself', () => {
    const parts: readonly Part[] = [
      { group: 2, amounts: [[pedal, 1]], share: 0.5 },
      { group: 2, amounts: [[pedal, 2]], share: 0.5 },
    ];
    expect(branchesWhere({ parts, alike }).foremost).toEqual([
      [says(pedal, [2], 'at most', 1), says(pedal, [2], 'at least', 2)],
    ]);
  });

  it('nothing is branched on that is decided already', () => {
    expect(branchesWhere({ parts: half(2), alike, conditions: [none(1, 2, 3)] }).foremost).toEqual([]);
    expect(branchesWhere({ parts: half(2), alike, conditions: [none(2)] }).foremost).toEqual([]);
  });
});
