import { describe, expect, it } from 'vitest';

import { boardText, catalogueWithSupplies, expectFault, readOf } from '../texts.js';

const out =
  'isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 500}]';
const inlet = 'inlet: {power: DC, plug: barrel-2.1, polarity: centre-negative, volts: 9, milliamps: 300}';
const catalogue = catalogueWithSupplies(
  `{id: quay, name: Quay, price: 5, regulated: true, banks: [{outputs: 2, ${out}}]}`,
  `{id: lock, name: Lock 4, price: 5, regulated: true, ${inlet}, banks: [{outputs: 1, ${out}}]}`,
);
const board = (wiring: string, owned = '[quay, lock]') =>
  boardText({ owned: `owned: {supplies: ${owned}}`, wiring: `wiring: [${wiring}]` });
const read = (wiring: string, owned?: string) => readOf(board(wiring, owned), catalogue).board;

describe('the inlet of a fed supply, as it is plugged today', () => {
  it('stands beside the pedals, with the unit that it is', () => {
    const { wiring, inlets } = read('{inlet: Lock 4, supply: quay, output: 2, volts: 9, lead: 3}');
    expect(wiring).toEqual([]);
    expect(inlets).toEqual([
      {
        pedal: 'inlet of lock 1',
        supply: 'quay',
        unit: 1,
        outputs: [2],
        millivolts: 9000,
        join: null,
        chain: null,
        adapters: [],
        lead: 3,
        inletOf: { supply: 'lock', unit: 1 },
      },
    ]);
  });

  it('says which unit it is where several are owned', () => {
    const wiring = '{inlet: lock, inletUnit: 2, supply: quay, output: 2, volts: 9}';
    expect(read(wiring, '[quay, lock, lock]').inlets[0]?.inletOf).toEqual({ supply: 'lock', unit: 2 });
  });

  it.each([
    [
      'a supply without one',
      '{inlet: ‸quay, supply: quay, output: 2, volts: 9}',
      'inlet',
      'has no inlet',
      '[quay, lock]',
    ],
    ['what is not described', '{inlet: ‸dory, supply: quay, output: 2, volts: 9}', 'inlet', 'dory', '[quay, lock]'],
    ['what is not owned', '{inlet: ‸lock, supply: quay, output: 2, volts: 9}', 'inlet', 'no unit is owned', '[quay]'],
    [
      'any of several',
      '‸{inlet: lock, supply: quay, output: 2, volts: 9}',
      'inletUnit',
      '2 units',
      '[quay, lock, lock]',
    ],
    [
      'a unit that is not owned',
      '{inlet: lock, inletUnit: ‸2, supply: quay, output: 2, volts: 9}',
      'inletUnit',
      'only 1 unit',
      '[quay, lock]',
    ],
    [
      'a pedal at once',
      '{pedal: echo, inlet: ‸lock, supply: quay, output: 2, volts: 9}',
      'inlet',
      'beside `pedal`',
      '[quay, lock]',
    ],
    ['nothing', '‸{supply: quay, output: 2, volts: 9}', 'pedal', 'missing', '[quay, lock]'],
  ])('is refused as that of %s', (_, wiring, key, words, owned) => {
    expectFault({ board: board(wiring, owned), catalogue }, `wiring[0].${key}`, [words], '');
  });

  it('is plugged once', () => {
    const twice = '{inlet: lock, supply: quay, output: 1, volts: 9}, {inlet: ‸lock, supply: quay, output: 2, volts: 9}';
    expectFault({ board: board(twice), catalogue }, 'wiring[1].inlet', 'an inlet has one feed', '');
  });
});
