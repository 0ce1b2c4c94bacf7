import { describe, expect, it } from 'vitest';

import { perPedalTier } from '../../../src/domain/pedal-tier.js';
import { supplyId } from '../../../src/domain/quantities.js';
import { keptCount, outputNumbers, type NumberedUnit, type Resident } from '../../../src/formulation/output-numbers.js';
import type { Hung } from '../../../src/loadout/loadout.js';
import { bankOf, settingOf, supplyOf, volts } from '../../support/builders.js';

const settings = [settingOf(9, 100), settingOf(18, 50)];
const supply = supplyOf('quay', 50, [bankOf(3, settings), bankOf(2, settings)]);

/** Who is on such outputs today, at 9 V where nothing else is said. */
const from = (
  outputs: readonly number[],
  more: { millivolts?: number; unit?: number; pinned?: boolean } = {},
): Resident => ({
  berth: { supply: supplyId('quay'), unit: more.unit ?? 1, outputs, millivolts: volts(more.millivolts ?? 9) },
  pinned: more.pinned === true,
});
const nowhere: Resident = { berth: null, pinned: false };

const exit = { plug: 'barrel-2.1', polarities: ['centre-negative'] } as const;

type Content = NumberedUnit['contents'][number];
const solo = (bank: number, resident: Resident, setting = 0): Content => ({
  hung: {
    kind: 'solo',
    use: {
      pedal: 0,
      outputs: [{ bank, setting }],
      join: null,
      exit,
      route: [],
      ...perPedalTier(() => false),
      weights: [],
    },
  },
  residents: [resident],
});
const joined = (banks: readonly number[], resident: Resident): Content => ({
  hung: {
    kind: 'solo',
    use: {
      pedal: 0,
      outputs: banks.map((bank) => ({ bank, setting: 0 })),
      join: { mode: 'series', lead: 0 },
      exit,
      route: [],
      ...perPedalTier(() => false),
      weights: [],
    },
  },
  residents: [resident],
});
const chain = (bank: number, residents: readonly Resident[]): Content => ({
  hung: { kind: 'chain', pool: { output: { bank, setting: 0 } }, lead: 0, places: [] } as unknown as Hung,
  residents,
});

const unit = (...contents: readonly Content[]): NumberedUnit => ({ supply, unit: 1, contents });
const inUse = (of: NumberedUnit): ReadonlySet<number> =>
  new Set(of.contents.flatMap(({ residents }) => residents.flatMap(({ berth }) => berth?.outputs ?? [])));
const numbersOf = (...contents: readonly Content[]) => outputNumbers(unit(...contents), inUse(unit(...contents)));

describe('output numbers', () => {
  it('are those of today for all who can keep them', () => {
    const contents = [solo(0, from([3])), solo(1, from([4])), solo(0, from([1]))];
    expect(numbersOf(...contents)).toEqual([[3], [4], [1]]);
    expect(keptCount(unit(...contents))).toBe(3);
  });

  it('are the lowest free ones for the others, those before all on which nothing hangs today', () => {
    expect(numbersOf(solo(0, nowhere), solo(0, nowhere), solo(1, nowhere))).toEqual([[1], [2], [4]]);
    expect(numbersOf(solo(0, nowhere), solo(1, from([1])))).toEqual([[2], [4]]);
    expect(numbersOf(solo(0, nowhere), solo(0, nowhere), solo(0, nowhere), solo(1, from([1])))).toEqual([
      [2],
      [3],
      [1],
      [4],
    ]);
  });

  it('are today’s for a pedal that only gets other volts', () => {
    const contents = [solo(0, from([3]), 1), solo(0, nowhere)];
    expect(numbersOf(...contents)).toEqual([[3], [1]]);
    expect(keptCount(unit(...contents))).toBe(0);
  });

  it('are no use to whoever is on another unit, another bank or another supply today', () => {
    const elsewhere = {
      ...from([2]),
      berth: { supply: supplyId('jetty'), unit: 1, outputs: [2], millivolts: volts(9) },
    };
    for (const resident of [from([2], { unit: 2 }), from([5]), elsewhere])
      expect(keptCount(unit(solo(0, resident)))).toBe(0);
  });

  it('keep as many as can be where two want one output, and first those that must stay', () => {
    expect(numbersOf(solo(0, from([2])), solo(0, from([2], { pinned: true })))).toEqual([[1], [2]]);
    const two = chain(0, [from([2]), from([2])]);
    expect(numbersOf(solo(0, from([2])), two)).toEqual([[1], [2]]);
    expect(keptCount(unit(solo(0, from([2])), two))).toBe(2);
    expect(numbersOf(solo(0, from([2], { pinned: true })), two)).toEqual([[2], [1]]);
  });

  it('give a chain the output that most of its pedals are on', () => {
    const residents = [from([1]), from([3]), from([3]), nowhere];
    expect(numbersOf(chain(0, residents))).toEqual([[3]]);
    expect(keptCount(unit(chain(0, residents)))).toBe(2);
  });

  it('let a second choice come true where the first is taken', () => {
    const contents = [chain(0, [from([1]), from([2])]), solo(0, from([1]))];
    expect(numbersOf(...contents)).toEqual([[2], [1]]);
    expect(keptCount(unit(...contents))).toBe(2);
  });

  it('of a join are both kept or none, and rise', () => {
    expect(numbersOf(joined([0, 1], from([2, 5], { millivolts: 18 })))).toEqual([[2, 5]]);
    expect(numbersOf(joined([0, 0], nowhere), solo(0, from([2])))).toEqual([[1, 3], [2]]);
    const contents = [joined([0, 1], from([2, 5], { millivolts: 18 })), solo(0, from([2], { pinned: true }))];
    expect(numbersOf(...contents)).toEqual([[1, 5], [2]]);
    expect(keptCount(unit(...contents))).toBe(1);
  });
});
