import { describe, expect, it } from 'vitest';

import { resolvePurchases } from '../../../../src/planning/compare/asked-supplies.js';
import { readPurchase } from '../../../../src/planning/compare/read-purchase.js';
import { bankOf, settingOf, supplyOf } from '../../../support/builders.js';

describe('a purchase that is typed', () => {
  it.each([
    ['quay-6', [['quay-6', 1]]],
    [
      'quay-6, 2 x dory',
      [
        ['quay-6', 1],
        ['dory', 2],
      ],
    ],
    ['2 × dory', [['dory', 2]]],
    [
      '3×dory,quay-6',
      [
        ['dory', 3],
        ['quay-6', 1],
      ],
    ],
    ['12 X dory', [['dory', 12]]],
    ['2 x   dory', [['dory', 2]]],
    ['999 x dory', [['dory', 999]]],
    ['1 x dory', [['dory', 1]]],
    ['2x-rail', [['2x-rail', 1]]],
    ['2x 2x-rail', [['2x-rail', 2]]],
    ['  Krähe 9 ', [['Krähe 9', 1]]],
  ] as const)('%j is read', (text, expected) => {
    const supplies = expected.map(([id, units]) => ({ id, units }));
    expect(readPurchase(text)).toEqual({ kind: 'purchase', supplies });
  });

  it.each(['', ' ', 'quay-6,', ', quay-6', '2 x ', '0 x dory', '1000 x dory'])('%j is not', (text) => {
    expect(readPurchase(text)).toEqual({ kind: 'unreadable', message: expect.stringMatching(/\.$/) as string });
  });
});

describe('a purchase that cannot be read', () => {
  const messageOf = (text: string) => {
    const read = readPurchase(text);
    return read.kind === 'unreadable' ? read.message : null;
  };

  it('says what stands between two commas, and how many units there can be', () => {
    for (const text of ['', ',quay-6', '2 x']) expect(messageOf(text)).toContain('an id, such as quay-6 or 2 x quay-6');
    for (const text of ['0 x dory', '1000 x dory']) expect(messageOf(text)).toContain('1 to 999 units');
  });
});

describe('what a purchase names', () => {
  const supplies = ['quay-6', 'dory'].map((id) => supplyOf(id, 10, [bankOf(1, [settingOf(9, 100)])]));
  const resolve = (...texts: readonly string[]) =>
    resolvePurchases(
      texts.map((text) => {
        const read = readPurchase(text);
        if (read.kind === 'unreadable') throw new Error(read.message);
        return read.supplies;
      }),
      { supplies },
    );

  it('is counted together where it is named twice', () => {
    expect(resolve('dory, quay-6, 2 x dory', 'quay-6')).toEqual({
      kind: 'purchases',
      purchases: [
        new Map([
          ['dory', 3],
          ['quay-6', 1],
        ]),
        new Map([['quay-6', 1]]),
      ],
    });
  });

  it('is told with the near spelling, once each, where the catalogue does not sell it', () => {
    expect(resolve('dorry, quay-6', 'dorry, lighthouse')).toEqual({
      kind: 'unknown',
      faults: [
        'the catalogue sells no supply "dorry". Did you mean dory?',
        'the catalogue sells no supply "lighthouse". It sells quay-6 and dory.',
      ],
    });
  });
});

describe('a supply that is asked for', () => {
  const supplies = [
    { ...supplyOf('quay-6', 10, [bankOf(1, [settingOf(9, 100)])]), name: 'Quay 6' },
    { ...supplyOf('dory', 10, [bankOf(1, [settingOf(9, 100)])]), name: 'Twin' },
    { ...supplyOf('barge', 10, [bankOf(1, [settingOf(9, 100)])]), name: 'Twin' },
  ];

  it('may be called by its name where no other has it, beside its id', () => {
    const asked = [
      [
        { id: 'quay 6', units: 2 },
        { id: 'quay-6', units: 1 },
      ],
    ];
    expect(resolvePurchases(asked, { supplies })).toEqual({ kind: 'purchases', purchases: [new Map([['quay-6', 3]])] });
  });

  it('is not told by a name that two have', () => {
    expect(resolvePurchases([[{ id: 'Twin', units: 1 }]], { supplies })).toEqual({
      kind: 'unknown',
      faults: ['"Twin" is the name of 2 things. Write the id of the one that is meant: dory or barge.'],
    });
  });
});
