import { entriesAt, type Entry, type Sheet } from './entry.js';
import type { Report } from '../../domain/finding.js';
import type { Polarity, Power } from '../../domain/pedal.js';
import { milliwattHours, supplyId, type SupplyId } from '../../domain/quantities.js';
import { safetyFigure, type Assumptions, type AssumedFigure } from './resolve-assumed.js';
import { resolveBank, resolveBankPower, resolveTotal, type AroundBank, type ResolvedBank } from './resolve-bank.js';
import { resolveFed } from './resolve-inlet.js';
import { resolvePrice, type Counter, type Found } from './resolve-for-sale.js';
import { noteId, resolveId } from './resolve-id.js';
import { millivoltsOf, milliwattsOf } from './resolve-quantity.js';
import { resolveRange } from './resolve-volts.js';
import type { Regulation } from './resolve-setting.js';
import type { RawBank, RawSupply, RawSupplyAssumptions } from '../schema/schema-supply.js';
import type { MainsVolts, Source } from '../../domain/source.js';
import type { Bank, Supply } from '../../domain/supply.js';

/** A supply of a catalogue, or of the gear, which has no assumptions. */
export function resolveSupply(
  sheet: Sheet,
  entry: Entry<RawSupply>,
  assumptions: Assumptions<RawSupplyAssumptions>,
  counter: Counter,
): Found<SupplyId, Supply> {
  const { fields } = entry;
  const { report } = counter;
  const id = resolveId(entry, report);
  if (id !== null) noteId('supplies', id, entry, counter.seen, report);
  const price = resolvePrice(entry, counter);
  const source = resolveSource(sheet, entry, report);
  const total = resolveTotal(entry, report);
  const outputs = resolveOutputs(sheet, entry, assumptions, report);
  const found = id === null ? null : supplyId(id);
  if (found === null || price === 'reported' || source === 'reported' || total === 'reported' || outputs === null)
    return { id: found, thing: null };
  if (fields.name === undefined || entry.isBroken('assumed')) return { id: found, thing: null };
  const stock = counter.forSale ? (fields.stock ?? null) : 0;
  const { banks } = outputs;
  const assumed = { ...outputs.assumed, ...assumedHere(fields, banks) };
  return { id: found, thing: { id: found, name: fields.name, price, stock, source, total, banks, assumed } };
}

/** What a supply of the gear states without its having been read. */
function assumedHere({ assumed = [], regulated }: Partial<RawSupply>, banks: readonly Bank[]): Supply['assumed'] {
  const plug = banks[0]?.plug;
  const polarity = banks.find((bank) => bank.power === 'DC')?.polarity;
  return {
    ...(assumed.includes('plug') && plug !== undefined && { plug }),
    ...(assumed.includes('polarity') && polarity !== undefined && polarity !== null && { polarity }),
    ...(assumed.includes('regulated') && regulated !== undefined && { regulated }),
  };
}

/**
 * A supply stands on another one where it has an inlet, on its charge where it has one, else on the mains; the volts that it
 * accepts there may be left out.
 */
function resolveSource(sheet: Sheet, entry: Entry<RawSupply>, report: Report): Source | 'reported' {
  const { charge, mains, inlet } = entry.fields;
  if (inlet !== undefined || entry.isBroken('inlet')) return resolveFed(sheet, entry, report);
  if (entry.isBroken('charge')) return 'reported';
  if (charge !== undefined) {
    if (mains === undefined && !entry.isBroken('mains'))
      return { kind: 'charge', milliwattHours: milliwattHours(milliwattsOf(charge.wattHours)) };
    report(entry.spotOf('mains'), {
      message: 'stands beside `charge`; a power bank stands on its own charge, not on the mains.',
      remedy: 'Remove one of them.',
    });
    return 'reported';
  }
  const volts = resolveMains(entry, report);
  return volts === 'reported' ? volts : { kind: 'mains', volts };
}

/** The mains volts that something accepts; null where they are not stated. */
export function resolveMains(entry: Entry<Pick<RawSupply, 'mains'>>, report: Report): MainsVolts | 'reported' {
  const { mains } = entry.fields;
  if (mains === undefined) return entry.isBroken('mains') ? 'reported' : null;
  if (typeof mains === 'number') return { from: millivoltsOf(mains), to: millivoltsOf(mains) };
  const range = resolveRange(mains, entry, 'mains', report);
  return range === null ? 'reported' : { from: range.from, to: range.to };
}

function resolveOutputs(
  sheet: Sheet,
  entry: Entry<RawSupply>,
  assumptions: Assumptions<RawSupplyAssumptions>,
  report: Report,
): Pick<Supply, 'banks' | 'assumed'> | null {
  const entries = entriesAt<RawBank>(sheet, [...entry.path, 'banks']);
  const around: AroundBank = { sheet, whose: entry.fields.name, assumptions, report };
  const powers = entries.map((bank) => resolveBankPower(bank, around));
  const regulated = resolveRegulated(entry, powers, assumptions, report);
  const regulation = regulationOf(regulated);
  const resolved = entries.map((bank, index) => resolveBank(bank, powers[index] ?? null, regulation, around));
  if (regulation === null || resolved.length === 0 || !resolved.every((bank) => bank !== null)) return null;
  return { banks: numbered(resolved), assumed: assumedOf(resolved, regulated, assumptions) };
}

/** Null when it was reported; `unstated` when there is no DC output, which alone must state it. */
function resolveRegulated(
  entry: Entry<RawSupply>,
  powers: readonly (AssumedFigure<Power> | null)[],
  assumptions: Assumptions<RawSupplyAssumptions>,
  report: Report,
): AssumedFigure<boolean> | 'unstated' | null {
  if (entry.fields.regulated !== undefined) return { value: entry.fields.regulated, assumed: false };
  if (entry.isBroken('regulated')) return null;
  if (!powers.some((power) => power?.value === 'DC')) return powers.includes(null) ? null : 'unstated';
  const words = { whose: entry.fields.name, allowed: 'true or false', readOff: "the supply's label or data sheet" };
  return safetyFigure(entry, assumptions, 'regulated', words, report);
}

function regulationOf(regulated: AssumedFigure<boolean> | 'unstated' | null): Regulation | null {
  if (regulated === null || regulated === 'unstated') return regulated;
  return regulated.value ? 'regulated' : 'unregulated';
}

function numbered(resolved: readonly ResolvedBank[]): readonly Bank[] {
  let next = 1;
  return resolved.map(({ bank }) => {
    const firstOutput = next;
    next += bank.outputs;
    return { firstOutput, ...bank };
  });
}

function assumedOf(
  resolved: readonly ResolvedBank[],
  regulated: AssumedFigure<boolean> | 'unstated' | null,
  assumptions: Assumptions<RawSupplyAssumptions>,
): Supply['assumed'] {
  const fields = assumptions?.fields ?? {};
  const isAssumed = (figure: keyof ResolvedBank['assumed']) => resolved.some(({ assumed }) => assumed[figure]);
  const assumed: { power?: Power; plug?: string; polarity?: Polarity | 'either'; regulated?: boolean } = {};
  if (isAssumed('power') && fields.power !== undefined) assumed.power = fields.power;
  if (isAssumed('plug') && fields.plug !== undefined) assumed.plug = fields.plug;
  if (isAssumed('polarity') && fields.polarity !== undefined) assumed.polarity = fields.polarity;
  if (regulated !== null && regulated !== 'unstated' && regulated.assumed) assumed.regulated = regulated.value;
  return assumed;
}
