import { describe, expect, test } from 'vitest';

import { interruptedAt, longBoard, marramStreet, printedObject, scratchFiles, shopFile, spawned } from './command.js';

const scratch = scratchFiles();
const notice = 'Stopping with the best so far. Ctrl-C again ends at once.\n';

const searching = interruptedAt('Searching');

describe('Ctrl-C in a long search', () => {
  test('ends it with the best plan so far and exit code 5; standard output is the answer alone', async () => {
    const board = await longBoard();
    const file = await scratch('long.json', board);
    const ended = await spawned(['choose', file, marramStreet, '--json'], { before: searching });
    expect(ended).toMatchObject({ code: 5, signal: null });
    expect(ended.errors).toMatch(/^(Searching, \d+ s\..*\n)+Stopping .*\n$/);
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
    const ended = await spawned(['choose', ...files], { before: searching });
    expect(ended).toMatchObject({ code: 5, signal: null });
    expect(ended.output).toContain('The search stopped before any plan was found.');
  });

  test('a second time ends the process at once, however busy it is with stopping', async () => {
    const file = await scratch('long.json', await longBoard());
    let isSent = false;
    const ended = await spawned(['choose', file, marramStreet], {
      before: `${searching}${slowToStop}`,
      onErrors: (errors, child) => {
        if (!isSent && errors.includes(notice)) isSent = child.kill('SIGINT');
      },
    });
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
