import { describe, expect, test } from 'vitest';

import { ask, messagesAbout } from './ask.js';

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
    ['unknown key of a bank', shop(10, '        isolted: true'), 'shop.yaml:10:9', /isolted.*isolated/],
    ['milliamps with a unit', board(12, '    milliamps: 180mA'), 'board.yaml:12:16', /milliamps.*180mA/],
    ['volts in a list with a unit', board(11, '    volts: [9, 18 V]'), 'board.yaml:11:16', /volts.*18 V/],
    ['a headroom that is left out', board(5, '  headroom: {alone: 1.2, chained: 2}'), 'board.yaml:5:', /supply/],
    ['a key twice', board(12, '    milliamps: 180\n    milliamps: 4'), 'board.yaml:13:5', /milliamps/],
    ['a pedal twice', board(13, '  - {name: Echo, volts: 9, milliamps: 4}'), 'board.yaml:13:12', /echo/],
    ['two currencies', shop(2, 'currency: USD'), 'shop.yaml:2:11', /currency.*USD.*EUR/],
    [
      'an owned supply that nobody describes',
      board(13, '  - {name: Fuzz, volts: 9, milliamps: 4}\nowned: {supplies: [quai]}'),
      'board.yaml:14:20',
      /quai.*quay/,
    ],
    [
      'several settings without a switch',
      shop(14, '        settings: [{volts: 9, milliamps: 400}, {volts: 12, milliamps: 300}]'),
      'shop.yaml:',
      /switch/,
    ],
    [
      'a pedal without a polarity, and none assumed',
      board(3, 'assume: {power: DC, inlet: barrel-2.1, ground: negative}'),
      'board.yaml:',
      /polarity/,
    ],
    ['a bank that does not say whether it is isolated', shop(10, '        joins: []'), 'shop.yaml:9:', /isolated/],
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
