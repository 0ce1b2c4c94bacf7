import { describe, expect, test } from 'vitest';

import {
  spawned,
  complaints,
  fixture,
  longBoard,
  marramStreet,
  printedObject,
  scratchFiles,
  tideway,
} from './command.js';

const scratch = scratchFiles();

describe('the exit code', () => {
  test('is 0 for a plan that is proven', async () => {
    const ended = await spawned(['choose', ...tideway]);
    expect(ended).toMatchObject({ code: 0, signal: null });
    expect(ended.output).toContain('Proven: ');
    expect(complaints(ended)).toBe('');
  });

  test('is 1 for a defect', async () => {
    const ended = await spawned(['choose', ...tideway], {
      before: 'JSON.parse = () => { throw new Error("broken"); }',
    });
    expect(ended).toMatchObject({ code: 1, output: '' });
  });

  test('is 2 for wrong use', async () => {
    expect(await spawned(['choose'])).toMatchObject({ code: 2, output: '' });
  });

  test('is 3 for input that cannot be read', async () => {
    const missing = fixture('boards/no-such-board.yaml');
    const ended = await spawned(['choose', missing, marramStreet]);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toMatch(/no-such-board\.yaml:1:1: there is no such file\./);
  });

  test('is 3 for input that is wrong', async () => {
    const wrong = await scratch('wrong.yaml', 'board: Wrong\ncurency: EUR\npedals: []\n');
    const ended = await spawned(['choose', wrong, marramStreet]);
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toMatch(/wrong\.yaml:2:1 curency: unknown key\. Did you mean currency\?\n/);
  });

  test('is 4 when no plan exists', async () => {
    const ended = await spawned(['choose', fixture('boards/impossible.yaml'), marramStreet]);
    expect(ended.code).toBe(4);
    expect(ended.output).toContain('no plan exists');
    expect(complaints(ended)).toBe('');
  });

  test('is 5 when the time runs out; the plan in hand is printed, and how far it may be from the best', async () => {
    const board = await longBoard();
    const file = await scratch('long.json', board);
    const ended = await spawned(['choose', file, marramStreet, '--json', '--time', '0.2']);
    expect(ended.code).toBe(5);
    const plan = printedObject(ended);
    expect(plan).toMatchObject({ status: 'best found', gap: { tier: 'cost' } });
    expect(plan['feeds']).toHaveLength(board.pedals.length);
    expect(complaints(ended)).toBe('');
  });
});
