import { decimalsByCode } from './currency-list.js';
import { minorUnits, scaledDecimal, type MinorUnits } from './quantities.js';

/** An ISO 4217 currency: its three-letter code and how many decimals its amounts have (EUR 2, JPY 0, KWD 3). */
export type Currency = { readonly code: string; readonly decimals: number };

/** The currency of an ISO 4217 code in capitals, or null when there is none. */
export function currencyOf(code: string): Currency | null {
  const decimals = decimalsByCode.get(code);
  return decimals === undefined ? null : { code, decimals };
}

/** All ISO 4217 codes, for suggesting a near spelling. */
export const currencyNames = (): readonly string[] => [...decimalsByCode.keys()];

/** An amount in major units (119.5 euro) as exact minor units; null when it has more decimals than the currency. */
export function amountInMinorUnits(amount: number, currency: Currency): MinorUnits | null {
  const scaled = scaledDecimal(amount, currency.decimals);
  return scaled === null ? null : minorUnits(scaled);
}

/** The amount with exactly the currency's decimals and a decimal point, without the currency: 11900 is "119.00". */
export function moneyText(amount: MinorUnits, currency: Currency): string {
  if (currency.decimals === 0) return String(amount);
  const sign = amount < 0 ? '-' : '';
  const digits = String(Math.abs(amount)).padStart(currency.decimals + 1, '0');
  return `${sign}${digits.slice(0, -currency.decimals)}.${digits.slice(-currency.decimals)}`;
}

/** The amount with its currency: "119.00 EUR". */
export const priceText = (amount: MinorUnits, { currency }: { readonly currency: Currency }): string =>
  `${moneyText(amount, currency)} ${currency.code}`;
