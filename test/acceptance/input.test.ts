import { describe, expect, test } from 'vitest';

import { asking, messagesAbout } from './ask.js';

const boardLines = [
  'board: B',
  'currency: EUR',
  'assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative}',
  'policy:',
  '  headroom: {alone: 1.2, chained: 2, supply: 1.2}',
  '  guess: 1.5',
  '  chains: allow',
  '  noisePrice: 20',
  'pedals:',
  '  - name: Echo',
  '    volts: 9',
  '    milliamps: 180',
  '  - {name: Fuzz, volts: 9, milliamps: 4}',
];
const shopLines = [
  'catalogue: C',
  'currency: EUR',
  'supplies:',
  '  - id: quay',
  '    name: Quay',
  '    price: 119.00',
  '    regulated: true',
  '    banks:',
  '      - outputs: 2',
  '        isolated: true',
  '        power: DC',
  '        plug: barrel-2.1',
  '        polarity: centre-negative',
  '        settings: [{volts: 9, milliamps: 400}]',
  'parts:',
  '  - {id: flip, name: Flip, price: 4, fits: barrel-2.1, gives: barrel-2.1, reverses: true}',
];

type Edit = { readonly file: 'board' | 'shop'; readonly line: number; readonly text: string };
const board = (line: number, text: string): Edit => ({ file: 'board', line, text });
const shop = (line: number, text: string): Edit => ({ file: 'shop', line, text });

/** The two texts with one line replaced; a text with line breaks in it replaces one line by several. */
function edited({ file, line, text }: Edit): readonly [string, string] {
  const change = (lines: readonly string[], name: string) =>
    `${lines.map((old, at) => (name === file && at === line - 1 ? text : old)).join('\n')}\n`;
  return [change(boardLines, 'board'), change(shopLines, 'shop')];
}

test('the texts as they stand are fine', () => {
  expect(messagesAbout(boardLines.join('\n'), shopLines.join('\n'))).toEqual([]);
});

describe('what is wrong is named with its file, line, column and key, and the near spelling', () => {
  const faults: readonly (readonly [string, Edit, string, RegExp])[] = [
    ['unknown key of a pedal', board(12, '    milliamp: 180'), 'board.yaml:12:5', /milliamp\b.*milliamps/],
    [
      'unknown key in braces',
      board(13, '  - {name: Fuzz, volts: 9, milliamps: 4, digtal: true}'),
      'board.yaml:13:42',
      /digtal.*digital/,
    ],
    ['unknown key of the policy', board(8, '  noiseprice: 20'), 'board.yaml:8:3', /noiseprice.*noisePrice/],
    [
      'unknown key of the headroom',
      board(5, '  headroom: {alone: 1.2, chain: 2, chained: 2, supply: 1.2}'),
      'board.yaml:5:26',
      /chain\b/,
    ],
    ['unknown key of the board', board(1, 'board: B\npedal: []'), 'board.yaml:2:1', /pedal\b/],
    [
      'unknown key of the assumptions',
      board(3, 'assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1, grund: negative}'),
      'board.yaml:3:67',
      /grund.*ground/,
    ],
    ['unknown key of a supply', shop(6, '    prise: 119.00'), 'shop.yaml:6:5', /prise.*price/],
    ['unknown key of a bank', shop(10, '        isolted: true'), 'shop.yaml:10:9', /isolted.*isolated/],
    [
      'unknown key of a setting',
      shop(14, '        settings: [{volts: 9, miliamps: 400}]'),
      'shop.yaml:14:31',
      /miliamps.*milliamps/,
    ],
    [
      'unknown key of a part',
      shop(16, '  - {id: flip, name: Flip, price: 4, fits: barrel-2.1, gives: barrel-2.1, reverse: true}'),
      'shop.yaml:16:75',
      /reverse\b.*reverses/,
    ],
    ['milliamps with a unit', board(12, '    milliamps: 180mA'), 'board.yaml:12:16', /milliamps.*180mA/],
    ['volts with a unit', board(11, '    volts: 9V'), 'board.yaml:11:12', /volts.*9V/],
    ['volts in a list with a unit', board(11, '    volts: [9, 18 V]'), 'board.yaml:11:16', /volts.*18 V/],
    ['a price with a currency', shop(6, '    price: 119.00 EUR'), 'shop.yaml:6:12', /price.*119\.00 EUR/],
    ['milliamps below zero', board(12, '    milliamps: -180'), 'board.yaml:12:16', /milliamps/],
    ['four decimals of a milliamp', board(12, '    milliamps: 180.0001'), 'board.yaml:12:16', /milliamps/],
    ['four decimals of a volt', board(11, '    volts: 9.0001'), 'board.yaml:11:12', /volts/],
    ['three decimals of a euro', shop(6, '    price: 119.001'), 'shop.yaml:6:12', /price.*decimals/],
    [
      'a headroom below 1',
      board(5, '  headroom: {alone: 0.999, chained: 2, supply: 1.2}'),
      'board.yaml:5:21',
      /headroom\.alone/,
    ],
    ['a headroom that is left out', board(5, '  headroom: {alone: 1.2, chained: 2}'), 'board.yaml:5:', /supply/],
    ['a word that is none of those allowed', board(7, '  chains: allowed'), 'board.yaml:7:11', /chains.*allow\b/],
    ['power in small letters', board(12, '    milliamps: 180\n    power: dc'), 'board.yaml:13:12', /power.*DC/],
    [
      'the other spelling of centre',
      board(12, '    milliamps: 180\n    polarity: center-negative'),
      'board.yaml:13:15',
      /polarity.*centre-negative/,
    ],
    ['a key twice', board(12, '    milliamps: 180\n    milliamps: 4'), 'board.yaml:13:5', /milliamps/],
    ['a pedal twice', board(13, '  - {name: Echo, volts: 9, milliamps: 4}'), 'board.yaml:13:12', /echo/],
    ['a pedal id twice', board(13, '  - {name: Fuzz, id: echo, volts: 9, milliamps: 4}'), 'board.yaml:13:22', /echo/],
    [
      'a part twice',
      shop(16, '  - {id: a, name: A, price: 4, fits: x, gives: y}\n  - {id: a, name: B, price: 4, fits: x, gives: y}'),
      'shop.yaml:17:10',
      /"a"/,
    ],
    ['no currency that exists', board(2, 'currency: EUX'), 'board.yaml:2:11', /currency.*EUX/],
    ['two currencies', shop(2, 'currency: USD'), 'shop.yaml:2:11', /currency.*USD.*EUR/],
    [
      'an owned supply that nobody describes',
      board(13, '  - {name: Fuzz, volts: 9, milliamps: 4}\nowned: {supplies: [quai]}'),
      'board.yaml:14:20',
      /quai.*quay/,
    ],
    [
      'an owned part that nobody describes',
      board(13, '  - {name: Fuzz, volts: 9, milliamps: 4}\nowned: {parts: {flop: 1}}'),
      'board.yaml:14:17',
      /flop.*flip/,
    ],
    [
      'preferred volts that are not accepted',
      board(11, '    volts: [9, 12]\n    prefers: 18'),
      'board.yaml:12:14',
      /prefers/,
    ],
    [
      'several settings without a switch',
      shop(14, '        settings: [{volts: 9, milliamps: 400}, {volts: 12, milliamps: 300}]'),
      'shop.yaml:',
      /switch/,
    ],
    ['a DC supply that does not say whether it is regulated', shop(7, '    stock: 3'), 'shop.yaml:', /regulated/],
    [
      'an unregulated supply without open-circuit volts',
      shop(7, '    regulated: false'),
      'shop.yaml:14:',
      /openCircuitVolts/,
    ],
    [
      'a pedal without a ground, and none assumed',
      board(3, 'assume: {power: DC, polarity: centre-negative, inlet: barrel-2.1}'),
      'board.yaml:',
      /ground/,
    ],
    [
      'a pedal without a polarity, and none assumed',
      board(3, 'assume: {power: DC, inlet: barrel-2.1, ground: negative}'),
      'board.yaml:',
      /polarity/,
    ],
    ['a bank that does not say whether it is isolated', shop(10, '        joins: []'), 'shop.yaml:9:', /isolated/],
    ['a bank without a polarity, and none assumed', shop(13, '        joins: []'), 'shop.yaml:9:', /polarity/],
    ['a bank without a plug, and none assumed', shop(12, '        joins: []'), 'shop.yaml:9:', /plug/],
    ['a supply without a price', shop(6, '    stock: 3'), 'shop.yaml:4:', /price/],
    [
      'a total in milliamps and watts',
      shop(7, '    regulated: true\n    total: {milliamps: 100, watts: 1}'),
      'shop.yaml:8:',
      /total/,
    ],
    ['half a unit in stock', shop(7, '    regulated: true\n    stock: 1.5'), 'shop.yaml:8:12', /stock/],
    [
      'an AC pedal with a polarity',
      board(12, '    milliamps: 180\n    power: AC\n    polarity: centre-negative'),
      'board.yaml:14:',
      /polarity/,
    ],
    [
      'gear that leaves to nobody what it is',
      board(
        13,
        '  - {name: Fuzz, volts: 9, milliamps: 4}\ngear: {supplies: [{id: g, name: G, banks: [{outputs: 1, isolated: true, power: DC, plug: x, polarity: centre-negative, settings: [{volts: 9, milliamps: 1}]}]}]}',
      ),
      'board.yaml:14:',
      /regulated/,
    ],
    ['what is no YAML', board(5, '  headroom: {alone: 1.2, chained: 2'), 'board.yaml:', /YAML/],
  ];

  test.each(faults)('%s', (_, edit, place, words) => {
    const messages = messagesAbout(...edited(edit));
    expect(messages).not.toEqual([]);
    expect(
      messages.filter((message) => message.startsWith(place) && words.test(message.slice(place.length))),
    ).not.toEqual([]);
  });
});

describe('what is fine is read', () => {
  const ask = asking();

  test.each([
    ['Windows line ends', edited(board(1, 'board: B')).map((text) => text.replaceAll('\n', '\r\n'))],
    ['a byte order mark', edited(board(1, 'board: B')).map((text) => `\uFEFF${text}`)],
    ['comments and empty lines', edited(board(1, '# the board\n\nboard: B # its name\n'))],
    ['a document mark', edited(board(1, '---\nboard: B'))],
    ['a policy that leaves out what is optional', edited(board(8, ''))],
  ] as const)('%s', async (_, [boardText = '', shopText = '']) => {
    const found = await ask(boardText, shopText);
    expect(found.score).toMatchObject({ money: '119.00', bricks: 1 });
  });

  test('an empty shelf, when all that is needed is owned', async () => {
    const gear =
      'gear: {supplies: [{id: loft, name: Loft, regulated: true, banks: [{outputs: 2, isolated: true, power: DC, ' +
      'plug: barrel-2.1, polarity: centre-negative, settings: [{volts: 9, milliamps: 400}]}]}]}';
    const text = [...boardLines, gear, 'owned: {supplies: [loft]}', ''].join('\n');
    const found = await ask(text, 'catalogue: C\ncurrency: EUR\nsupplies: []\n');
    expect(found.score).toMatchObject({ money: '0.00', bricks: 1 });
  });
});
