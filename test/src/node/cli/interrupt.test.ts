import { describe, expect, test } from 'vitest';

import { spawned, longBoard, marramStreet, printedObject, scratchFiles, shopFile } from './command.js';

const scratch = scratchFiles();
const notice = 'Stopping with the best so far. Ctrl-C again ends at once.\n';

/** Interrupts once the search is under way, as progress tells, and, if asked for, again when the command has said so. */
const interrupting = (again: boolean) => {
  let sent = 0;
  return (errors: string, child: { kill: (signal: NodeJS.Signals) => boolean }): void => {
    const wanted = (errors.startsWith('Searching') ? 1 : 0) + (again && errors.includes(notice) ? 1 : 0);
    for (; sent < wanted; sent += 1) child.kill('SIGINT');
  };
};

describe('Ctrl-C in a long search', () => {
  test('ends it with the best plan so far and exit code 5', async () => {
    const board = await longBoard();
    const file = await scratch('long.json', board);
    const ended = await spawned(['choose', file, marramStreet, '--json'], { onErrors: interrupting(false) });
    expect(ended).toMatchObject({ code: 5, signal: null });
    expect(ended.errors).toMatch(/^Searching, .*\n/);
    expect(ended.errors.endsWith(notice)).toBe(true);
    const plan = printedObject(ended);
    expect(plan).toMatchObject({ status: 'best found', unpowered: [], gap: { tier: 'cost' } });
    expect(plan['feeds']).toHaveLength(board.pedals.length);
  });

  test('says so when there is no plan yet', async () => {
    const [board, shop] = [await longBoard(), await shopFile(marramStreet)];
    const files = [
      await scratch('with-pair.json', { ...board, pedals: [...board.pedals, ...pairAt37Volts] }),
      await scratch('with-single.json', { ...shop, supplies: [...shop.supplies, singleAt37Volts] }),
    ];
    const ended = await spawned(['choose', ...files], { onErrors: interrupting(false) });
    expect(ended).toMatchObject({ code: 5, signal: null });
    expect(ended.output).toContain('The search stopped before any plan was found.');
  });

  test('a second time ends the process at once, however busy it is with stopping', async () => {
    const file = await scratch('long.json', await longBoard());
    const ended = await spawned(['choose', file, marramStreet], { before: slowToStop, onErrors: interrupting(true) });
    expect(ended).toMatchObject({ code: null, signal: 'SIGINT', output: '' });
    expect(ended.errors.endsWith(notice)).toBe(true);
  });
});

/** Only a chain brings both onto the one output for them: no plan that a first glance finds. */
const pairAt37Volts = ['North', 'South'].map((name) => ({ name, volts: 37, milliamps: 10, figure: 'label' }));
const singleAt37Volts = {
  ...{ id: 'single-37', name: 'Single 37', price: 30, stock: 1, regulated: true, mains: { from: 100, to: 240 } },
  banks: [
    {
      ...{ outputs: 1, isolated: true, power: 'DC', plug: 'barrel-2.1', polarity: 'centre-negative' },
      settings: [{ volts: 37, milliamps: 500 }],
    },
  ],
};

/** Keeps the process from doing anything else for longer than any test lasts, once it has been told to stop. */
const slowToStop = `
  const { abort } = AbortController.prototype;
  let isTold = false;
  process.once('SIGINT', () => {
    isTold = true;
  });
  AbortController.prototype.abort = function (...reasons) {
    abort.apply(this, reasons);
    if (isTold) Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 300_000);
  };`;
