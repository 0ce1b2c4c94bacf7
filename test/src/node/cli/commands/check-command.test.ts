import { readFile } from 'node:fs/promises';

import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';

import { boardfeed, fixture, gigBoard, marramStreet, printedObject, scratchFiles, tideway } from '../command.js';

const scratch = scratchFiles();
const hurried = fixture('boards/hurried.yaml');
const [tidewayBoard] = tideway;

const checking = (...parameters: readonly string[]) => boardfeed(['check', ...parameters]);

type BoardFile = { readonly wiring: readonly Record<string, unknown>[] };
const boardIn = async (path: string) => parse(await readFile(path, 'utf8')) as BoardFile;

/** The board of a file with something else in it. */
const changed = async (name: string, path: string, change: (board: BoardFile) => object): Promise<string> => {
  const board = await boardIn(path);
  return scratch(name, { ...board, ...change(board) });
};

describe('a wiring', () => {
  test('that is safe ends with 0', async () => {
    const ended = await checking(...tideway);
    expect(ended).toMatchObject({ code: 0, errors: '' });
    expect(ended.output).toContain('Safe as far as it is plugged, if your files are right: no hard rule is broken.');
    expect(ended.output).toContain('Without a feed: Tarn fuzz and Chapel drive.');
  });

  test('that is not ends with 4 and names what is broken, the worst first', async () => {
    const ended = await checking(hurried);
    expect(ended).toMatchObject({ code: 4, errors: '' });
    const at = (text: string) => ended.output.indexOf(text);
    expect(at('Not safe.')).toBeGreaterThan(0);
    expect([at('\n  voltage '), at('\n  ground '), at('\n  startup ')].every((place) => place > 0)).toBe(true);
    expect(at('\n  voltage ')).toBeLessThan(at('\n  ground '));
    expect(at('\n  ground ')).toBeLessThan(at('\n  startup '));
  });

  test('needs no catalogue where the board describes its gear, and may have one', async () => {
    const alone = await checking(hurried);
    const beside = await checking(hurried, marramStreet);
    expect(beside).toEqual(alone);
  });

  test('that is missing is said, and safe', async () => {
    const ended = await checking(gigBoard, marramStreet);
    expect(ended.code).toBe(0);
    expect(ended.output).toContain('Nothing is plugged');
  });

  test('is judged from JSON files as well', async () => {
    const board = await changed('mended.json', hurried, ({ wiring }) => ({
      wiring: wiring.slice(3).map((feed) => ({ ...feed, supply: 'groyne-5' })),
    }));
    expect(await checking(board)).toMatchObject({ code: 0, errors: '' });
  });
});

describe('--json prints one object and nothing else', () => {
  test('for a wiring', async () => {
    const unsafe = await checking(hurried, '--json');
    expect(unsafe).toMatchObject({ code: 4, errors: '' });
    expect(printedObject(unsafe)).toMatchObject({
      format: 'boardfeed/check/1',
      board: 'Slack-water rehearsal board',
      status: 'unsafe',
      findings: [{ rule: 'voltage' }, { rule: 'ground' }, { rule: 'startup' }],
      soft: [{ kind: 'exposed' }, { kind: 'tight', numbers: { percent: 95 } }, { kind: 'unfed' }],
      unpowered: ['kelp-phaser'],
    });
    const safe = await checking(...tideway, '--json');
    expect(safe.code).toBe(0);
    expect(printedObject(safe)).toMatchObject({ status: 'safe', findings: [] });
  });

  test('for a plan of choose that was plugged as it says', async () => {
    const plan = printedObject(await boardfeed(['choose', ...tideway, '--json']));
    const feeds = plan['feeds'] as readonly Record<string, unknown>[];
    const board = await changed('planned.json', tidewayBoard, () => ({
      wiring: feeds.map(({ pedal, supply, unit, outputs, volts, parts }) => ({
        ...{ pedal, supply, unit, volts, parts },
        output: (outputs as readonly number[])[0],
      })),
    }));
    const ended = await checking(board, tideway[1], '--json');
    expect(ended.code).toBe(0);
    const checked = printedObject(ended);
    expect(checked).toMatchObject({ status: 'safe', findings: [], soft: [], feeds });
    expect(checked['confirm']).toEqual(plan['confirm']);
  });

  test('for a question', async () => {
    const ended = await checking(...tideway, '--pedal', 'chapel-drive', '--output', 'quay-6:6', '--json');
    expect(ended).toMatchObject({ code: 0, errors: '' });
    expect(printedObject(ended)).toMatchObject({ format: 'boardfeed/check-output/1', answer: 'yes' });
  });
});

describe('--pedal and --output', () => {
  test('yes ends with 0', async () => {
    const ended = await checking(...tideway, '--pedal', 'chapel-drive', '--output', 'quay-6:6');
    expect(ended).toMatchObject({ code: 0, errors: '' });
    expect(ended.output).toMatch(
      /^Tideway four-piece: can Chapel drive go on Quay 6 output 6\?\nYes: at 18 V, nothing/,
    );
  });

  test('no ends with 4, with every rule', async () => {
    const ended = await checking(...tideway, '--pedal', 'estuary-echo', '--output', 'quay-6:1');
    expect(ended).toMatchObject({ code: 4, errors: '' });
    expect(ended.output).toContain('No, not at any of its settings.');
    expect(ended.output).toContain('current: Estuary echo draws 180 mA × 1.2 = 216 mA');
    expect(ended.output).toContain('startup: Estuary echo takes 350 mA');
  });

  test('a second unit and a supply that is not owned', async () => {
    const second = await checking(...tideway, '--pedal', 'tarn-fuzz', '--output', 'quay-6/2:3', '--json');
    expect(second.code).toBe(0);
    expect(printedObject(second)).toMatchObject({
      unit: 2,
      inPlace: false,
      trials: [{ money: '119.00', buy: { supplies: [{ id: 'quay-6', units: 1, price: '119.00' }] } }],
    });
    const fifth = await checking(...tideway, '--pedal', 'tarn-fuzz', '--output', 'quay-6/5:3', '--json');
    expect(fifth.code).toBe(4);
    expect(printedObject(fifth)).toMatchObject({ trials: [{ findings: [{ rule: 'stock', unit: 5 }] }] });
  });

  test('an unknown name ends with 3, and the near one is told', async () => {
    const pedal = await checking(...tideway, '--pedal', 'chapel-dive', '--output', 'quay-6:6');
    expect(pedal).toEqual({
      ...{ code: 3, signal: null, output: '' },
      errors: `${tideway[0]}: the board has no pedal "chapel-dive". Did you mean chapel-drive?\n`,
    });
    const supply = await checking(...tideway, '--pedal', 'chapel-drive', '--output', 'quay-5:6', '--json');
    expect(supply).toMatchObject({ code: 3, output: '' });
    expect(supply.errors).toContain('a supply "quay-5". Did you mean quay-6?');
    const output = await checking(...tideway, '--pedal', 'chapel-drive', '--output', 'quay-6:7');
    expect(output).toMatchObject({
      ...{ code: 3, output: '' },
      errors: `${tideway[0]}: "quay-6" has no output 7; it has the outputs 1 to 6.\n`,
    });
    const hostile = await checking(...tideway, '--pedal', '\u001b[31mred\u202e', '--output', 'quay-6:6');
    expect(hostile).toMatchObject({ code: 3, output: '' });
    expect(hostile.errors).toContain('no pedal "\\x1b[31mred\\u202e"');
  });
});

describe('wrong use ends with 2', () => {
  const question = 'error: --pedal and --output go together';
  const form = "It takes a supply's id and the number of an output, such as quay-6:5";
  test.each([
    { parameters: [], says: "missing required argument 'board'" },
    { parameters: [...tideway, 'third.yaml'], says: 'too many arguments' },
    { parameters: [...tideway, '--pedal', 'tarn-fuzz'], says: question },
    { parameters: [...tideway, '--output', 'quay-6:1'], says: question },
    { parameters: [...tideway, '--jsn'], says: "unknown option '--jsn'" },
    ...['quay-6', 'quay-6:', ':1', 'quay-6:0', 'quay-6/0:1', 'quay-6/x:1', 'quay-6:1:2', 'quay-6:1.5', ''].map(
      (output) => ({ parameters: [...tideway, '--pedal', 'tarn-fuzz', '--output', output], says: form }),
    ),
  ])('$parameters', async ({ parameters, says }) => {
    const ended = await checking(...parameters);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toContain(says);
    expect(ended.errors).toMatch(/\(run boardfeed check --help for what there is\)\n$/);
  });
});

describe('a wiring that cannot be read ends with 3', () => {
  test('at the line and column of what is not there, with the near spelling', async () => {
    const text = await readFile(tidewayBoard, 'utf8');
    const feed = 'pedal: estuary-echo, supply: quay-9, unit: 1, output: 5, volts: 9';
    const board = await scratch('wired.yaml', text.replace(/^wiring:[^]*$/m, `wiring:\n  - {${feed}}\n`));
    const ended = await checking(board, tideway[1], '--json');
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toMatch(/wired\.yaml:\d+:\d+ wiring\[0\]\.supply: /);
    expect(ended.errors).toContain('Did you mean quay-6?');
  });

  test('or a file that is not there', async () => {
    expect(await checking('no-such-board.yaml')).toMatchObject({ code: 3, output: '' });
    const ended = await checking(tidewayBoard);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toContain('the gear does not describe, and no catalogue is given');
  });
});
