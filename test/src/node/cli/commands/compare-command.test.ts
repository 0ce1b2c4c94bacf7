import { describe, expect, test } from 'vitest';

import { boardFile, boardfeed, complaints, fixture, marramStreet, printedObject, scratchFiles } from '../command.js';

const scratch = scratchFiles();
const firstBoard = fixture('boards/first-board.yaml');
const files = [firstBoard, marramStreet] as const;

type Row = Readonly<Record<string, unknown>>;
const rowsOf = (object: Row): readonly Row[] => object['options'] as readonly Row[];

describe('boardfeed compare', () => {
  test('--json prints one object: the best purchases, those asked for, and what money buys', async () => {
    const ended = await boardfeed(['compare', ...files, '--best', '2', '--option', 'staithe-5', '--json']);
    expect(ended).toMatchObject({ code: 0, signal: null });
    expect(complaints(ended)).toBe('');
    const object = printedObject(ended);
    expect(object).toMatchObject({
      format: 'boardfeed/comparison/1',
      aim: 'cost',
      status: 'proven',
      wanted: 2,
      end: 'enough',
    });
    expect(rowsOf(object).map(({ rank, asked, status }) => [rank, asked, status])).toEqual([
      [1, false, 'proven'],
      [2, false, 'proven'],
      [null, true, 'proven'],
    ]);
    expect(rowsOf(object)[0]).toMatchObject({
      prefer: { kind: 'best' },
      idle: [],
      plan: { format: 'boardfeed/plan/1' },
    });
    expect(object['tradeOffs']).toMatchObject([
      { against: 'exposed', exact: true },
      { against: 'bricks', exact: true },
    ]);
  });

  test('the plan of the best is what choose prints', async () => {
    const [compared, chosen] = await Promise.all([
      boardfeed(['compare', ...files, '--best', '1', '--json']),
      boardfeed(['choose', ...files, '--json']),
    ]);
    expect(rowsOf(printedObject(compared))[0]?.['plan']).toEqual(printedObject(chosen));
  });

  test('prints a table that fits 80 columns and says what it would take', async () => {
    const ended = await boardfeed(['compare', ...files, '--option', 'shingle-9, shingle-12']);
    expect(ended.code).toBe(0);
    const lines = ended.output.split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(ended.output).toMatch(/Price +Exposed +Supplies +Leads +Spare +Fullest/);
    expect(ended.output).toContain('Asked for');
    expect(ended.output).toMatch(/would be the best at [\d.]+ EUR or less/);
    expect(ended.output).toContain('Who may hum');
  });

  test('--aim is heeded', async () => {
    const ended = await boardfeed(['compare', ...files, '--best', '1', '--aim', 'quiet', '--json']);
    expect(printedObject(ended)['aim']).toBe('quiet');
    expect(rowsOf(printedObject(ended))[0]).toMatchObject({ score: { exposed: 0 } });
  });

  test('--time 0.001 ends with what is known and exit code 5', async () => {
    const wall = fixture('boards/studio-wall.yaml');
    const ended = await boardfeed(['compare', wall, marramStreet, '--time', '0.001', '--json']);
    expect(ended.code).toBe(5);
    expect(printedObject(ended)).toMatchObject({ status: 'best found', end: 'stopped' });
  });

  test('a board that nothing can power gives reasons and exit code 4', async () => {
    const board = await boardFile(firstBoard);
    const hungry = { ...board.pedals[0], name: 'Furnace', volts: 37 };
    const file = await scratch('hungry.json', { ...board, pedals: [...board.pedals, hungry] });
    const ended = await boardfeed(['compare', file, marramStreet, '--json']);
    expect(ended.code).toBe(4);
    expect(printedObject(ended)).toMatchObject({ status: 'impossible', options: [], reasons: [{ kind: 'pedal' }] });
  });
});

describe('what a comparison refuses', () => {
  test('unknown supplies, with the near spelling, and exit code 3', async () => {
    const ended = await boardfeed(['compare', ...files, '--option', 'wherry-66', '--option', 'sluice-4']);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(complaints(ended)).toBe('--option: the catalogue sells no supply "wherry-66". Did you mean wherry-6?\n');
  });

  test.each([
    [['--option', 'wherry-6,,']],
    [['--option', '0 x wherry-6']],
    [['--best', '0']],
    [['--best', '1.5']],
    [['--out', 'x.jsonl']],
    [['--jobs', '2']],
    [['one-more.yaml']],
  ])('%j as wrong use, with exit code 2', async (more) => {
    const ended = await boardfeed(['compare', ...files, ...more]);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(complaints(ended)).toMatch(/^error: /);
  });

  test('a single file without a folder', async () => {
    expect((await boardfeed(['compare', marramStreet])).code).toBe(2);
    expect((await boardfeed(['compare', ...files, '--boards', 'x'])).code).toBe(2);
  });
});
