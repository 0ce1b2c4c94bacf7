import { describe, expect, it } from 'vitest';

import { branchesOf } from '../../../solver/cover/branching.js';
import { ColumnPool } from '../../../solver/cover/column-pool.js';
import type { Amounts, CoverProgram } from '../../../solver/cover/program.js';

/** Features of these programs: a pedal's class, two kinds of leads, and the unit. */
const [pedal, fan, daisy, unit] = [0, 1, 2, 3];

type Part = { readonly group: number; readonly amounts: Amounts; readonly share: number };

/** What can be branched on where so much of some columns is used. */
function branches(parts: readonly Part[]) {
  const program: CoverProgram<null> = {
    features: 4,
    unit,
    rows: [],
    fixed: [],
    start: [],
    groups: [0, 1, 2, 3].map((group) => ({ name: `group ${group}`, most: 9, leastCost: 0 })),
    greatest: 1_000,
    branching: { inAll: [fan, daisy], withinGroups: [[pedal], [fan, daisy]] },
    price: () => ({ bound: 0, columns: [] }),
    complete: () => null,
  };
  const pool = new ColumnPool<null>(program);
  for (const { group, amounts } of parts) pool.add({ group, cost: 1, amounts: [...amounts, [unit, 1]], content: null });
  const point = Float64Array.from(parts, ({ share }) => share);
  return branchesOf(program, pool, point).map(([fewer, more]) => {
    expect([fewer.sense, more.sense, more.bound]).toEqual(['at most', 'at least', fewer.bound + 1]);
    expect([more.feature, more.group]).toEqual([fewer.feature, fewer.group]);
    return { feature: fewer.feature, group: fewer.group, most: fewer.bound };
  });
}

const unitsAlone: Amounts = [];

describe('what a search branches on', () => {
  it('is nothing where every number is whole', () => {
    expect(branches([{ group: 0, amounts: [[fan, 1]], share: 2 }])).toEqual([]);
  });

  it('is the number of units in all, then those of groups, the farthest from whole first', () => {
    const parts = [0.8, 1.4, 0.1].map((share, group) => ({ group, amounts: unitsAlone, share }));
    expect(branches(parts)).toEqual([
      { feature: unit, group: null, most: 2 },
      { feature: unit, group: 1, most: 1 },
      { feature: unit, group: 0, most: 0 },
      { feature: unit, group: 2, most: 0 },
    ]);
  });

  it('is how many leads of a kind there are in all, beside units that are not whole', () => {
    const parts: readonly Part[] = [
      { group: 0, amounts: [[fan, 1]], share: 0.5 },
      { group: 1, amounts: [[fan, 2]], share: 0.5 },
      { group: 2, amounts: [[daisy, 3]], share: 1 },
    ];
    expect(branches(parts)).toEqual([
      { feature: fan, group: null, most: 1 },
      { feature: unit, group: 0, most: 0 },
      { feature: unit, group: 1, most: 0 },
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
      { feature: daisy, group: null, most: 0 },
      { feature: pedal, group: 0, most: 2 },
    ]);
  });
});
