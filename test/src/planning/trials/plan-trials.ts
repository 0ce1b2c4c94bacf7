/** Trials of the rules that speak of the whole plan: mains, stock and limits. */
import { bankOf, euros, listed, onMains, pedalOf, settingOf, supplyOf, volts } from '../../../support/builders.js';
import { box, fan, flip, one, pairWith, paying, trial, type Trial } from './trial.js';

const mainsUpTo = (most: number) => onMains(100, most);
const at230 = { mains: [volts(230)] };

const mains: readonly Trial[] = [
  trial(
    'mains',
    "a supply takes the venue's volts",
    { pedals: one(), supplies: [box(1, {}, mainsUpTo(229.999))], policy: at230 },
    'impossible',
    { supplies: [box(1, {}, mainsUpTo(230))] },
    paying(10),
  ),
  trial(
    'mains',
    'a supply that does not say is refused where the venue is known',
    { pedals: one(), supplies: [box(1)], policy: at230 },
    'impossible',
    { policy: {} },
    paying(10),
  ),
  trial(
    'mains',
    'an owned supply is no exception',
    { pedals: one(), supplies: [box(1, {}, mainsUpTo(120))], policy: at230, owned: { box: 1 } },
    'impossible',
    { supplies: [box(1, {}, mainsUpTo(240))] },
    paying(0),
  ),
];

const positive = { polarity: 'centre-positive' } as const;
const positivePair = pairWith().map((pedal) => ({ ...pedal, ...positive }));
const gear = { ...box(1), price: null, stock: 0 };

const stock: readonly Trial[] = [
  trial(
    'stock',
    'no more units than there are',
    { pedals: pairWith(), supplies: [box(1, {}, { stock: 1 })] },
    'impossible',
    { supplies: [box(1, {}, { stock: 2 })] },
    paying(20, { bricks: 2 }),
  ),
  trial(
    'stock',
    'owned units come on top of those in stock',
    { pedals: pairWith(), supplies: [box(1, {}, { stock: 1 })] },
    'impossible',
    { owned: { box: 1 } },
    paying(10, { bricks: 2 }),
  ),
  trial(
    'stock',
    'no more leads than there are',
    { pedals: positivePair, supplies: [box(2)], parts: [{ ...flip, stock: 1 }] },
    'impossible',
    { parts: [{ ...flip, stock: 2 }] },
    paying(18, { parts: 2 }),
  ),
  trial(
    'stock',
    'owned leads come on top of those in stock',
    { pedals: positivePair, supplies: [box(2)], parts: [{ ...flip, stock: 0 }], owned: { flip: 1 } },
    'impossible',
    { owned: { flip: 2 } },
    paying(10, { parts: 2 }),
  ),
  trial(
    'stock',
    'a chain lead is taken once for all its pedals',
    { pedals: pairWith(), supplies: [box(1, {}, { stock: 1 })], parts: [{ ...fan, stock: 0 }] },
    'impossible',
    { parts: [{ ...fan, stock: 1 }] },
    paying(11),
  ),
  trial(
    'stock',
    'gear is not for sale',
    { pedals: pairWith(), supplies: [], gear: { supplies: [gear] }, owned: { box: 1 } },
    'impossible',
    { owned: { box: 2 } },
    paying(0, { bricks: 2 }),
  ),
];

const digitalPair = [pedalOf('echo', 40, { digital: true }), pedalOf('fuzz', 40, { highGain: true })];

const twoModels = [box(1), supplyOf('twelve', 10, [bankOf(1, [settingOf(12, 100)])])];

const limits: readonly Trial[] = [
  trial(
    'limit',
    'the budget is kept to the cent',
    { pedals: pairWith(), supplies: [box(1)], policy: { budget: euros(19.99) } },
    'impossible',
    { policy: { budget: euros(20) } },
    paying(20),
  ),
  trial(
    'limit',
    'what is owned does not count in the budget',
    { pedals: pairWith(), supplies: [box(1)], policy: { budget: euros(10) } },
    'impossible',
    { owned: { box: 1 } },
    paying(10),
  ),
  trial(
    'limit',
    'the noise price does not count in the budget',
    { pedals: digitalPair, supplies: [box(2, { isolated: false })], policy: { budget: euros(9.99) } },
    'impossible',
    { policy: { budget: euros(10), noisePrice: euros(20) } },
    paying(10, { exposed: 1 }),
  ),
  trial(
    'limit',
    'a tight budget buys what the aim alone would not',
    // Two boxes cost 20, one with its noise 10 + 20.
    {
      pedals: digitalPair,
      supplies: [box(2, { isolated: false })],
      policy: { budget: euros(10), noisePrice: euros(20) },
    },
    paying(10, { exposed: 1 }),
    { policy: { budget: euros(20), noisePrice: euros(20) } },
    paying(20, { exposed: 0 }),
  ),
  trial(
    'limit',
    'no more bricks than allowed, owned ones included',
    { pedals: pairWith(), supplies: [box(1)], policy: { bricks: 1 }, owned: { box: 2 } },
    'impossible',
    { policy: { bricks: 2 } },
    paying(0, { bricks: 2 }),
  ),
  trial(
    'limit',
    'bricks of different models count together',
    { pedals: pairWith({ accepts: listed(12) }), supplies: twoModels, policy: { bricks: 1 } },
    'impossible',
    { policy: { bricks: 2 } },
    paying(20),
  ),
  trial(
    'limit',
    'sockets of different models count together',
    { pedals: pairWith({ accepts: listed(12) }), supplies: twoModels, policy: { sockets: 1 } },
    'impossible',
    { policy: { sockets: 2 } },
    paying(20),
  ),
  trial(
    'limit',
    'no more bricks than mains sockets',
    { pedals: pairWith(), supplies: [box(1)], policy: { sockets: 1 } },
    'impossible',
    { policy: { sockets: 2 } },
    paying(20),
  ),
];

export const planTrials: readonly Trial[] = [...mains, ...stock, ...limits];
