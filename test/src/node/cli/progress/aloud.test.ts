import { beforeAll, describe, expect, test } from 'vitest';

import {
  spawned,
  longBoard,
  marramStreet,
  printedObject,
  scratchFiles,
  tideway,
  type Ended,
  type Manner,
} from '../command.js';

const scratch = scratchFiles();

/** Makes the process take standard error for a terminal of that width. */
const terminal = (columns: number): string => `process.stderr.isTTY = true; process.stderr.columns = ${columns};`;

describe('progress of a long search', () => {
  /** Runs one until Ctrl-C, which is sent when progress has been shown. */
  let run: (environment: Record<string, string>, before: string) => Promise<Ended>;

  beforeAll(async () => {
    const parameters = ['choose', await scratch('long.json', await longBoard()), marramStreet, '--json'];
    run = (environment, before) => spawned(parameters, { environment, before, onErrors: interruptOnce() });
  });

  const interruptOnce = (): NonNullable<Manner['onErrors']> => {
    let sent = false;
    return (errors, child) => {
      if (!sent && errors.startsWith('Searching')) sent = child.kill('SIGINT');
    };
  };

  test('is a line now and then on standard error; standard output is the answer alone', async () => {
    const ended = await run({}, '');
    expect(ended.errors).toMatch(/^(Searching, \d+ s\..*\n)+Stopping .*\n$/);
    expect(printedObject(ended)).toMatchObject({ status: 'best found' });
  });

  test('is one line on a terminal, written over, within its width, and erased at the end', async () => {
    const ended = await run({}, terminal(30));
    expect(ended.errors).toMatch(/^Searching, \d+ s\.(\r {29}\rSearching, \d+ s\.)*\r {29}\rStopping .*\n$/);
    expect(printedObject(ended)).toMatchObject({ status: 'best found' });
  });

  test('is lines on a terminal that can do nothing', async () => {
    const ended = await run({ TERM: 'dumb' }, terminal(80));
    expect(ended.errors).toMatch(/^(Searching, \d+ s\..*\n)+Stopping .*\n$/);
  });
});

test('a search that is over at once is not spoken of', async () => {
  const ended = await spawned(['choose', ...tideway, '--time', '0.001'], { before: terminal(80) });
  expect(ended).toMatchObject({ code: 5, errors: '' });
});
