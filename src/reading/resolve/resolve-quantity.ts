import type { Report, Spot } from '../../domain/finding.js';
import { amountInMinorUnits, moneyText, type Currency } from '../../domain/money.js';
import {
  factorOfThousandths,
  microamps,
  millivolts,
  milliwatts,
  minorUnits,
  thousandths,
  type Factor,
  type Microamps,
  type Millivolts,
  type Milliwatts,
  type MinorUnits,
} from '../../domain/quantities.js';

/** The most money in one amount, in minor units. */
export const mostMinorUnits = minorUnits(1e12);

function exactThousandths(value: number): number {
  const result = thousandths(value);
  if (result === null) throw new RangeError(`${value} has more than three decimals; its schema should have refused it`);
  return result;
}

/** Volts that passed their schema. */
export const millivoltsOf = (volts: number): Millivolts => millivolts(exactThousandths(volts));
/** Milliamps that passed their schema. */
export const microampsOf = (milliamps: number): Microamps => microamps(exactThousandths(milliamps));
/** Watts that passed their schema. */
export const milliwattsOf = (watts: number): Milliwatts => milliwatts(exactThousandths(watts));
/** A factor that passed its schema. */
export const factorOf = (factor: number): Factor => factorOfThousandths(exactThousandths(factor));

/** An amount of money in minor units; null when it was reported, or when the currency is not known. */
export function resolveMoney(amount: number, currency: Currency | null, spot: Spot, report: Report): MinorUnits | null {
  if (currency === null) return null;
  const { code, decimals } = currency;
  if (amount * 10 ** decimals > mostMinorUnits) {
    report(spot, {
      message: `found ${amount} ${code}; the most is ${moneyText(mostMinorUnits, currency)} ${code}.`,
      remedy: 'Write the amount in whole units of the currency, with a decimal point.',
    });
    return null;
  }
  const result = amountInMinorUnits(amount, currency);
  if (result === null) {
    report(spot, {
      message: `found ${amount}; an amount in ${code} has ${decimalsText(decimals)}.`,
      remedy: `Round it, for example to ${roundedTo(decimals, amount)}.`,
    });
  }
  return result;
}

/** A number rounded half up at its decimal spelling: 1.005 to two decimals is 1.01, which its binary value would not be. */
export function roundedTo(decimals: number, value: number): number {
  const text = String(value);
  return text.includes('e') ? value : Number(`${Math.round(Number(`${text}e${decimals}`))}e-${decimals}`);
}

function decimalsText(decimals: number): string {
  if (decimals === 0) return 'no decimals';
  return decimals === 1 ? 'at most one decimal' : `at most ${decimals} decimals`;
}
