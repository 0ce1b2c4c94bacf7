import { describe, expect, test } from 'vitest';

import {
  boardFile,
  boardfeed,
  complaints,
  fixture,
  marramStreet,
  printedObject,
  scratchFiles,
  shopFile,
  tideway,
} from '../command.js';

const scratch = scratchFiles();
const firstBoard = fixture('boards/first-board.yaml');

/** Two pedals that only a chain lead brings onto the one output there is: nothing that is found at first sight. */
const common = {
  currency: 'EUR',
  assume: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
  policy: { headroom: { alone: 1, chained: 1, supply: 1 }, guess: 1, chains: 'allow', noisePrice: 0 },
};
const pairBoard = {
  ...common,
  board: 'Pair',
  pedals: [
    { name: 'One', volts: 9, milliamps: 10, figure: 'label' },
    { name: 'Two', volts: 9, milliamps: 20, figure: 'label' },
  ],
};
const barrels = { fits: 'barrel-2.1', gives: 'barrel-2.1' };
const bank = {
  ...{ outputs: 1, isolated: true, power: 'DC', plug: 'barrel-2.1', polarity: 'centre-negative' },
  settings: [{ volts: 9, milliamps: 100 }],
};
const pairShop = {
  catalogue: 'Shop',
  currency: 'EUR',
  supplies: [{ id: 'single', name: 'Single', price: 10, stock: 1, regulated: true, banks: [bank] }],
  parts: [{ id: 'fan', name: 'Fan', price: 5, tails: 2, ...barrels }],
};

const pairFiles = async (): Promise<readonly string[]> => [
  await scratch('pair.json', pairBoard),
  await scratch('shop.json', pairShop),
];

/** With a pedal at volts that nothing in the shop gives. */
const strangerFiles = async (): Promise<readonly string[]> => {
  const stranger = { name: 'Stranger', volts: 37, milliamps: 10, figure: 'label' };
  return [
    await scratch('stranger.json', { ...pairBoard, pedals: [...pairBoard.pedals, stranger] }),
    await scratch('shop.json', pairShop),
  ];
};

describe('--json prints one object and nothing else', () => {
  test('for a plan', async () => {
    const ended = await boardfeed(['choose', ...tideway, '--json']);
    expect(ended.code).toBe(0);
    expect(printedObject(ended)).toMatchObject({
      format: 'boardfeed/plan/1',
      status: 'proven',
      aim: 'cost',
      gap: null,
    });
  });

  test('when no plan exists', async () => {
    const ended = await boardfeed(['choose', ...(await strangerFiles()), '--json']);
    expect(ended.code).toBe(4);
    expect(printedObject(ended)).toMatchObject({
      status: 'impossible',
      feeds: [],
      reasons: [{ kind: 'pedal', pedals: ['stranger'] }],
    });
  });

  test('when the time ran out with no plan in hand', async () => {
    const files = await pairFiles();
    const ended = await boardfeed(['choose', ...files, '--json', '--time', '0.001']);
    expect([ended.code, complaints(ended)]).toEqual([5, '']);
    expect(printedObject(ended)).toMatchObject({ status: 'best found', feeds: [], unpowered: ['one', 'two'] });
    const inWords = await boardfeed(['choose', ...files, '--time', '0.001']);
    expect([inWords.code, complaints(inWords)]).toEqual([5, '']);
    expect(inWords.output).toContain('The search stopped before any plan was found.');
    const inTime = await boardfeed(['choose', ...files, '--json']);
    expect(inTime.code).toBe(0);
    expect(printedObject(inTime)).toMatchObject({
      score: { money: '15.00' },
      feeds: [{ chain: 'fan' }, { chain: 'fan' }],
    });
  });
});

describe('options reach the planner', () => {
  test.each(['cost', 'bricks', 'quiet'])('--aim %s', async (aim) => {
    const ended = await boardfeed(['choose', ...tideway, '--json', '--aim', aim, '--time', '0.001']);
    expect(printedObject(ended)).toMatchObject({ aim });
  });

  test('--partial leaves out the pedal that nothing can feed', async () => {
    const ended = await boardfeed(['choose', ...(await strangerFiles()), '--json', '--partial']);
    expect(ended.code).toBe(0);
    expect(printedObject(ended)).toMatchObject({ status: 'proven', unpowered: ['stranger'] });
  });
});

describe('what is printed', () => {
  test('is the same in every run', async () => {
    const [first, second] = [await boardfeed(['choose', ...tideway]), await boardfeed(['choose', ...tideway])];
    expect(first.code).toBe(0);
    expect(second.output).toBe(first.output);
  });

  test('is the same in every run with --json, and of the same score in whatever order the files list things', async () => {
    const [board, shop] = [await boardFile(firstBoard), await shopFile(marramStreet)];
    const reversedFiles = [
      await scratch('reversed-board.json', { ...board, pedals: [...board.pedals].reverse() }),
      await scratch('reversed-shop.json', {
        ...shop,
        supplies: [...shop.supplies].reverse(),
        parts: [...shop.parts].reverse(),
      }),
    ];
    const first = await boardfeed(['choose', firstBoard, marramStreet, '--json']);
    const second = await boardfeed(['choose', firstBoard, marramStreet, '--json']);
    expect(first.code).toBe(0);
    expect(second.output).toBe(first.output);
    const reversed = await boardfeed(['choose', ...reversedFiles, '--json']);
    expect(printedObject(reversed)).toMatchObject({ status: 'proven', score: printedObject(first)['score'] });
  });
});

describe('nothing from a file or a path reaches the terminal as a control', () => {
  const hostile = '\u001b[31mred\u001b]0;mine\u0007\u202eback\u2066\u200b\u0085\u009b2J\u2028\r\nmore\u0000';
  const longName = `${hostile}${'long '.repeat(30)}`;
  const hostileShop = {
    ...pairShop,
    catalogue: hostile,
    supplies: pairShop.supplies.map((supply) => ({ ...supply, name: longName })),
    parts: pairShop.parts.map((part) => ({ ...part, name: hostile })),
  };
  const hostileBoard = {
    ...pairBoard,
    board: longName,
    pedals: pairBoard.pedals.map((pedal) => ({
      ...pedal,
      id: pedal.name.toLowerCase(),
      name: `${pedal.name} ${hostile}`,
    })),
  };
  const nobodyFits = { ...hostileBoard, pedals: hostileBoard.pedals.map((pedal) => ({ ...pedal, inlet: hostile })) };
  const faulty = { ...hostileBoard, [hostile]: 1, pedals: [{ ...hostileBoard.pedals[0], polarity: hostile }] };

  test.each([
    { what: 'plan', board: hostileBoard, code: 0 },
    { what: 'reasons', board: nobodyFits, code: 4 },
    { what: 'faults', board: faulty, code: 3 },
  ])('$what', async ({ what, board, code }) => {
    const files = [await scratch(`${what}.json`, board), await scratch(`${what}-shop.json`, hostileShop)];
    const shown = await boardfeed(['choose', ...files]);
    const printed = await boardfeed(['choose', ...files, '--json']);
    expect([shown.code, printed.code]).toEqual([code, code]);
    const all = [shown.output, shown.errors, printed.output, printed.errors].join('');
    expect(all).toMatch(/\\x1b\[31mred|\\u001b\[31mred/);
    expect(all.match(controls) ?? []).toEqual([]);
    if (code !== 3) expect(printedObject(printed)['board']).toBe(longName);
  });

  test('the path of a file', async () => {
    const ended = await boardfeed(['choose', `no-such${hostile.replace('\0', '')}`, 'none']);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(complaints(ended)).toMatch(/^no-such\\x1b\[31mred/);
    expect(ended.errors.match(controls) ?? []).toEqual([]);
  });
});

/** Control and format characters, separators and lone surrogates: all but the ends of our own lines. */
const controls = /(?!\n)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu;

describe('without a catalogue', () => {
  test('what to look for is told, where what is owned is not enough', async () => {
    const ended = await boardfeed(['choose', firstBoard]);
    expect(ended.code).toBe(0);
    expect(complaints(ended)).toBe('');
    expect(ended.output).toContain('First board: what to look for');
    expect(ended.output).toContain('4 isolated outputs, 9 V DC, centre-negative, plug 2.1 mm barrel:');
    expect(printedObject(await boardfeed(['choose', firstBoard, '--json']))).toMatchObject({
      format: 'boardfeed/wanted/1',
      status: 'proven',
      count: 4,
      milliamps: 191,
      outputs: [{ milliamps: 34 }, { milliamps: 11 }, { milliamps: 36 }, { milliamps: 110, isolated: true }],
      leads: [],
      sockets: { owned: 0, least: 1, most: 2 },
    });
  });

  test('what is owned is the plan, where it is enough', async () => {
    const ended = await boardfeed(['choose', fixture('boards/new-pedal.yaml'), '--json']);
    expect(ended.code).toBe(0);
    expect(printedObject(ended)).toMatchObject({ format: 'boardfeed/plan/1', status: 'proven', buy: { supplies: [] } });
  });

  test('no plan exists where not even a made-up output would do', async () => {
    const board = await scratch('dark.json', { ...pairBoard, policy: { ...pairBoard.policy, sockets: 0 } });
    expect((await boardfeed(['choose', board])).code).toBe(4);
  });
});

describe('gear that is described and not owned', () => {
  const box = { ...pairShop.supplies[0], id: 'old-box', name: 'Old box', price: undefined, stock: undefined };
  const described = { ...pairBoard, pedals: pairBoard.pedals.slice(0, 1), gear: { supplies: [box] } };
  const told =
    'Old box: described, but not among what you own, so no plan counts on it. If you have it, add it to what you own.';
  const onOneLine = (text: string): string => text.replaceAll(/\s+/g, ' ');

  test.each([
    ['what to look for', ['choose'], []],
    ['a plan', ['choose'], [pairShop]],
    ['no plan', ['choose'], [{ ...pairShop, supplies: [] }]],
    ['a check', ['check'], []],
  ])('is told so with %s', async (_, question, shops) => {
    const board = await scratch('described.json', described);
    const files = [board, ...(await Promise.all(shops.map(async (shop) => scratch('shop.json', shop))))];
    expect(onOneLine((await boardfeed([...question, ...files])).output)).toContain(told);
  });

  test('is told no more once it is owned', async () => {
    const board = await scratch('owned.json', { ...described, owned: { supplies: ['old-box'] } });
    expect(onOneLine((await boardfeed(['choose', board])).output)).not.toContain('described');
  });
});
