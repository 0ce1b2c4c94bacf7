/**
 * Branded numbers: a quantity carries its unit in its type, and ids of different things cannot be mixed up.
 * Every quantity is a safe integer in its smallest unit, so that all comparisons are exact.
 */

declare const brand: unique symbol;
type Branded<Base, Name extends string> = Base & { readonly [brand]: Name };

/** Whole millivolts (1 V = 1000 mV). */
export type Millivolts = Branded<number, 'millivolts'>;
/** Whole microamps (1 mA = 1000 µA). */
export type Microamps = Branded<number, 'microamps'>;
/** Whole milliwatts (1 W = 1000 mW). */
export type Milliwatts = Branded<number, 'milliwatts'>;
/** Whole microamp-hours (1 mAh = 1000 µAh). */
export type MicroampHours = Branded<number, 'microampHours'>;
/** Whole milliwatt-hours (1 Wh = 1000 mWh). */
export type MilliwattHours = Branded<number, 'milliwattHours'>;
/** Whole minor units of the board's currency, such as cents. */
export type MinorUnits = Branded<number, 'minorUnits'>;

export type PedalId = Branded<string, 'pedal'>;
export type SupplyId = Branded<string, 'supply'>;
export type PartId = Branded<string, 'part'>;

/** A positive rational number in lowest terms; both parts are safe integers and the denominator is at least 1. */
export type Factor = { readonly numerator: number; readonly denominator: number };

function whole<Quantity extends number>(value: number, name: string): Quantity {
  if (!Number.isSafeInteger(value)) throw new RangeError(`${name} must be a safe integer, not ${value}`);
  return value as Quantity;
}

/** @throws RangeError when the value is not a safe integer. */
export const millivolts = (value: number): Millivolts => whole<Millivolts>(value, 'millivolts');
/** @throws RangeError when the value is not a safe integer. */
export const microamps = (value: number): Microamps => whole<Microamps>(value, 'microamps');
/** @throws RangeError when the value is not a safe integer. */
export const milliwatts = (value: number): Milliwatts => whole<Milliwatts>(value, 'milliwatts');
/** @throws RangeError when the value is not a safe integer. */
export const microampHours = (value: number): MicroampHours => whole<MicroampHours>(value, 'microamp-hours');
/** @throws RangeError when the value is not a safe integer. */
export const milliwattHours = (value: number): MilliwattHours => whole<MilliwattHours>(value, 'milliwatt-hours');
/** @throws RangeError when the value is not a safe integer. */
export const minorUnits = (value: number): MinorUnits => whole<MinorUnits>(value, 'minor units');

export const pedalId = (value: string): PedalId => value as PedalId;
export const supplyId = (value: string): SupplyId => value as SupplyId;
export const partId = (value: string): PartId => value as PartId;

/**
 * A decimal number as an exact integer of thousandths: volts to millivolts, milliamps to microamps, watts to milliwatts.
 * Returns null when the number has more than three decimals or its thousandths are not a safe integer.
 */
export function thousandths(value: number): number | null {
  return scaledDecimal(value, 3);
}

/**
 * A decimal number times 10^decimals, exactly. The number's decimals are those of its shortest decimal spelling, which is
 * what a person typed. Returns null when it has more decimals than allowed or the result is not a safe integer.
 */
export function scaledDecimal(value: number, decimals: number): number | null {
  if (!Number.isFinite(value)) return null;
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value));
  if (match === null) return null;
  const [, sign = '', whole = '', fraction = '', exponentText = '0'] = match;
  const shift = decimals + Number(exponentText) - fraction.length;
  const digits = `${whole}${fraction}`;
  if (shift < 0 && !/^0+$/.test(digits.slice(shift).padStart(-shift, '0'))) return null;
  if (shift > 30) return null;
  const scaled = shift < 0 ? digits.slice(0, shift) || '0' : digits + '0'.repeat(shift);
  const result = Number(scaled);
  if (!Number.isSafeInteger(result)) return null;
  return sign === '-' && result !== 0 ? -result : result;
}

/** The decimal text of an integer of thousandths, without needless zeros: 9000 is "9", 2700 is "2.7". */
export function decimalOfThousandths(value: number): string {
  const sign = value < 0 ? '-' : '';
  const size = Math.abs(value);
  const fraction = String(size % 1000)
    .padStart(3, '0')
    .replace(/0+$/, '');
  return `${sign}${Math.floor(size / 1000)}${fraction === '' ? '' : `.${fraction}`}`;
}

/** The number in volts, milliamps or watts that an integer of thousandths stands for; for JSON output. */
export const numberOfThousandths = (value: number): number => Number(decimalOfThousandths(value));

/** The factor numerator / 1000 in lowest terms. @throws RangeError unless thousandths is a positive safe integer. */
export function factorOfThousandths(value: number): Factor {
  if (!Number.isSafeInteger(value) || value <= 0)
    throw new RangeError(`a factor must be positive, not ${value} thousandths`);
  const divisor = greatestCommonDivisor(value, 1000);
  return { numerator: value / divisor, denominator: 1000 / divisor };
}

/** The greatest common divisor of two nonnegative integers; gcd(0, n) is n. */
export function greatestCommonDivisor(first: number, second: number): number {
  return second === 0 ? first : greatestCommonDivisor(second, first % second);
}

/** The decimal text of a factor whose denominator divides 1000: 6/5 is "1.2". */
export const factorText = (factor: Factor): string =>
  decimalOfThousandths((factor.numerator * 1000) / factor.denominator);
