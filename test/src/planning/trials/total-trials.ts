/** Trials of the rules that speak of what a bank or a whole supply gives in total: `total` and `startup`. */
import {
  bankOf,
  currentTotal,
  factor,
  listed,
  milliamps,
  pedalOf,
  policyOf,
  powerTotal,
  settingOf,
} from '../../../support/builders.js';
import { box, boxOf, fan, one, pairWith, paying, stack, trial, type Trial } from './trial.js';

const supply12 = { headroom: { ...policyOf().headroom, supply: factor(1.2) } };
const nine = [settingOf(9, 100)];

/** Two pedals of 50 mA in all but a microamp more or less, beside 50 mA: × 1.2 that is 120 mA, or 1.08 W at 9 V. */
const hundred = (more: number) => [pedalOf('one', 50), pedalOf('two', 50 + more)];

/** With a total on the bank, or on the supply across two banks. */
const totals: readonly Trial[] = [currentTotal(120), powerTotal(1.08)].flatMap((total) => [
  trial(
    'total',
    `of a bank in ${total.kind === 'current' ? 'mA' : 'W'}`,
    { pedals: hundred(0.001), supplies: [box(2, { total })], policy: supply12 },
    paying(20),
    { pedals: hundred(0) },
    paying(10),
  ),
  trial(
    'total',
    `of a supply in ${total.kind === 'current' ? 'mA' : 'W'}`,
    { pedals: hundred(0.001), supplies: [boxOf([bankOf(1, nine), bankOf(1, nine)], { total })], policy: supply12 },
    paying(20),
    { pedals: hundred(0) },
    paying(10),
  ),
]);

/** 40 mA at work and at switch-on, 60 mA at switch-on; no factor counts there. */
const starting = (more: number) => ({ pedals: pairWith({ startup: milliamps(60 + more) }) });

const startingTotals: readonly Trial[] = [currentTotal(100), powerTotal(0.9)].flatMap((total) => {
  const text = total.kind === 'current' ? 'mA' : 'W';
  return [
    trial(
      'startup',
      `of all pedals ≤ the total of a bank in ${text}`,
      { ...starting(0.001), supplies: [box(2, { total })], policy: supply12 },
      paying(20),
      starting(0),
      paying(10),
    ),
    trial(
      'startup',
      `of all pedals ≤ the total of a supply in ${text}`,
      { ...starting(0.001), supplies: [boxOf([bankOf(1, nine), bankOf(1, nine)], { total })], policy: supply12 },
      paying(20),
      starting(0),
      paying(10),
    ),
  ];
});

const chainedTotals: readonly Trial[] = [
  trial(
    'startup',
    'of a chain ≤ the total of a supply',
    { ...starting(0), supplies: [box(1, {}, { total: currentTotal(99.999) })], parts: [fan] },
    paying(20),
    { supplies: [box(1, {}, { total: currentTotal(100) })] },
    paying(11),
  ),
  trial(
    'total',
    'counts every pedal of a chain',
    { pedals: pairWith(), supplies: [box(1, { total: currentTotal(79.999) })], parts: [fan] },
    paying(20),
    { supplies: [box(1, { total: currentTotal(80) })] },
    paying(11),
  ),
  trial(
    'total',
    'counts a series join on both outputs',
    {
      pedals: one(50, { accepts: listed(18) }),
      supplies: [box(2, { joins: ['series'], total: currentTotal(99.999) })],
      parts: [stack],
    },
    'impossible',
    { supplies: [box(2, { joins: ['series'], total: currentTotal(100) })] },
    paying(19),
  ),
];

export const totalTrials: readonly Trial[] = [...totals, ...startingTotals, ...chainedTotals];
