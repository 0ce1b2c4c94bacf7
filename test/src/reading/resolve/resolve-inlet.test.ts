import { describe, expect, it } from 'vitest';

import { boardText, catalogueWithSupplies, expectFault, readOf } from '../texts.js';

const bank =
  '{outputs: 1, isolated: true, power: DC, plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 100}]}';
const supply = (fields: string) => ({
  catalogue: catalogueWithSupplies(`{name: Lock, price: 5, regulated: true, ${fields}, banks: [${bank}]}`),
});
const sourceOf = (fields: string) => readOf(boardText(), supply(fields).catalogue).catalogue?.supplies[0]?.source;

describe('an inlet', () => {
  it('makes a fed supply, with exact figures', () => {
    expect(
      sourceOf('inlet: {power: DC, plug: usb-a, polarity: centre-positive, volts: 5, milliamps: 900.5, startup: 1200}'),
    ).toEqual({
      kind: 'fed',
      inlet: {
        power: 'DC',
        plug: 'usb-a',
        polarity: 'centre-positive',
        accepts: { kind: 'listed', millivolts: [5000] },
        microamps: 900_500,
        startup: 1_200_000,
      },
    });
  });

  it.each([
    ['several volts', '[9, 12]', { kind: 'listed', millivolts: [9000, 12_000] }],
    ['a range', '{from: 9, to: 18}', { kind: 'range', from: 9000, to: 18_000 }],
  ])('may take %s', (_, volts, accepts) => {
    expect(sourceOf(`inlet: {power: AC, plug: x, volts: ${volts}, milliamps: 1}`)).toMatchObject({
      inlet: { accepts, polarity: null, startup: null },
    });
  });

  it.each([
    [
      'a polarity where DC has none',
      'inlet: ‸{power: DC, plug: x, volts: 9, milliamps: 1}',
      'inlet.polarity',
      'no default',
    ],
    [
      'a polarity where AC has one',
      'inlet: {power: AC, plug: x, polarity: ‸centre-negative, volts: 9, milliamps: 1}',
      'inlet.polarity',
      'AC',
    ],
    [
      'volts that stand twice',
      'inlet: {power: AC, plug: x, volts: [9, ‸9], milliamps: 1}',
      'inlet.volts[1]',
      'second time',
    ],
    [
      'a range that ends before it begins',
      'inlet: {power: AC, plug: x, volts: ‸{from: 9, to: 8}, milliamps: 1}',
      'inlet.volts',
      'from',
    ],
    [
      'mains beside it',
      'inlet: {power: AC, plug: x, volts: 9, milliamps: 1}, mains: ‸230',
      'mains',
      'stands beside `inlet`',
    ],
    [
      'a charge beside it',
      'inlet: {power: AC, plug: x, volts: 9, milliamps: 1}, charge: ‸{wattHours: 9}',
      'charge',
      'stands beside `inlet`',
    ],
  ])('is refused with %s', (_, fields, key, words) => {
    expectFault(supply(fields), `supplies[0].${key}`, [words], '');
  });
});
