import * as z from 'zod/mini';

import { stepsUp, type Exact } from '../../domain/load.js';
import { moneyText } from '../../domain/money.js';
import { factorText, minorUnits, numberOfThousandths, type Factor, type PedalId } from '../../domain/quantities.js';
import { rules } from '../../domain/rules.js';
import { isInletId } from '../../domain/inlet.js';
import { described } from '../../reading/schema/described.js';
import { as, list, made, type Codec } from './codec.js';

export const text = (about: string) => as(described(z.string(), about));
export const id = (about: string) => as(described(z.string().check(z.minLength(1), z.maxLength(200)), about));
export const count = (about: string) => as(described(z.int().check(z.minimum(0)), about));
export const whole = (about: string) => as(described(z.int(), about));
export const numbered = (about: string) => as(described(z.int().check(z.minimum(1)), about));
export const yes = (about: string) => as(described(z.boolean(), about));
export const choice = <const Words extends readonly string[]>(words: Words, about: string) =>
  as(described(z.enum(words), about));
export const rule = (about: string) => choice(rules, about);

export const sentence = text('A sentence.');
export const numbers = text('A sentence with the numbers.');
/** Of what hangs somewhere the pedals: inlets of supplies have no ids. */
export function pedals(about: string): Codec<readonly PedalId[], z.ZodMiniArray<z.ZodMiniString>> {
  const all = list(about, id('The id of a pedal.'));
  return {
    ...all,
    print: (of, told) =>
      all.print(
        of.filter((each) => !isInletId(each)),
        told,
      ),
  };
}
export const outputs = (about: string) => list(about, numbered('The number of an output of the supply, from 1.'));

const amountSchema = (about: string) =>
  described(
    z.string().check(z.regex(/^\d{1,15}(?:\.\d{1,4})?$/)),
    `${about} Money with the currency's own number of decimals.`,
  );

/** Minor units as text. */
export const money = (about: string) =>
  made(amountSchema(about), (amount: number, { board }) => moneyText(minorUnits(amount), board.currency));

/** Of a measure that is money or a count. */
type Amount = { readonly amount: number; readonly isMoney: boolean };

export const amountOrCount = (about: string) =>
  made(
    described(
      z.union([amountSchema(`${about} For money.`), described(z.int(), `${about} For what is counted.`)]),
      `${about} Money as text, a count as a number.`,
    ),
    ({ amount, isMoney }: Amount, { board }) => (isMoney ? moneyText(minorUnits(amount), board.currency) : amount),
  );

/** Millivolts as volts. */
export const volts = (about: string) =>
  made(described(z.number().check(z.gt(0)), `${about} In volts.`), (millivolts: number) =>
    numberOfThousandths(millivolts),
  );

/** Thousandths of a unit as that unit. */
export const thousandths = (about: string) =>
  made(described(z.number().check(z.minimum(0)), about), (value: number) => numberOfThousandths(value));

/** Thousandths of a unit, rounded up where there would be more than three decimals. */
export const roundedUp = (about: string) =>
  made(described(z.number().check(z.minimum(0)), about), (value: Exact) => numberOfThousandths(stepsUp(value, 1)));

export const factor = (about: string) =>
  made(described(z.number().check(z.minimum(1)), about), (value: Factor) => Number(factorText(value)));

export const polarities = ['centre-negative', 'centre-positive', 'unknown'] as const;
