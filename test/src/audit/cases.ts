import { audit, type AuditReport } from '../../../src/audit/audit.js';
import type { Board, Catalogue, Policy } from '../../../src/domain/board.js';
import type { Part } from '../../../src/domain/part.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import type { Feed } from '../../../src/domain/plan.js';
import { microamps, milliwatts, minorUnits, partId, supplyId } from '../../../src/domain/quantities.js';
import type { Bank, JoinMode, Supply, Total } from '../../../src/domain/supply.js';
import * as builders from '../../support/builders.js';
import { milliamps, volts } from '../../support/builders.js';

export { factor as times, listed, milliamps, settingOf as setting, volts } from '../../support/builders.js';

type BankDraft = Omit<Bank, 'firstOutput'>;

/** A policy without any limit or headroom, to which noise is all the same. */
export const freePolicy: Policy = builders.policyOf({ noisePrice: minorUnits(0) });

const named = (id: string) => ({ name: `${id.slice(0, 1).toUpperCase()}${id.slice(1)}` });

/** A plain 9 V pedal of 100 mA. */
export const pedal = (id: string, changes: Partial<Pedal> = {}): Pedal =>
  builders.pedalOf(id, 100, { ...named(id), ...changes });

export const draws = (value: number): Pick<Pedal, 'draw'> => ({
  draw: { kind: 'flat', microamps: milliamps(value) },
});

/** Two isolated 9 V outputs of 500 mA. */
export const bank = ({ outputs = 2, ...changes }: Partial<BankDraft> = {}): BankDraft =>
  builders.bankOf(outputs, [builders.settingOf(9, 500)], changes);

/** A supply for 100.00. */
export const supply = (id: string, banks: readonly BankDraft[], changes: Partial<Omit<Supply, 'banks'>> = {}): Supply =>
  builders.supplyOf(id, 100, banks, { ...named(id), ...changes });

/** A straight adapter from barrel to barrel for 5.00. */
export const part = (id: string, { role = { kind: 'adapter' }, ...changes }: Partial<Part> = {}): Part =>
  builders.partOf(id, 5, role, { ...named(id), ...changes });

export const chainLead = (id: string, tails: number, changes: Partial<Part> = {}): Part =>
  part(id, { role: { kind: 'chain', tails }, ...changes });
export const joinLead = (id: string, mode: JoinMode, changes: Partial<Part> = {}): Part =>
  part(id, { role: { kind: 'join', mode }, ...changes });

export const current = (value: number): Total => ({ kind: 'current', microamps: microamps(value) });
export const power = (value: number): Total => ({ kind: 'power', milliwatts: milliwatts(value) });
/** Of both banks, and of the whole supply. */
export type Totals = { readonly banks?: readonly (Total | null)[]; readonly supply?: Total };

/** Two banks of two outputs of 900 mA each, at 9 V or 12 V. */
export const quayWith = (mode: JoinMode | null, { banks, supply: total }: Totals) =>
  supply(
    'quay',
    [0, 1].map((index) =>
      bank({
        joins: mode === null ? [] : [mode],
        settings: [builders.settingOf(9, 900), builders.settingOf(12, 900)],
        total: banks?.[index] ?? null,
      }),
    ),
    { total: total ?? null },
  );

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
  const { supply: from = 'quay', volts: at = numbers.map(() => 9), join, chain, adapters = [], ...more } = changes;
  return builders.feedOf(ofPedal, from, 1, {
    outputs: numbers,
    settings: at.map(volts),
    join: join === undefined ? null : { mode: join[0], part: partId(join[1]) },
    chain: chain === undefined ? null : partId(chain),
    adapters: adapters.map(partId),
    ...more,
  });
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
  return builders.boardOf(pedals, {
    policy: { ...freePolicy, ...policy, headroom: { ...freePolicy.headroom, ...headroom } },
    owned: {
      supplies: new Map(entries.filter(([id]) => supplyIds.has(id)).map(([id, units]) => [supplyId(id), units])),
      parts: new Map(entries.filter(([id]) => partIds.has(id)).map(([id, units]) => [partId(id), units])),
    },
  });
}

export const catalogueOf = ({ supplies, parts }: Case): Catalogue => builders.catalogueOf(supplies, parts);

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
