import { decimalOfThousandths, scaledDecimal } from '../../domain/quantities.js';
import type { NumberUnit } from '../schema/schema-fields.js';
import { rangeEnds } from './range-ends.js';

/** How many thousandths of the plain unit one of each written unit is, in lower case. */
const thousandthsOf: Readonly<Record<NumberUnit, ReadonlyMap<string, number>>> = {
  V: new Map([...['', 'v', 'volt', 'volts', 'vdc', 'vac'].map((unit) => [unit, 1000] as const), ['mv', 1]]),
  mA: new Map([
    ...['', 'ma', 'milliamp', 'milliamps'].map((unit) => [unit, 1000] as const),
    ...['a', 'amp', 'amps'].map((unit) => [unit, 1_000_000] as const),
    ...['µa', 'μa', 'ua'].map((unit) => [unit, 1] as const),
  ]),
  W: new Map([...['', 'w', 'watt', 'watts'].map((unit) => [unit, 1000] as const), ['mw', 1]]),
  Wh: new Map(['', 'wh'].map((unit) => [unit, 1000] as const)),
  mAh: new Map([...['', 'mah'].map((unit) => [unit, 1000] as const), ['ah', 1_000_000]]),
  h: new Map([...['', 'h', 'hour', 'hours'].map((unit) => [unit, 1000] as const)]),
  factor: new Map([
    ['', 1000],
    ['x', 1000],
    ['×', 1000],
    ['%', 10],
  ]),
  money: new Map([['', 1000]]),
  count: new Map([['', 1000]]),
};

/**
 * The plain number that a text with a unit most likely means, as it is to be written: "300 mA" is 300, "0.3A" is 300 too.
 * Null when it cannot be told, as for "1,800", which means one thing here and another there; no thousands begin with 0.
 */
export function plainNumber(text: string, unit: NumberUnit): string | null {
  const cleaned =
    unit === 'money' ? text.replace(/^[\p{Sc}]\s*|^[A-Za-z]{3}\s+|\s*[\p{Sc}]$|\s*[A-Za-z]{3}$/gu, '') : text;
  const match = /^\s*\+?(-?)(\d{1,12})(?:[.,](\d{1,9}))?\s*(\p{L}{0,9}|[%×])\s*$/u.exec(cleaned);
  if (match === null) return null;
  const [, sign = '', whole = '', fraction = '', written = ''] = match;
  const isAmbiguous = text.includes(',') && fraction.length === 3 && Number(whole) > 0;
  const scale = thousandthsOf[unit].get(written.toLowerCase());
  if (scale === undefined || isAmbiguous) return null;
  const value = scaledDecimal(Number(`${whole}.${fraction === '' ? '0' : fraction}`), 9);
  const thousandths = value === null ? null : (value * scale) / 1e9;
  if (thousandths === null || !Number.isSafeInteger(thousandths)) return null;
  return `${sign}${decimalOfThousandths(thousandths)}`;
}

/** The range that a text such as "100-240 V" most likely means, as a map to be written; null when it is none. */
export function plainRange(text: string): string | null {
  const ends = rangeEnds(text.trim());
  const from = ends === null ? null : plainEnd(ends.from);
  const to = ends === null ? null : plainEnd(ends.to);
  return from === null || to === null ? null : `{from: ${from}, to: ${to}}`;
}

const plainEnd = (text: string): string | null => /^(\d{1,4}(?:\.\d{1,3})?)\s*V?$/i.exec(text)?.[1] ?? null;
