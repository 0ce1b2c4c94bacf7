/** Trials of the rules that speak of one output and what hangs there. */
import { bankOf, factor, listed, milliamps, policyOf, settingOf, volts } from '../../../support/builders.js';
import { adapter, box, boxOf, fan, flip, one, pairWith, paying, trial, type Trial } from './trial.js';

const { headroom } = policyOf();

/** A pedal with one figure for each of the volts that it accepts. */
const figures = (...all: readonly (readonly [atVolts: number, draw: number])[]) =>
  one(0, {
    accepts: listed(...all.map(([atVolts]) => atVolts)),
    draw: { kind: 'per voltage', microamps: new Map(all.map(([at, draw]) => [volts(at), milliamps(draw)])) },
  });

const range = (from: number, to: number) => ({ accepts: { kind: 'range' as const, from: volts(from), to: volts(to) } });
const outputAt = (atVolts: number, rating = 100, openCircuit?: number) =>
  boxOf([bankOf(1, [settingOf(atVolts, rating, openCircuit)])]);
const alternating = { power: 'AC', polarity: null } as const;

const powerAndVoltage: readonly Trial[] = [
  trial(
    'power',
    'an AC pedal hangs on AC',
    { pedals: one(50, alternating), supplies: [box(1)] },
    'impossible',
    { supplies: [box(1, alternating)] },
    paying(10),
  ),
  trial(
    'power',
    'a DC pedal hangs on DC',
    { pedals: one(), supplies: [box(1, alternating)] },
    'impossible',
    { supplies: [box(1)] },
    paying(10),
  ),
  trial(
    'voltage',
    'volts are among those listed',
    { pedals: one(50, { accepts: listed(12, 18) }), supplies: [box(1)] },
    'impossible',
    { pedals: one(50, { accepts: listed(9, 18) }) },
    paying(10),
  ),
  trial(
    'voltage',
    'a range ends with its highest volts',
    { pedals: one(50, range(9, 12)), supplies: [outputAt(12.001)] },
    'impossible',
    { supplies: [outputAt(12)] },
    paying(10),
  ),
  trial(
    'voltage',
    'a range begins with its lowest volts',
    { pedals: one(50, range(9, 12)), supplies: [outputAt(8.999)] },
    'impossible',
    { supplies: [outputAt(9)] },
    paying(10),
  ),
  trial(
    'voltage',
    'open-circuit volts must be survived',
    { pedals: one(50, { survives: volts(12.999) }), supplies: [outputAt(9, 100, 13)] },
    'impossible',
    { pedals: one(50, { survives: volts(13) }) },
    paying(10),
  ),
  trial(
    'voltage',
    'without a word of its maker a pedal survives what it accepts',
    { pedals: one(50, range(9, 12.999)), supplies: [outputAt(9, 100, 13)] },
    'impossible',
    { pedals: one(50, range(9, 13)) },
    paying(10),
  ),
  trial(
    'voltage',
    'a regulated output does not rise',
    { pedals: one(), supplies: [outputAt(9, 100, 9.001)] },
    'impossible',
    { supplies: [outputAt(9, 100)] },
    paying(10),
  ),
  trial(
    'voltage',
    'volts that are survived are not accepted',
    { pedals: one(50, { survives: volts(12) }), supplies: [outputAt(12)] },
    'impossible',
    { pedals: one(50, { accepts: listed(9, 12), survives: volts(12) }) },
    paying(10),
  ),
];

const alone12 = { headroom: { ...headroom, alone: factor(1.2) } };
const chained2 = { headroom: { ...headroom, chained: factor(2) } };
const strong = outputAt(9, 200);

const currentAndStartup: readonly Trial[] = [
  trial(
    'current',
    'load × alone ≤ rating',
    { pedals: one(100.001), supplies: [outputAt(9, 120)], policy: alone12 },
    'impossible',
    { pedals: one(100) },
    paying(10),
  ),
  trial(
    'current',
    'a guess is multiplied',
    { pedals: one(100, { figure: 'guess' }), supplies: [outputAt(9, 149.999)], policy: { guess: factor(1.5) } },
    'impossible',
    { supplies: [outputAt(9, 150)] },
    paying(10),
  ),
  trial(
    'current',
    'other figures than guesses are not multiplied',
    { pedals: one(100, { figure: 'guess' }), supplies: [outputAt(9, 100)], policy: { guess: factor(1.5) } },
    'impossible',
    { pedals: one(100, { figure: 'manual' }) },
    paying(10),
  ),
  trial(
    'current',
    'the draw is that at the volts of the setting',
    {
      pedals: figures([9, 300], [12, 230.001]),
      supplies: [boxOf([bankOf(1, [settingOf(9, 299), settingOf(12, 230)])])],
    },
    'impossible',
    { pedals: figures([9, 300], [12, 230]) },
    paying(10),
  ),
  trial(
    'current',
    'Σ load × chained ≤ rating',
    { pedals: [...one(60.001), ...pairWith().slice(1)], supplies: [strong], parts: [fan], policy: chained2 },
    paying(20),
    { pedals: [...one(60), ...pairWith().slice(1)] },
    paying(11),
  ),
  trial(
    'current',
    'a guess is multiplied in a chain, too',
    {
      pedals: pairWith({ figure: 'guess' }),
      supplies: [outputAt(9, 99.999)],
      parts: [fan],
      policy: { guess: factor(1.5) },
    },
    paying(20),
    { supplies: [outputAt(9, 100)] },
    paying(11),
  ),
  trial(
    'current',
    'a pedal alone may need more headroom than in company',
    { pedals: one(60), supplies: [box(1)], parts: [fan], policy: { headroom: { ...headroom, alone: factor(2) } } },
    'impossible',
    { pedals: [...one(60), ...pairWith().slice(1)] },
    paying(11),
  ),
  trial(
    'startup',
    'startup ≤ rating, without headroom',
    { pedals: one(50, { startup: milliamps(100.001) }), supplies: [box(1)], policy: alone12 },
    'impossible',
    { pedals: one(50, { startup: milliamps(100) }) },
    paying(10),
  ),
  trial(
    'startup',
    'all startups and other loads ≤ rating',
    { pedals: pairWith({ startup: milliamps(60.001) }), supplies: [box(1)], parts: [fan] },
    paying(20),
    { pedals: pairWith({ startup: milliamps(60) }) },
    paying(11),
  ),
];

const positive = { polarity: 'centre-positive' } as const;
const positivePair = pairWith().map((pedal) => ({ ...pedal, ...positive }));

const polarityAndPlug: readonly Trial[] = [
  trial(
    'polarity',
    'plug and pedal agree',
    { pedals: one(50, positive), supplies: [box(1)] },
    'impossible',
    { supplies: [box(1, positive)] },
    paying(10),
  ),
  trial(
    'polarity',
    'a polarity switch gives both',
    { pedals: pairWith(positive), supplies: [box(2)] },
    'impossible',
    { supplies: [box(2, { polarity: 'either' })] },
    paying(10),
  ),
  trial(
    'polarity',
    'a reversing lead turns it',
    { pedals: one(50, positive), supplies: [box(1)], parts: [fan] },
    'impossible',
    { parts: [flip] },
    paying(14, { parts: 1 }),
  ),
  trial(
    'polarity',
    'two reversing leads turn it back',
    {
      pedals: one(50, { ...positive, inlet: 'jack-3.5' }),
      supplies: [box(1)],
      parts: [adapter('first', 'barrel-2.1', 'clip', true), adapter('second', 'clip', 'jack-3.5', true)],
    },
    'impossible',
    { pedals: one(50, { inlet: 'jack-3.5' }) },
    paying(14, { parts: 2 }),
  ),
  trial(
    'polarity',
    'a reversing chain lead turns all its pedals',
    { pedals: pairWith(), supplies: [box(1)], parts: [{ ...fan, reverses: true }] },
    paying(20),
    { pedals: positivePair },
    paying(11),
  ),
  trial(
    'polarity',
    'a chain hangs on one position of a polarity switch',
    { pedals: pairWith(positive), supplies: [box(1, { polarity: 'either' })], parts: [fan] },
    paying(20),
    { pedals: positivePair },
    paying(11),
  ),
  trial(
    'plug',
    'plug and inlet agree',
    { pedals: one(50, { inlet: 'jack-3.5' }), supplies: [box(1)] },
    'impossible',
    { supplies: [box(1, { plug: 'jack-3.5' })] },
    paying(10),
  ),
  trial(
    'plug',
    'an adapter fits what comes before and gives the inlet',
    { pedals: one(50, { inlet: 'jack-3.5' }), supplies: [box(1)], parts: [adapter('back', 'jack-3.5', 'barrel-2.1')] },
    'impossible',
    { parts: [adapter('there', 'barrel-2.1', 'jack-3.5')] },
    paying(12, { parts: 1 }),
  ),
  trial(
    'plug',
    'two adapters may follow one another, never three',
    {
      pedals: one(50, { inlet: 'jack-3.5' }),
      supplies: [box(1)],
      parts: [adapter('a', 'barrel-2.1', 'clip'), adapter('b', 'clip', 'stud'), adapter('c', 'stud', 'jack-3.5')],
    },
    'impossible',
    { pedals: one(50, { inlet: 'stud' }) },
    paying(14, { parts: 2 }),
  ),
];

export const outputTrials: readonly Trial[] = [...powerAndVoltage, ...currentAndStartup, ...polarityAndPlug];
