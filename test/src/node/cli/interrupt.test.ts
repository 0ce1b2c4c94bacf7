import { describe, expect, test } from 'vitest';

import { interruptedAt, longBoard, marramStreet, printedObject, scratchFiles, spawned } from './command.js';

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
    const { policy, ...board } = await longBoard();
    // The best plan costs 112: that there is none below takes long to tell.
    const file = await scratch('tight.json', { ...board, policy: { ...policy, budget: 111.9 } });
    const ended = await spawned(['choose', file, marramStreet], { before: searching });
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
