import { currencyNames, currencyOf } from '../../domain/money.js';
import { didYouMean } from '../../domain/near-spelling.js';
import { plainNumber } from './plain-number.js';
import { said, unclear, type Clear } from './typed.js';

export type Budget = {
  /** An ISO 4217 code. */
  readonly currency: string;
  /** The most that may be spent, in major units; null when there is no limit. */
  readonly budget: number | null;
};

/** Signs that stand for one currency only; a dollar sign stands for many. */
const signs: Readonly<Record<string, string>> = { '€': 'EUR', '£': 'GBP', '₹': 'INR', '₩': 'KRW', '₺': 'TRY' };

/** Reads "120", "120 USD", "€120", a currency alone for no limit, or nothing. What names no currency is in the usual one. */
export function typedBudget(text: string, usual: string): Clear<Budget> {
  const amount = /\d[\d.,]*/.exec(text)?.[0] ?? null;
  const beside = text.replace(amount ?? '', '').trim();
  const code = beside === '' ? usual : (signs[beside] ?? beside.toUpperCase());
  const currency = currencyOf(code);
  if (currency === null)
    return unclear(
      (/\p{L}/u.test(beside) ? didYouMean(code, currencyNames()) : null) ??
        'Write an amount with the three letters of its currency, such as 120 USD.',
    );
  if (amount === null) return said({ currency: code, budget: null });
  const plain = plainNumber(amount, 'money');
  if (plain === null || (plain.split('.')[1] ?? '').length > currency.decimals)
    return unclear(`Write an amount in ${code}, with a decimal point and nothing between thousands.`);
  return said({ currency: code, budget: Number(plain) });
}
