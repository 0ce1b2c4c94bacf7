import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Supply, Total } from '../../../src/domain/supply.js';
import type { GroundMode } from '../../../src/loadout/ground-mode.js';
import { placeItems, type PlacedItem } from '../../../src/loadout/placement.js';
import type { SupplyUses } from '../../../src/loadout/supply-uses.js';
import { bankOf, currentTotal, settingOf, supplyOf } from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';

const quiet: GroundMode = { ground: 'negative', noise: 'quiet' };
const sole: GroundMode = { ground: 'negative', noise: 'sole' };
const positive: GroundMode = { ground: 'positive', noise: 'quiet' };

/** A supply with a limit for each of the given capacities. */
const usesWith = (supply: Supply, capacities: readonly bigint[] = []): SupplyUses => ({
  supply,
  owned: 0,
  forSale: Infinity,
  unit: null,
  limits: capacities.map((capacity) => ({
    rule: 'total',
    bank: null,
    total: currentTotal(1) satisfies Total,
    capacity,
  })),
  solos: [],
  chains: [],
  modes: [],
});

const settings = [settingOf(9, 100), settingOf(12, 100)];
const each = bankOf(2, settings);
const together = bankOf(3, settings, { switching: 'together' });

const item = (
  outputs: readonly (readonly [bank: number, setting: number])[],
  more: Partial<PlacedItem> = {},
): PlacedItem => ({
  outputs: outputs.map(([bank, setting]) => ({ bank, setting })),
  mode: null,
  weights: [],
  sole: 0,
  ...more,
});

const sizesOf = (placed: readonly (readonly number[])[] | null): readonly number[] | null =>
  placed === null ? null : placed.map(({ length }) => length).sort();

describe('placing items on units', () => {
  const one = item([[0, 0]]);

  it('fills the outputs of every unit and no more', () => {
    const uses = usesWith(supplyOf('supply', 10, [each]));
    expect(sizesOf(placeItems(uses, [null, null], [one, one, one, one]))).toEqual([2, 2]);
    expect(placeItems(uses, [null, null], [one, one, one, one, one])).toBeNull();
    expect(placeItems(uses, [], [])).toEqual([]);
    expect(placeItems(uses, [], [one])).toBeNull();
  });

  it('lets outputs that are switched by themselves differ, others not', () => {
    const other = item([[0, 1]]);
    expect(sizesOf(placeItems(usesWith(supplyOf('supply', 10, [each])), [null], [one, other]))).toEqual([2]);
    const uses = usesWith(supplyOf('supply', 10, [together]));
    expect(placeItems(uses, [null], [one, other])).toBeNull();
    expect(sizesOf(placeItems(uses, [null, null], [one, other, one]))).toEqual([1, 2]);
  });

  it('needs both outputs of a join on one unit', () => {
    const uses = usesWith(supplyOf('supply', 10, [bankOf(3, settings)]));
    const join = item([
      [0, 0],
      [0, 0],
    ]);
    // Three outputs each: two units have six, but only one pair apiece.
    expect(placeItems(uses, [null, null], [join, join, join])).toBeNull();
    expect(sizesOf(placeItems(uses, [null, null], [join, one, join, one]))).toEqual([2, 2]);
  });

  it('keeps every total, equal being enough', () => {
    const uses = usesWith(supplyOf('supply', 10, [bankOf(9, settings)]), [10n]);
    const heavy = (weight: bigint): PlacedItem => item([[0, 0]], { weights: [weight] });
    expect(placeItems(uses, [null], [heavy(4n), heavy(6n)])).not.toBeNull();
    expect(placeItems(uses, [null], [heavy(5n), heavy(6n)])).toBeNull();
    // 6 + 4 and 5 + 5; putting the two largest together would not do.
    expect(sizesOf(placeItems(uses, [null, null], [heavy(5n), heavy(4n), heavy(6n), heavy(5n)]))).toEqual([2, 2]);
  });

  it('puts on a common ground only what its mode is for', () => {
    const uses = usesWith(supplyOf('supply', 10, [bankOf(4, settings, { isolated: false })]));
    const onQuiet = item([[0, 0]], { mode: quiet });
    expect(placeItems(uses, [quiet], [onQuiet, onQuiet])).toEqual([[0, 1]]);
    expect(placeItems(uses, [positive], [onQuiet])).toBeNull();
    expect(placeItems(uses, [sole], [onQuiet])).toBeNull();
    expect(placeItems(uses, [null], [onQuiet])).toBeNull();
  });

  it('holds one digital pedal on a ground that is meant for one', () => {
    const uses = usesWith(supplyOf('supply', 10, [bankOf(4, settings, { isolated: false })]));
    const digital = item([[0, 0]], { mode: sole, sole: 1 });
    const analogue = item([[0, 0]], { mode: sole });
    expect(placeItems(uses, [sole], [digital, analogue])).not.toBeNull();
    expect(placeItems(uses, [sole], [digital, digital])).toBeNull();
    expect(sizesOf(placeItems(uses, [sole, sole], [digital, digital]))).toEqual([1, 1]);
  });
});

/** Whether these items may share one unit, counted anew from nothing. */
function mayShare(items: readonly PlacedItem[], { supply, limits }: SupplyUses, mode: GroundMode | null): boolean {
  const outputs = items.flatMap((each) => each.outputs);
  return (
    supply.banks.every((bank, index) => {
      const there = outputs.filter((output) => output.bank === index);
      const different = new Set(there.map(({ setting }) => setting)).size;
      return there.length <= bank.outputs && (bank.switching === 'each' || different <= 1);
    }) &&
    limits.every(
      ({ capacity }, index) => items.reduce((sum, { weights }) => sum + (weights[index] ?? 0n), 0n) <= capacity,
    ) &&
    items.every((each) => each.mode === null || each.mode === mode) &&
    (mode?.noise !== 'sole' || items.reduce((sum, each) => sum + (each.mode === null ? 0 : each.sole), 0) <= 1)
  );
}

/** Tries every unit for every item. */
function canPlace(items: readonly PlacedItem[], modes: readonly (GroundMode | null)[], uses: SupplyUses): boolean {
  const tryFrom = (rest: readonly PlacedItem[], units: readonly (readonly PlacedItem[])[]): boolean => {
    const [first, ...others] = rest;
    if (first === undefined) return units.every((unit, index) => mayShare(unit, uses, modes[index] ?? null));
    return units.some((unit, index) => tryFrom(others, units.with(index, [...unit, first])));
  };
  return tryFrom(
    items,
    modes.map(() => []),
  );
}

type Outputs = readonly (readonly [bank: number, setting: number])[];

/** A join never asks for two settings of one bank that is switched together. */
const alikeIfTogether = (pair: Outputs, banks: readonly { readonly switching: string }[]): Outputs => {
  const [first] = pair;
  return pair.map(([bank, setting]) =>
    first?.[0] === bank && banks[bank]?.switching === 'together' ? first : [bank, setting],
  );
};

type Tiny = {
  readonly uses: SupplyUses;
  readonly modes: readonly (GroundMode | null)[];
  readonly items: readonly PlacedItem[];
};

const outputs = fc.oneof(
  { weight: 3, arbitrary: fc.tuple(fc.tuple(fc.nat(1), fc.nat(1))) },
  { weight: 1, arbitrary: fc.tuple(fc.tuple(fc.nat(1), fc.nat(1)), fc.tuple(fc.nat(1), fc.nat(1))) },
);

const tiny: fc.Arbitrary<Tiny> = fc
  .record({
    banks: fc.tuple(
      fc.record({
        outputs: fc.integer({ min: 1, max: 3 }),
        switching: fc.constantFrom('each' as const, 'together' as const),
      }),
      fc.record({
        outputs: fc.integer({ min: 1, max: 3 }),
        switching: fc.constantFrom('each' as const, 'together' as const),
      }),
    ),
    capacities: fc.array(fc.bigInt({ min: 4n, max: 12n }), { maxLength: 2 }),
    modes: fc.array(fc.constantFrom(quiet, sole, null), { minLength: 1, maxLength: 3 }),
    items: fc.array(
      fc.record({
        outputs,
        mode: fc.constantFrom(null, null, null, quiet, sole),
        weights: fc.tuple(fc.bigInt({ min: 0n, max: 5n }), fc.bigInt({ min: 0n, max: 5n })),
        digital: fc.boolean(),
      }),
      { minLength: 1, maxLength: 5 },
    ),
  })
  .map(({ banks, capacities, modes, items }) => ({
    uses: usesWith(
      supplyOf(
        'supply',
        10,
        banks.map((bank) => bankOf(bank.outputs, settings, bank)),
      ),
      capacities,
    ),
    modes,
    items: items.map((each) => ({
      ...item(alikeIfTogether(each.outputs, banks), {
        mode: each.mode,
        sole: each.mode === sole && each.digital ? 1 : 0,
      }),
      weights: each.weights.slice(0, capacities.length),
    })),
  }));

describe('a placement', () => {
  it('is found exactly when trying every unit for every item finds one, and holds what it says', () => {
    const seen = { placed: 0, impossible: 0 };
    fc.assert(
      fc.property(tiny, ({ uses, modes, items }) => {
        const placed = placeItems(uses, modes, items);
        const possible = canPlace(items, modes, uses);
        seen[possible ? 'placed' : 'impossible'] += 1;
        expect(placed !== null).toBe(possible);
        if (placed === null) return;
        expect(placed.flat().sort()).toEqual(items.map((_, index) => index));
        for (const [index, unit] of placed.entries()) {
          const there = items.filter((_, position) => unit.includes(position));
          expect(mayShare(there, uses, modes[index] ?? null)).toBe(true);
        }
      }),
      trying(1000),
    );
    expect(seen.placed).toBeGreaterThan(share(200));
    expect(seen.impossible).toBeGreaterThan(share(200));
  });
});
