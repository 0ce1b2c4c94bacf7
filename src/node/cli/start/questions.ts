import { currencyNames, currencyOf } from '../../../domain/money.js';
import { nearSpelling } from '../../../domain/near-spelling.js';
import { idFromName } from '../../../reading/resolve/resolve-id.js';
import { largestCount, longestText } from '../../../reading/schema/schema-fields.js';
import { nameIsTaken } from '../../../reading/typed/pedal-name.js';
import { plainNumber } from '../../../reading/typed/plain-number.js';
import { said, unclear, type Clear, type Typed } from '../../../reading/typed/typed.js';
import type { Asker, Choice, TextOptions } from './asker.js';
import { connectorChoices } from './label-help.js';

/** Asks for a name that makes an id which nothing else has. */
export async function askName(asker: Asker, question: string, taken: ReadonlySet<string>): Promise<string> {
  const check = (answer: string): string | null => {
    const id = idFromName(answer.trim());
    if (answer.trim().length > longestText) return `At most ${longestText} characters.`;
    if (id === null) return 'It needs a letter or a digit.';
    return taken.has(id) ? nameIsTaken : null;
  };
  return (await asker.text(question, { check })).trim();
}

/** Asks for an ISO 4217 code. */
export async function askCurrency(asker: Asker): Promise<string> {
  const plain = (answer: string): string => answer.trim().toUpperCase();
  const check = (answer: string): string | null => {
    if (currencyOf(plain(answer)) !== null) return null;
    const near = nearSpelling(plain(answer), currencyNames());
    return near === null ? 'Write its three letters, such as EUR.' : `Did you mean ${near}?`;
  };
  return plain(await asker.text('Which currency are the prices in, such as EUR?', { check }));
}

/** Asks until the answer is clear; null when it is not known. */
export async function askTyped<Value>(
  asker: Asker,
  question: string,
  read: (answer: string) => Typed<Value>,
  options: Omit<TextOptions, 'check'> = {},
): Promise<Value | null> {
  const check = (answer: string): string | null => {
    const typed = read(answer);
    return typed.kind === 'unclear' ? typed.remedy : null;
  };
  const typed = read(await asker.text(question, { ...options, check }));
  return typed.kind === 'said' ? typed.value : null;
}

/** The same where only what says something is clear. */
export async function askSaid<Value>(
  asker: Asker,
  question: string,
  read: (answer: string) => Clear<Value>,
  options: Omit<TextOptions, 'check'> = {},
): Promise<Value> {
  const value = await askTyped(asker, question, read, options);
  if (value === null) throw new Error('an answer was taken that says nothing');
  return value;
}

/** Asks for one of several answers; null when it is not known. */
export async function askKnown<Value extends string>(
  asker: Asker,
  question: string,
  choices: readonly Choice<Value | 'unknown'>[],
): Promise<Exclude<Value, 'unknown'> | null> {
  const chosen = await asker.choose(question, choices);
  return chosen === 'unknown' ? null : (chosen as Exclude<Value, 'unknown'>);
}

/** Asks for an amount of money of at least 0 in a currency. */
export async function askMoney(asker: Asker, question: string, currency: string, initial?: string): Promise<number> {
  const decimals = currencyOf(currency)?.decimals ?? 2;
  const remedy = `Write an amount in ${currency}, with a decimal point and nothing between thousands.`;
  const read = (answer: string) => {
    const plain = plainNumber(answer, 'money');
    const isFine = plain !== null && Number(plain) >= 0 && (plain.split('.')[1] ?? '').length <= decimals;
    return isFine ? said(Number(plain)) : unclear(remedy);
  };
  return askSaid(asker, question, read, initial === undefined ? {} : { initial });
}

/** Asks for a whole number from a lowest one on. */
export async function askCount(
  asker: Asker,
  question: string,
  lowest: number,
  { highest = largestCount, ...options }: { readonly highest?: number; readonly initial?: string } = {},
): Promise<number> {
  const read = (answer: string) =>
    /^\d{1,6}$/.test(answer.trim()) && Number(answer) >= lowest && Number(answer) <= highest
      ? said(Number(answer))
      : unclear(`Write a whole number from ${lowest} to ${highest}.`);
  return askSaid(asker, question, read, options);
}

/** Asks for a connector; null when it is not known. */
export async function askConnector(asker: Asker, question: string): Promise<string | null> {
  const chosen = await askKnown(asker, question, connectorChoices);
  if (chosen !== 'other') return chosen;
  const check = (answer: string): string | null =>
    answer.trim() === '' || answer.trim().length > longestText ? 'Give it a name.' : null;
  const name = await asker.text('What do you call it? Write the same wherever the same plug is meant.', { check });
  return name.trim();
}
