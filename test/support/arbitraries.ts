/**
 * Whole cases, tiny enough for brute force, in which every rule bites now and then and most boards can be powered.
 * A failure shrinks to fewer pedals, supplies and parts, and those to ordinary ones.
 */
import fc from 'fast-check';

import type { Board, Catalogue, Policy } from '../../src/domain/board.js';
import { ownAdapterOf } from '../../src/domain/own-adapter.js';
import { ownBatteryOf } from '../../src/domain/own-battery.js';
import type { Part } from '../../src/domain/part.js';
import { microampHours, partId } from '../../src/domain/quantities.js';
import type { Pedal } from '../../src/domain/pedal.js';
import type { MainsVolts } from '../../src/domain/source.js';
import { percent } from './arbitrary-choices.js';
import { partDrafts, partFrom, type PartDraft } from './arbitrary-parts.js';
import { pedalDrafts, pedalFrom, type PedalDraft } from './arbitrary-pedals.js';
import { policies } from './arbitrary-policy.js';
import { supplyDrafts, supplyFrom, type SupplyDraft } from './arbitrary-supplies.js';
import { boardOf, catalogueOf, euros, volts } from './builders.js';

export type Case = { readonly board: Board; readonly catalogue: Catalogue };

/** One to four pedals, one to three supplies of one to four outputs, and mostly up to four parts. */
export const tinyCase: fc.Arbitrary<Case> = cases({ min: 1, max: 4 }, { min: 1, max: 3 }, 3);

/** Tiny cases with every polarity read, where one wiring is judged: no single one is right for two readings. */
export const readCase: fc.Arbitrary<Case> = tinyCase.map((of) => read(of));

export const read = ({ board, catalogue }: Case): Case => ({
  board: { ...board, pedals: board.pedals.map(readPedal) },
  catalogue,
});

function readPedal(pedal: Pedal): Pedal {
  if (pedal.polarity !== 'unknown') return pedal;
  return { ...pedal, polarity: 'centre-negative', unknown: pedal.unknown.filter((field) => field !== 'polarity') };
}

/** Cases without batteries, of which the compact program knows nothing. */
export const withoutBatteries = ({ board, catalogue }: Case): Case => ({
  board: {
    ...board,
    pedals: board.pedals.map((pedal) => ({ ...pedal, battery: null })),
    gear: { ...board.gear, supplies: board.gear.supplies.filter(({ source }) => source.kind !== 'battery') },
  },
  catalogue,
});

/** Cases of so many pedals, supplies and parts; for more than four pedals brute force takes too long. */
export const caseOf = (pedals: Range, supplies: Range, parts: number): fc.Arbitrary<Case> =>
  cases(pedals, supplies, parts);

/** Boards of half to all of so many pedals and supplies, for checks that need no brute force. */
export const largerCase = (pedals: number, supplies: number): fc.Arbitrary<Case> =>
  cases({ min: Math.ceil(pedals / 2), max: pedals }, { min: Math.ceil(supplies / 2), max: supplies }, 6);

type Range = { readonly min: number; readonly max: number };

function cases(pedals: Range, supplies: Range, parts: number): fc.Arbitrary<Case> {
  return fc
    .record({
      pedals: listOf(pedalDrafts, pedals),
      supplies: listOf(supplyDrafts, supplies),
      parts: listOf(partDrafts, { min: 0, max: parts }),
      policy: policies(pedals.max),
      family: percent(45),
    })
    .map(caseFrom);
}

function listOf<Item>(item: fc.Arbitrary<Item>, { min, max }: Range): fc.Arbitrary<Item[]> {
  const lengths = { maxLength: max, size: 'max' } as const;
  return fc.oneof(
    { withCrossShrink: true },
    { weight: 1, arbitrary: fc.array(item, { ...lengths, minLength: min }) },
    { weight: 2, arbitrary: fc.array(item, { ...lengths, minLength: Math.ceil((min + max) / 2) }) },
  );
}

type Drafts = {
  readonly pedals: readonly PedalDraft[];
  readonly supplies: readonly SupplyDraft[];
  readonly parts: readonly PartDraft[];
  readonly policy: Policy;
  /** All pedals are made for one output, so that a chain may feed them. */
  readonly family: boolean;
};

function caseFrom(drafts: Drafts): Case {
  const supplies = drafts.supplies.map(supplyFrom);
  const pedals = drafts.family ? familyOf(drafts.pedals) : drafts.pedals;
  const made = pedals.map((draft, index) => pedalFrom(draft, index, supplies, drafts.policy));
  const partsAtHand = [...drafts.parts, ...withoutRepeats(made.flatMap(({ leads }) => leads))];
  const parts = partsAtHand.map(partFrom);
  const blocks = made.some(({ pedal }) => pedal.battery !== null) ? [block] : [];
  const ownSets = made.flatMap(({ pedal }) => blocks.flatMap((part) => ownBatteryOf(pedal, part) ?? []));
  const ownAdapters = made.flatMap(({ pedal }, index) =>
    pedal.adapter === null ? [] : ownAdapterOf(pedal, acceptedMains[index % acceptedMains.length] ?? null),
  );
  const own = [...ownAdapters, ...ownSets];
  const isGear = (drafted: readonly boolean[], index: number): boolean => drafted[index] === true;
  const supplyIsGear = drafts.supplies.map((draft) => draft.gear);
  const partIsGear = partsAtHand.map((draft) => draft.terms.gear);
  return {
    board: boardOf(
      made.map(({ pedal }) => pedal),
      {
        policy: drafts.policy,
        gear: {
          supplies: [...supplies.filter((_, index) => isGear(supplyIsGear, index)), ...own],
          parts: parts.filter((_, index) => isGear(partIsGear, index)),
        },
        owned: {
          supplies: ownedOf(
            [...supplies, ...own],
            [...drafts.supplies.map((draft) => draft.owned), ...own.map(() => 1)],
          ),
          parts: ownedOf(
            [...parts, ...blocks],
            // One battery in hand where there are several pedals.
            [...partsAtHand.map((draft) => draft.terms.owned), ...blocks.map(() => (made.length > 2 ? 1 : 0))],
          ),
        },
      },
    ),
    catalogue: catalogueOf(
      supplies.filter((_, index) => !isGear(supplyIsGear, index)),
      [...parts.filter((_, index) => !isGear(partIsGear, index)), ...blocks],
    ),
  };
}

/** A battery of which a set lasts 12.5 h at 40 mA. */
export const block: Part = {
  id: partId('block'),
  name: 'block',
  price: euros(3),
  stock: null,
  fits: 'block',
  gives: 'block',
  reverses: false,
  role: { kind: 'battery', type: 'block', millivolts: volts(9), microampHours: microampHours(500_000) },
};

/** What the adapters that pedals came with accept, in turns. */
const acceptedMains: readonly MainsVolts[] = [
  { from: volts(100), to: volts(240) },
  { from: volts(220), to: volts(240) },
  null,
];

/** The pedals with the first one's home, volts, inlet, polarity and ground, none of them joined. */
function familyOf(pedals: readonly PedalDraft[]): readonly PedalDraft[] {
  const [first] = pedals;
  if (first === undefined) return [];
  const { home, volts, inlet, opposite, ground } = first;
  return pedals.map((pedal) => ({ ...pedal, home, volts, inlet, opposite, ground, mode: 'single' }));
}

/** One lead of each shape for all pedals that need it. */
function withoutRepeats(drafts: readonly PartDraft[]): readonly PartDraft[] {
  return [...new Map(drafts.map((draft) => [JSON.stringify(draft.shape), draft])).values()];
}

function ownedOf<Id>(articles: readonly { readonly id: Id }[], counts: readonly number[]): ReadonlyMap<Id, number> {
  const owned = articles.map(({ id }, index) => [id, counts[index] ?? 0] as const);
  return new Map(owned.filter(([, count]) => count > 0));
}
