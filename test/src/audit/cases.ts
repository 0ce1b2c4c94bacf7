import { audit, type AuditReport } from '../../../src/audit/audit.js';
import type { Board, Catalogue, Policy } from '../../../src/domain/board.js';
import type { Part, PartRole } from '../../../src/domain/part.js';
import type { AcceptedVolts, Pedal } from '../../../src/domain/pedal.js';
import type { Feed } from '../../../src/domain/plan.js';
import {
  factorOfThousandths,
  microamps,
  millivolts,
  minorUnits,
  partId,
  pedalId,
  supplyId,
} from '../../../src/domain/quantities.js';
import type { Bank, JoinMode, Setting, Supply } from '../../../src/domain/supply.js';

/** A factor from its decimal value, such as 1.2. */
export const times = (value: number): Policy['guess'] => factorOfThousandths(Math.round(value * 1000));
export const volts = (value: number): Setting['millivolts'] => millivolts(Math.round(value * 1000));
export const milliamps = (value: number): Setting['rating'] => microamps(Math.round(value * 1000));

/** A policy without any limit or headroom. */
export const freePolicy: Policy = {
  headroom: { alone: times(1), chained: times(1), supply: times(1) },
  guess: times(1),
  chains: 'allow',
  noisePrice: minorUnits(0),
  mains: null,
  sockets: null,
  budget: null,
  bricks: null,
};

export const listed = (...values: readonly number[]): AcceptedVolts => ({
  kind: 'listed',
  millivolts: values.map(volts),
});

/** A plain 9 V pedal of 100 mA. */
export function pedal(id: string, changes: Partial<Pedal> = {}): Pedal {
  return {
    id: pedalId(id),
    name: `${id.slice(0, 1).toUpperCase()}${id.slice(1)}`,
    power: 'DC',
    polarity: 'centre-negative',
    inlet: 'barrel-2.1',
    ground: 'negative',
    accepts: listed(9),
    prefers: null,
    survives: null,
    draw: { kind: 'flat', microamps: milliamps(100) },
    startup: null,
    figure: 'label',
    digital: false,
    highGain: false,
    alone: false,
    assumed: {},
    ...changes,
  };
}

export const draws = (value: number): Pick<Pedal, 'draw'> => ({
  draw: { kind: 'flat', microamps: milliamps(value) },
});

/** A regulated setting, or an unregulated one when its open-circuit volts are given. */
export const setting = (atVolts: number, rating: number, openCircuit: number | null = null): Setting => ({
  millivolts: volts(atVolts),
  rating: milliamps(rating),
  openCircuit: openCircuit === null ? null : volts(openCircuit),
});

/** Two isolated 9 V outputs of 500 mA. */
export function bank(changes: Partial<Omit<Bank, 'firstOutput'>> = {}): Omit<Bank, 'firstOutput'> {
  return {
    outputs: 2,
    isolated: true,
    power: 'DC',
    plug: 'barrel-2.1',
    polarity: 'centre-negative',
    switching: 'each',
    settings: [setting(9, 500)],
    joins: [],
    total: null,
    ...changes,
  };
}

export function supply(
  id: string,
  banks: readonly Omit<Bank, 'firstOutput'>[],
  changes: Partial<Omit<Supply, 'banks'>> = {},
): Supply {
  let firstOutput = 1;
  const numbered: Bank[] = [];
  for (const each of banks) {
    numbered.push({ ...each, firstOutput });
    firstOutput += each.outputs;
  }
  return {
    id: supplyId(id),
    name: `${id.slice(0, 1).toUpperCase()}${id.slice(1)}`,
    price: minorUnits(10000),
    stock: null,
    mains: null,
    total: null,
    assumed: {},
    ...changes,
    banks: numbered,
  };
}

/** A straight adapter from barrel to barrel for 5.00. */
export function part(id: string, changes: Partial<Part> = {}): Part {
  return {
    id: partId(id),
    name: `${id.slice(0, 1).toUpperCase()}${id.slice(1)}`,
    price: minorUnits(500),
    stock: null,
    fits: 'barrel-2.1',
    gives: 'barrel-2.1',
    reverses: false,
    role: { kind: 'adapter' },
    ...changes,
  };
}

export const chainLead = (id: string, tails: number, changes: Partial<Part> = {}): Part =>
  part(id, { role: { kind: 'chain', tails } satisfies PartRole, ...changes });
export const joinLead = (id: string, mode: JoinMode, changes: Partial<Part> = {}): Part =>
  part(id, { role: { kind: 'join', mode } satisfies PartRole, ...changes });

type FeedChanges = {
  readonly supply?: string;
  readonly unit?: number;
  readonly volts?: readonly number[];
  readonly polarity?: Feed['polarity'];
  readonly join?: readonly [JoinMode, string];
  readonly chain?: string;
  readonly adapters?: readonly string[];
};

/** A feed from the outputs of unit 1 of the supply "quay", each at 9 V. */
export function feed(ofPedal: string, outputs: number | readonly number[], changes: FeedChanges = {}): Feed {
  const numbers = typeof outputs === 'number' ? [outputs] : outputs;
  return {
    pedal: pedalId(ofPedal),
    supply: supplyId(changes.supply ?? 'quay'),
    unit: changes.unit ?? 1,
    outputs: numbers,
    settings: (changes.volts ?? numbers.map(() => 9)).map(volts),
    polarity: changes.polarity === undefined ? 'centre-negative' : changes.polarity,
    join: changes.join === undefined ? null : { mode: changes.join[0], part: partId(changes.join[1]) },
    chain: changes.chain === undefined ? null : partId(changes.chain),
    adapters: (changes.adapters ?? []).map(partId),
  };
}

export type Case = {
  readonly pedals: readonly Pedal[];
  readonly supplies: readonly Supply[];
  readonly parts?: readonly Part[];
  readonly feeds: readonly Feed[];
  readonly policy?: Partial<Policy>;
  readonly headroom?: Partial<Policy['headroom']>;
  /** Owned units by supply id and owned parts by part id. */
  readonly owned?: Readonly<Record<string, number>>;
  readonly partial?: boolean;
};

export function boardOf({ pedals, supplies, parts, policy, headroom, owned }: Case): Board {
  const entries = Object.entries(owned ?? {});
  const supplyIds = new Set<string>(supplies.map((each) => each.id));
  const partIds = new Set<string>((parts ?? []).map((each) => each.id));
  return {
    name: 'Tideway board',
    currency: { code: 'EUR', decimals: 2 },
    policy: { ...freePolicy, ...policy, headroom: { ...freePolicy.headroom, ...headroom } },
    pedals,
    gear: { supplies: [], parts: [] },
    owned: {
      supplies: new Map(entries.filter(([id]) => supplyIds.has(id)).map(([id, units]) => [supplyId(id), units])),
      parts: new Map(entries.filter(([id]) => partIds.has(id)).map(([id, units]) => [partId(id), units])),
    },
    wiring: [],
  };
}

export const catalogueOf = ({ supplies, parts }: Case): Catalogue => ({
  name: 'Marram Street shop',
  currency: { code: 'EUR', decimals: 2 },
  supplies,
  parts: parts ?? [],
});

export const judge = (of: Case): AuditReport =>
  audit(boardOf(of), catalogueOf(of), of.feeds, { partial: of.partial ?? false });

/** Every fault found: the rules broken, once for each violation, and the words "malformed" and "missing". */
export function faults(of: Case): readonly string[] {
  const report = judge(of);
  return [
    ...report.violations.map((violation) => violation.rule),
    ...report.malformed.map(() => 'malformed'),
    ...report.missing.map(() => 'missing'),
  ];
}

export const messages = (of: Case): readonly string[] => judge(of).violations.map((violation) => violation.message);
