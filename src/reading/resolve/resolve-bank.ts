import { entriesAt, type Entry, type Sheet } from './entry.js';
import type { Report } from '../../domain/finding.js';
import type { Power } from '../../domain/pedal.js';
import { reportPolarityOfAlternating, safetyFigure, type Assumptions, type AssumedFigure } from './resolve-assumed.js';
import { microampsOf, milliwattsOf } from './resolve-quantity.js';
import { resolveSettings, type Regulation } from './resolve-setting.js';
import type { RawBank, RawSetting, RawSupplyAssumptions, RawTotal } from '../schema/schema-supply.js';
import type { Bank, JoinMode, Total } from '../../domain/supply.js';

/** A bank without its place in the supply, and the figures it has from the `assume` block. */
export type ResolvedBank = {
  readonly bank: Omit<Bank, 'firstOutput'>;
  readonly assumed: { readonly power: boolean; readonly plug: boolean; readonly polarity: boolean };
};

const label = "the supply's label";

/** What a bank is resolved with. */
export type AroundBank = {
  readonly sheet: Sheet;
  /** The name of the supply. */
  readonly whose: string | undefined;
  readonly assumptions: Assumptions<RawSupplyAssumptions>;
  readonly report: Report;
};

/** The power of a bank's outputs; null when it was reported. */
export function resolveBankPower(entry: Entry<RawBank>, around: AroundBank): AssumedFigure<Power> | null {
  const words = { whose: around.whose, allowed: 'DC or AC', readOff: label };
  return safetyFigure(entry, around.assumptions, 'power', words, around.report);
}

/** A bank whose power is known already; null when something about it was reported. */
export function resolveBank(
  entry: Entry<RawBank>,
  power: AssumedFigure<Power> | null,
  regulation: Regulation | null,
  around: AroundBank,
): ResolvedBank | null {
  const { sheet, whose, assumptions, report } = around;
  const { fields } = entry;
  const plugWords = { whose, allowed: 'the name of a connector, such as barrel-2.1', readOff: "the supply's manual" };
  const plug = safetyFigure(entry, assumptions, 'plug', plugWords, report);
  const polarity = resolveBankPolarity(entry, power, around);
  const settings = resolveSettings(entriesAt<RawSetting>(sheet, [...entry.path, 'settings']), regulation, report);
  const switching = resolveSwitching(sheet, entry, report);
  const total = resolveTotal(entry, report);
  if (power === null || plug === null || polarity === 'reported' || settings === null) return null;
  if (switching === null || total === 'reported') return null;
  if (fields.outputs === undefined || fields.isolated === undefined) return null;
  return {
    bank: {
      outputs: fields.outputs,
      isolated: fields.isolated,
      power: power.value,
      plug: plug.value,
      polarity: polarity?.value ?? null,
      switching,
      settings,
      joins: joinModes(fields.joins),
      total,
    },
    assumed: { power: power.assumed, plug: plug.assumed, polarity: polarity?.assumed ?? false },
  };
}

function resolveBankPolarity(
  entry: Entry<RawBank>,
  power: AssumedFigure<Power> | null,
  { whose, assumptions, report }: AroundBank,
): AssumedFigure<NonNullable<Bank['polarity']>> | null | 'reported' {
  if (power === null) return 'reported';
  if (power.value === 'AC') {
    reportPolarityOfAlternating(entry, 'bank', report);
    return null;
  }
  const words = { whose, allowed: 'centre-negative, centre-positive or either', readOff: label };
  return safetyFigure(entry, assumptions, 'polarity', words, report) ?? 'reported';
}

function resolveSwitching(sheet: Sheet, entry: Entry<RawBank>, report: Report): Bank['switching'] | null {
  const settings = entriesAt<RawSetting>(sheet, [...entry.path, 'settings']).length;
  if (settings <= 1) return 'each';
  if (entry.fields.switch !== undefined) return entry.fields.switch;
  if (!entry.isBroken('switch')) {
    report(entry.spotOf('switch'), {
      message: `missing; the bank has ${settings} settings. Allowed: each or together.`,
      remedy: 'Add `switch: each` when every output is set by itself, `switch: together` when one switch sets all.',
    });
  }
  return null;
}

/** The total of a bank or supply; null when it has none. */
export function resolveTotal(
  entry: Entry<{ readonly total?: RawTotal | undefined }>,
  report: Report,
): Total | null | 'reported' {
  const total = entry.fields.total;
  if (total === undefined) return entry.isBroken('total') ? 'reported' : null;
  const { milliamps, watts } = total;
  if (milliamps !== undefined && watts === undefined) return { kind: 'current', microamps: microampsOf(milliamps) };
  if (watts !== undefined && milliamps === undefined) return { kind: 'power', milliwatts: milliwattsOf(watts) };
  report(entry.spotOf('total'), {
    message: `has ${milliamps === undefined ? 'neither milliamps nor watts' : 'both milliamps and watts'}; it needs exactly one of them.`,
    remedy:
      milliamps === undefined
        ? 'Write the one that the label gives: {milliamps: …} or {watts: …}.'
        : 'Where the label gives both, write the tighter one: watts over the volts in use are amps.',
  });
  return 'reported';
}

function joinModes(joins: RawBank['joins']): readonly JoinMode[] {
  const words = joins === undefined ? [] : typeof joins === 'string' ? [joins] : joins;
  return (['series', 'parallel'] as const).filter((mode) => words.includes(mode) || words.includes('both'));
}
