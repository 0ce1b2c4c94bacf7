/** Short ways to write domain values by hand: volts, milliamps and whole euros in, everything unsaid ordinary. */
import { perCountedTier } from '../../src/domain/counted-tiers.js';
import type { Board, Catalogue, Policy } from '../../src/domain/board.js';
import type { Part, PartRole } from '../../src/domain/part.js';
import { nothingMoreStated, type AcceptedVolts, type Pedal } from '../../src/domain/pedal.js';
import type { Feed, Score } from '../../src/domain/plan.js';
import {
  factorOfThousandths,
  microamps,
  millivolts,
  milliwattHours,
  milliwatts,
  minorUnits,
  partId,
  pedalId,
  supplyId,
  type Factor,
} from '../../src/domain/quantities.js';
import type { Inlet, Source } from '../../src/domain/source.js';
import type { Bank, Setting, Supply, Total } from '../../src/domain/supply.js';

const euro = { code: 'EUR', decimals: 2 } as const;

export const volts = (value: number) => millivolts(Math.round(value * 1000));
export const milliamps = (value: number) => microamps(Math.round(value * 1000));
export const euros = (value: number) => minorUnits(Math.round(value * 100));
export const factor = (value: number): Factor => factorOfThousandths(Math.round(value * 1000));

export const listed = (...values: readonly number[]): AcceptedVolts => ({
  kind: 'listed',
  millivolts: values.map(volts),
});

/** A 9 V centre-negative pedal that draws the milliamps. */
export function pedalOf(id: string, draw: number, more: Partial<Omit<Pedal, 'id'>> = {}): Pedal {
  return {
    id: pedalId(id),
    name: id,
    power: 'DC',
    polarity: 'centre-negative',
    inlet: 'barrel-2.1',
    ground: 'negative',
    accepts: listed(9),
    draw: { kind: 'flat', microamps: milliamps(draw) },
    ...nothingMoreStated,
    ...more,
  };
}

/** A setting in volts and milliamps; regulated without open-circuit volts. */
export const settingOf = (atVolts: number, rating: number, openCircuit: number | null = null): Setting => ({
  millivolts: volts(atVolts),
  rating: milliamps(rating),
  openCircuit: openCircuit === null ? null : volts(openCircuit),
});

export const currentTotal = (value: number): Total => ({ kind: 'current', microamps: milliamps(value) });
export const powerTotal = (watts: number): Total => ({
  kind: 'power',
  milliwatts: milliwatts(Math.round(watts * 1000)),
});

type BankDraft = Omit<Bank, 'firstOutput'>;

/** A bank of isolated centre-negative outputs. */
export function bankOf(outputs: number, settings: readonly Setting[], more: Partial<BankDraft> = {}): BankDraft {
  return {
    outputs,
    isolated: true,
    power: 'DC',
    plug: 'barrel-2.1',
    polarity: 'centre-negative',
    switching: 'each',
    settings,
    joins: [],
    total: null,
    ...more,
  };
}

/** Banks with their outputs numbered 1, 2, 3 … in order. */
export function numbered(drafts: readonly BankDraft[]): readonly Bank[] {
  let next = 1;
  return drafts.map((draft) => {
    const firstOutput = next;
    next += draft.outputs;
    return { firstOutput, ...draft };
  });
}

/** A supply on mains, and the volts that it accepts where it states them. */
export const onMains = (from?: number, to?: number): Pick<Supply, 'source'> => ({
  source: {
    kind: 'mains',
    volts: from === undefined || to === undefined ? null : { from: volts(from), to: volts(to) },
  },
});

/** A power bank. */
export const onCharge = (wattHours: number): Pick<Supply, 'source'> => ({
  source: { kind: 'charge', milliwattHours: milliwattHours(Math.round(wattHours * 1000)) },
});

/** A supply for sale without limit; the price is in euros. */
export function supplyOf(
  id: string,
  price: number,
  banks: readonly BankDraft[],
  more: Partial<Omit<Supply, 'id' | 'banks'>> = {},
): Supply {
  return {
    id: supplyId(id),
    name: id,
    price: euros(price),
    stock: null,
    ...onMains(),
    total: null,
    banks: numbered(banks),
    assumed: {},
    ...more,
  };
}

/** A straight barrel lead for sale without limit; the price is in euros. */
export function partOf(id: string, price: number, role: PartRole, more: Partial<Omit<Part, 'id' | 'role'>> = {}): Part {
  return {
    id: partId(id),
    name: id,
    price: euros(price),
    stock: null,
    fits: 'barrel-2.1',
    gives: 'barrel-2.1',
    reverses: false,
    role,
    ...more,
  };
}

/** A feed by its own straight lead from one output of unit 1, at 9 V. */
export const feedOf = (pedal: string, supply: string, output: number, more: Partial<Feed> = {}): Feed => ({
  pedal: pedalId(pedal),
  supply: supplyId(supply),
  unit: 1,
  outputs: [output],
  settings: [volts(9)],
  polarity: 'centre-negative',
  join: null,
  chain: null,
  adapters: [],
  ...more,
});

/** A score of nothing at all, but for what is given. */
export const scoreWith = (more: Partial<Score> = {}): Score => ({
  unpowered: 0,
  money: euros(0),
  exposed: 0,
  bricks: 0,
  ...perCountedTier(() => 0),
  moved: null,
  ...more,
});

/** A policy without limits, all factors 1 but those given. */
export function policyOf(more: Partial<Policy> = {}): Policy {
  const one = factor(1);
  return {
    headroom: { alone: one, chained: one, supply: one },
    guess: one,
    chains: 'allow',
    noisePrice: euros(20),
    supplyPrice: euros(0),
    mains: [],
    runtime: null,
    batteries: null,
    sockets: null,
    budget: null,
    bricks: null,
    ...more,
  };
}

/** A supply that hangs on another one by an inlet of 9 V, 100 mA. */
export const fedBy = (
  changes: Partial<Inlet> = {},
): { readonly source: Extract<Source, { readonly kind: 'fed' }> } => ({
  source: {
    kind: 'fed',
    inlet: {
      power: 'DC',
      plug: 'barrel-2.1',
      polarity: 'centre-negative',
      accepts: listed(9),
      microamps: milliamps(100),
      startup: null,
      ...changes,
    },
  },
});

export function boardOf(pedals: readonly Pedal[], more: Partial<Omit<Board, 'pedals'>> = {}): Board {
  return {
    name: 'Test board',
    currency: euro,
    policy: policyOf(),
    pedals,
    gear: { supplies: [], parts: [] },
    owned: { supplies: new Map(), parts: new Map() },
    wiring: [],
    inlets: [],
    ...more,
  };
}

export const catalogueOf = (supplies: readonly Supply[], parts: readonly Part[] = []): Catalogue => ({
  name: 'Test shop',
  currency: euro,
  supplies,
  parts,
});
