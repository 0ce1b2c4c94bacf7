import type { Currency } from '../domain/money.js';
import type { Pedal } from '../domain/pedal.js';
import type { Factor, MinorUnits } from '../domain/quantities.js';
import type { Supply } from '../domain/supply.js';
import { decimalText, ratioOf, whole, type Ratio } from './exact.js';

/** Millivolts as text in volts. */
export const volts = (millivolts: number): string => `${decimalText(whole(millivolts), 3)} V`;
/** Microamps as text in milliamps. */
export const milliamps = (microamps: Ratio): string => `${decimalText(microamps, 3)} mA`;
/** Milliwatts as text in watts. */
export const watts = (milliwatts: Ratio): string => `${decimalText(milliwatts, 3)} W`;
export const factor = (value: Factor): string => decimalText(ratioOf(value), 0);
export const money = (amount: MinorUnits, currency: Currency): string =>
  `${decimalText(whole(amount), currency.decimals, currency.decimals)} ${currency.code}`;

/** "1 unit", "2 units". */
export const count = (number: number, noun: string): string => `${number} ${noun}${number === 1 ? '' : 's'}`;

/** "is" for one, "are" for any other number. */
export const are = (number: number): string => (number === 1 ? 'is' : 'are');

export const names = (pedals: readonly Pedal[]): string => list([...new Set(pedals.map((pedal) => pedal.name))]);

/** "a", "a and b", "a, b and c"; with another word for "and" where given. */
export function list(items: readonly string[], lastWord = 'and'): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} ${lastWord} ${last}`;
}

export const unitPlace = (supply: Supply, unit: number): string => `${supply.name} (unit ${unit})`;

/** "output 3 of Quay 6 (unit 1)". */
export const outputPlace = (supply: Supply, unit: number, outputs: readonly number[]): string =>
  `output${outputs.length === 1 ? '' : 's'} ${list(outputs.map(String))} of ${unitPlace(supply, unit)}`;
