/** Trials of the rules that speak of one supply unit: its settings, grounds, chains and joins; its totals are in `total-trials.ts`. */
import type { JoinMode } from '../../../../src/domain/supply.js';
import { bankOf, listed, partOf, pedalOf, settingOf } from '../../../support/builders.js';
import { adapter, box, boxOf, fan, one, pairWith, paying, stack, trial, twin, type Trial } from './trial.js';
import { totalTrials } from './total-trials.js';

const nine = [settingOf(9, 100)];
const nineAndTwelve = [settingOf(9, 100), settingOf(12, 100)];

const settings: readonly Trial[] = [
  trial(
    'setting',
    'an output gives one setting',
    { pedals: pairWith({ accepts: listed(12) }), supplies: [boxOf([bankOf(1, nineAndTwelve)])], parts: [fan] },
    paying(20),
    { pedals: pairWith({ accepts: listed(9, 12) }) },
    paying(11),
  ),
  trial(
    'setting',
    'a bank that is switched together gives one setting to all its outputs',
    {
      pedals: pairWith({ accepts: listed(12) }),
      supplies: [boxOf([bankOf(2, nineAndTwelve, { switching: 'together' })])],
    },
    paying(20),
    { supplies: [boxOf([bankOf(2, nineAndTwelve, { switching: 'each' })])] },
    paying(10),
  ),
];

const positive = { ground: 'positive' } as const;
const common = { isolated: false };

const grounds: readonly Trial[] = [
  trial(
    'ground',
    'positive and negative ground are kept apart on a common ground',
    { pedals: pairWith(positive), supplies: [box(2, common)] },
    paying(20),
    { supplies: [box(2)] },
    paying(10),
  ),
  trial(
    'ground',
    'the common ground spans all banks',
    { pedals: pairWith(positive), supplies: [boxOf([bankOf(1, nine, common), bankOf(1, nine, common)])] },
    paying(20),
    { supplies: [boxOf([bankOf(1, nine, common), bankOf(1, nine)])] },
    paying(10),
  ),
  trial(
    'ground',
    'a chain has one ground',
    { pedals: pairWith(positive), supplies: [box(1)], parts: [fan] },
    paying(20),
    { pedals: pairWith().map((pedal) => ({ ...pedal, ...positive })) },
    paying(11),
  ),
];

const three = [...pairWith(), pedalOf('three', 10)];
const alternating = { power: 'AC', polarity: null } as const;

const chains: readonly Trial[] = [
  trial(
    'chain',
    'a pedal that wants an output of its own gets one',
    { pedals: pairWith({ alone: true }), supplies: [box(1)], parts: [fan] },
    paying(20),
    { pedals: pairWith() },
    paying(11, { bricks: 1, parts: 1 }),
  ),
  trial(
    'chain',
    'AC is not chained',
    {
      pedals: pairWith().map((pedal) => ({ ...pedal, ...alternating })),
      supplies: [box(1, alternating)],
      parts: [fan],
    },
    paying(20),
    { pedals: pairWith(), supplies: [box(1)] },
    paying(11),
  ),
  trial(
    'chain',
    'every pedal takes a tail',
    { pedals: three, supplies: [box(1)], parts: [partOf('fan', 1, { kind: 'chain', tails: 2 })] },
    paying(21),
    { parts: [partOf('fan', 1, { kind: 'chain', tails: 3 })] },
    paying(11),
  ),
  trial(
    'chain',
    'the player may want none',
    { pedals: pairWith(), supplies: [box(1)], parts: [fan], policy: { chains: 'never' } },
    paying(20),
    { policy: { chains: 'allow' } },
    paying(11),
  ),
  trial(
    'chain',
    'a chain lead fits the plug of the output',
    { pedals: pairWith(), supplies: [box(1)], parts: [{ ...fan, fits: 'jack-3.5' }] },
    paying(20),
    { parts: [fan] },
    paying(11),
  ),
  trial(
    'chain',
    'a pedal alone uses no chain lead, not even as an adapter',
    { pedals: one(40, { inlet: 'jack-3.5' }), supplies: [box(1)], parts: [{ ...fan, gives: 'jack-3.5' }] },
    'impossible',
    { pedals: pairWith().map((pedal) => ({ ...pedal, inlet: 'jack-3.5' })) },
    paying(11),
  ),
  trial(
    'chain',
    'the tails take adapters of their own',
    { pedals: pairWith({ inlet: 'jack-3.5' }), supplies: [box(1)], parts: [fan] },
    'impossible',
    { parts: [fan, adapter('mini', 'barrel-2.1', 'jack-3.5')] },
    paying(13, { parts: 2 }),
  ),
];

const high = one(100, { accepts: listed(18) });
const joinable = (modes: readonly JoinMode[], more: Parameters<typeof bankOf>[2] = {}) =>
  box(2, { joins: modes, ...more });
/** Two banks of one output each that may be joined in both ways, the second changed as given. */
const twoBanks = (change: Parameters<typeof bankOf>[2] = {}) =>
  boxOf([
    bankOf(1, nine, { joins: ['series', 'parallel'] }),
    bankOf(1, nine, { joins: ['series', 'parallel'], ...change }),
  ]);

const joins: readonly Trial[] = [
  trial(
    'join',
    'the maker allows outputs in series',
    { pedals: high, supplies: [joinable(['parallel'])], parts: [stack, twin] },
    'impossible',
    { supplies: [joinable(['series'])] },
    paying(19, { parts: 1, bricks: 1 }),
  ),
  trial(
    'join',
    'the maker allows outputs in parallel',
    { pedals: one(200), supplies: [joinable(['series'])], parts: [stack, twin] },
    'impossible',
    { supplies: [joinable(['parallel'])] },
    paying(19, { parts: 1, bricks: 1 }),
  ),
  trial(
    'join',
    'the right lead is there',
    { pedals: high, supplies: [joinable(['series', 'parallel'])], parts: [twin] },
    'impossible',
    { parts: [stack] },
    paying(19),
  ),
  trial(
    'join',
    'joined outputs are isolated',
    { pedals: high, supplies: [joinable(['series'], { isolated: false })], parts: [stack] },
    'impossible',
    { supplies: [joinable(['series'])] },
    paying(19),
  ),
  trial(
    'join',
    'joined outputs belong to one unit',
    { pedals: high, supplies: [box(1, { joins: ['series'] })], parts: [stack] },
    'impossible',
    { supplies: [box(2, { joins: ['series'] })] },
    paying(19),
  ),
  trial(
    'join',
    'three outputs of a unit make one pair',
    {
      pedals: [...high, { ...pedalOf('two', 100), accepts: listed(18) }],
      supplies: [box(3, { joins: ['series'] })],
      parts: [stack],
    },
    paying(38),
    { supplies: [box(4, { joins: ['series'] })] },
    paying(28),
  ),
  trial(
    'join',
    'the smaller rating holds in series',
    { pedals: high, supplies: [twoBanks({ settings: [settingOf(9, 99.999)] })], parts: [stack] },
    'impossible',
    { supplies: [twoBanks({ settings: [settingOf(9, 100)] })] },
    paying(19),
  ),
  trial(
    'join',
    'the ratings add in parallel',
    { pedals: one(150), supplies: [twoBanks({ settings: [settingOf(9, 49.999)] })], parts: [twin] },
    'impossible',
    { supplies: [twoBanks({ settings: [settingOf(9, 50)] })] },
    paying(19),
  ),
  trial(
    'join',
    'parallel outputs stand at the same volts',
    {
      pedals: one(150, { accepts: listed(9, 12) }),
      supplies: [twoBanks({ settings: [settingOf(12, 100)] })],
      parts: [twin],
    },
    'impossible',
    { supplies: [twoBanks({ settings: nineAndTwelve })] },
    paying(19),
  ),
  trial(
    'join',
    'two banks agree in polarity',
    { pedals: high, supplies: [twoBanks({ polarity: 'centre-positive' })], parts: [stack] },
    'impossible',
    { supplies: [twoBanks({ polarity: 'either' })] },
    paying(19),
  ),
  trial(
    'join',
    'two banks agree in their plugs',
    { pedals: high, supplies: [twoBanks({ plug: 'jack-3.5' })], parts: [stack] },
    'impossible',
    { supplies: [twoBanks()] },
    paying(19),
  ),
  trial(
    'join',
    'joined outputs feed one pedal',
    {
      pedals: pairWith().map((pedal) => ({ ...pedal, accepts: listed(18) })),
      supplies: [joinable(['series'])],
      parts: [stack, fan],
    },
    paying(38),
    { supplies: [box(1, { settings: [settingOf(18, 100)] })] },
    paying(11),
  ),
];

export const unitTrials: readonly Trial[] = [...totalTrials, ...settings, ...grounds, ...chains, ...joins];
