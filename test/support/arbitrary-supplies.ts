import fc from 'fast-check';

import type { Polarity } from '../../src/domain/pedal.js';
import { supplyId } from '../../src/domain/quantities.js';
import type { Bank, JoinMode, Setting, Supply, Total } from '../../src/domain/supply.js';
import { weighted, percent } from './arbitrary-choices.js';
import { currentTotal, euros, numbered, onCharge, onMains, powerTotal, settingOf } from './builders.js';

/** A supply without its place in a list, and how it comes to the board. */
export type SupplyDraft = {
  readonly supply: Omit<Supply, 'id' | 'name'>;
  readonly owned: number;
  /** Listed by the board only, not for sale. */
  readonly gear: boolean;
};

/** Puts the draft at its place, which makes its id. */
export function supplyFrom({ supply, gear }: SupplyDraft, index: number): Supply {
  const id = `supply-${index + 1}`;
  return { id: supplyId(id), name: id, ...supply, ...(gear ? { price: null, stock: 0 } : {}) };
}

/** One to three settings of different volts, falling or level in their ratings. */
const settingLists: fc.Arbitrary<readonly Setting[]> = fc
  .record({
    ladder: weighted<readonly number[]>(
      [9, [9]],
      [3, [9, 12]],
      [2, [9, 18]],
      [2, [9, 12, 18]],
      [1, [12]],
      [1, [12, 18]],
    ),
    rating: weighted([3, 240], [2, 300], [3, 120], [2, 100]),
    level: fc.boolean(),
    excess: weighted([3, 4], [1, 3], [1, 0], [1, 1.5]),
  })
  .map(({ ladder, rating, level, excess }) =>
    ladder.map((atVolts, index) => settingOf(atVolts, level ? rating : rating - 20 * index, atVolts + excess)),
  );

/** Supplies of one or two banks with one to four outputs in all. */
export const supplyDrafts: fc.Arbitrary<SupplyDraft> = fc
  .record({
    banks: fc.oneof(
      { withCrossShrink: true },
      bankDrafts([8, 1], [3, 2], [1, 3], [1, 4]).map((bank) => [bank]),
      fc.tuple(bankDrafts([3, 1], [2, 2]), bankDrafts([3, 1], [1, 2])),
    ),
    regulated: weighted([4, true], [1, false]),
    price: weighted([2, 20], [1, 10], [1, 15], [2, 30], [2, 40]),
    stock: weighted<number | null>([10, null], [2, 1], [2, 2]),
    mains: weighted<readonly [number, number] | null>([8, [100, 240]], [1, null], [1, [230, 230]], [1, [110, 120]]),
    total: totals(20),
    assumed: fc.constant({}),
    owned: weighted([7, 0], [2, 1], [1, 2]),
    gear: percent(10),
    // Two hours and a half of a few ordinary pedals, four of one or two, and hardly anything.
    wattHours: weighted<number | null>([60, null], [1, 2], [1, 3.6], [1, 20]),
  })
  .map(({ owned, gear, regulated, price, mains, banks, wattHours, ...rest }) => ({
    owned: gear ? Math.max(1, owned) : owned,
    gear,
    supply: {
      ...rest,
      price: euros(price),
      ...(wattHours === null ? onMains(mains?.[0], mains?.[1]) : onCharge(wattHours)),
      banks: numbered(
        banks.map((bank) => ({ ...bank, settings: regulated ? bank.settings.map(regulate) : bank.settings })),
      ),
    },
  }));

const regulate = (setting: Setting): Setting => ({ ...setting, openCircuit: null });

/** No total in most cases, else a current or a power that a few ordinary pedals can exhaust exactly. */
function totals(share: number): fc.Arbitrary<Total | null> {
  return weighted<Total | null>(
    [100 - share, null],
    [share / 4, currentTotal(300)],
    [share / 4, currentTotal(180)],
    [share / 4, powerTotal(2.16)],
    [share / 4, powerTotal(2.7)],
  );
}

/** Banks before numbering, all settings with open-circuit volts, and the weighted numbers of outputs. */
function bankDrafts(
  ...outputs: readonly (readonly [weight: number, outputs: number])[]
): fc.Arbitrary<Omit<Bank, 'firstOutput'>> {
  return fc
    .record({
      outputs: weighted(...outputs),
      isolated: weighted([6, true], [4, false]),
      alternating: percent(8),
      plug: weighted([10, 'barrel-2.1'], [1, 'jack-3.5'], [1, 'barrel-2.5']),
      polarity: weighted<Polarity | 'either'>([7, 'centre-negative'], [1, 'centre-positive'], [2, 'either']),
      switching: weighted<'each' | 'together'>([1, 'each'], [2, 'together']),
      settings: settingLists,
      joins: weighted<readonly JoinMode[]>([3, []], [3, ['series', 'parallel']], [2, ['series']], [2, ['parallel']]),
      total: totals(20),
    })
    .map(({ alternating, polarity, switching, settings, ...rest }) => ({
      ...rest,
      settings,
      power: alternating ? 'AC' : 'DC',
      polarity: alternating ? null : polarity,
      switching: settings.length === 1 ? 'each' : switching,
    }));
}
