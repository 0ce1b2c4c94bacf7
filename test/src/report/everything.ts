import {
  microamps,
  millivolts,
  milliwatts,
  minorUnits,
  partId,
  supplyId,
  pedalId,
} from '../../../src/domain/quantities.js';
import { scoreWith } from '../../support/builders.js';
import { bankFrom, boardOf, catalogueOf, feedOf, partOf, pedalOf, settingOf, supplyOf, planOf } from './samples.js';

const milliamps = (value: number) => ({ kind: 'flat', microamps: microamps(value * 1000) }) as const;
const at = (volts: number) => millivolts(volts * 1000);

/**
 * One board with everything a plan can hold: a chain with a reverser on a tail, a series and a parallel join, an AC feed, an
 * unregulated output, a polarity switch, an exposed pedal, guesses, assumed fields of a supply, two units of one supply.
 * `named` gives every thing its name.
 */
export function everything(named: (id: string) => string) {
  const pedal = (id: string, fields: Parameters<typeof pedalOf>[1] = {}) => pedalOf(id, { name: named(id), ...fields });
  const pedals = [
    pedal('chorus', { draw: milliamps(30), startup: microamps(260_000), assumed: { polarity: 'centre-negative' } }),
    pedal('old-wah', { draw: milliamps(5), polarity: 'centre-positive' }),
    pedal('looper', { draw: milliamps(60), digital: true, figure: 'guess' }),
    pedal('lead-drive', { draw: milliamps(12), highGain: true }),
    pedal('big-preamp', { draw: milliamps(100), accepts: { kind: 'range', from: at(16), to: at(24) } }),
    pedal('granular', { draw: milliamps(700), digital: true }),
    pedal('tube-delay', { draw: milliamps(500), power: 'AC', polarity: null, inlet: 'barrel-2.5' }),
    pedal('survivor', { draw: milliamps(20), survives: at(16), figure: 'guess' }),
    pedal('synth', {
      draw: {
        kind: 'per voltage',
        microamps: new Map([
          [at(9), microamps(90_500)],
          [at(12), microamps(70_000)],
        ]),
      },
      accepts: { kind: 'listed', millivolts: [at(9), at(12)] },
      polarity: 'centre-positive',
      inlet: 'jack-3.5',
      figure: 'guess',
    }),
    pedal('nowhere', { draw: milliamps(2000), accepts: { kind: 'listed', millivolts: [at(24)] } }),
  ];
  const board = boardOf(pedals, {
    name: named('board'),
    owned: { supplies: new Map([[supplyId('shared'), 1]]), parts: new Map([[partId('flip'), 1]]) },
  });
  const switchable = { settings: [settingOf(9, 500), settingOf(12, 400)], joins: ['series', 'parallel'] } as const;
  const catalogue = catalogueOf(
    [
      supplyOf(
        'shared',
        [
          bankFrom(1, 5, {
            isolated: false,
            settings: [settingOf(9, 300)],
            total: { kind: 'current', microamps: microamps(1_000_000) },
          }),
        ],
        { name: named('shared') },
      ),
      supplyOf(
        'joiner',
        [bankFrom(1, 4, switchable), bankFrom(5, 6, { polarity: 'either', settings: [settingOf(9, 200)] })],
        {
          name: named('joiner'),
          total: { kind: 'power', milliwatts: milliwatts(24_500) },
        },
      ),
      supplyOf('ac', [bankFrom(1, 1, { power: 'AC', polarity: null, settings: [settingOf(9, 1000)] })], {
        name: named('ac'),
      }),
      supplyOf('rough', [bankFrom(1, 1, { settings: [settingOf(9, 200, 13.5)] })], {
        name: named('rough'),
        assumed: { polarity: 'centre-negative', plug: 'barrel-2.1' },
      }),
    ],
    [
      partOf('fan', { kind: 'chain', tails: 5 }, { name: named('fan') }),
      partOf('flip', { kind: 'adapter' }, { name: named('flip'), reverses: true }),
      partOf('wide', { kind: 'adapter' }, { name: named('wide'), gives: 'barrel-2.5' }),
      partOf('mini', { kind: 'adapter' }, { name: named('mini'), gives: 'jack-3.5' }),
      partOf('stack', { kind: 'join', mode: 'series' }, { name: named('stack') }),
      partOf('pair', { kind: 'join', mode: 'parallel' }, { name: named('pair') }),
    ],
  );
  const chained = { chain: partId('fan') };
  const wiring = planOf(
    board,
    catalogue,
    [
      feedOf('chorus', 'shared', 2, chained),
      feedOf('old-wah', 'shared', 2, { ...chained, polarity: 'centre-positive', adapters: [partId('flip')] }),
      feedOf('looper', 'shared', 4),
      feedOf('lead-drive', 'shared', 5),
      feedOf('big-preamp', 'joiner', 1, {
        outputs: [1, 2],
        settings: [at(9), at(9)],
        join: { mode: 'series', part: partId('stack') },
      }),
      feedOf('granular', 'joiner', 3, {
        outputs: [3, 4],
        settings: [at(9), at(9)],
        join: { mode: 'parallel', part: partId('pair') },
      }),
      feedOf('tube-delay', 'ac', 1, { polarity: null, adapters: [partId('wide')] }),
      feedOf('survivor', 'rough', 1),
      feedOf('synth', 'joiner', 6, {
        unit: 2,
        polarity: 'centre-positive',
        adapters: [partId('flip'), partId('mini')],
      }),
    ],
    {
      unpowered: [pedalId('nowhere')],
      exposed: [pedalId('lead-drive')],
      buy: {
        supplies: [
          { id: supplyId('joiner'), units: 2, price: minorUnits(5000) },
          { id: supplyId('ac'), units: 1, price: minorUnits(5000) },
          { id: supplyId('rough'), units: 1, price: minorUnits(5000) },
        ],
        parts: ['fan', 'flip', 'wide', 'mini', 'stack', 'pair'].map((id) => ({
          id: partId(id),
          units: 1,
          price: minorUnits(400),
        })),
      },
      score: scoreWith({ unpowered: 1, money: minorUnits(22_400), exposed: 1, bricks: 5, parts: 7 }),
    },
  );
  const reasons = [
    {
      kind: 'pedal',
      pedal: pedalId('nowhere'),
      refusals: [
        {
          rule: 'voltage',
          at: { supply: supplyId('joiner'), outputs: [1, 2] },
          message: `needs 24 V; ${named('joiner')} gives 9, 12, 18 or 21 V`,
        },
        { rule: 'current', at: null, message: 'needs 2000 mA × 1.2 = 2400 mA; nothing at 24 V gives that' },
      ],
    },
    {
      kind: 'together',
      pedals: [pedalId('chorus'), pedalId('looper')],
      smallest: true,
      message: 'one 9 V output is left for both',
    },
    { kind: 'limit', limit: 'budget', allowed: 25_000, needed: 26_200, message: 'the cheapest plan costs 262.00 EUR' },
    { kind: 'limit', limit: 'sockets', allowed: 4, needed: 5, message: 'every supply takes one socket' },
    {
      kind: 'unowned',
      parts: [partId('fan')],
      message: 'plugged today, but not all there: 1 × Fan (0 owned, 0 for sale)',
    },
  ] as const;
  return { board, catalogue, wiring, reasons };
}
