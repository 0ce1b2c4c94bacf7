import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

import { searchAloud } from '../../../../../src/node/cli/progress/aloud.js';
import { boardOf } from '../../../../support/builders.js';
import { tideway, spawned } from '../command.js';

const euro = boardOf([]);

/** What is written to standard error, which is no terminal unless a test says so; the clock stands still. */
let written = '';
const { isTTY, columns } = process.stderr;
const { TERM } = process.env;
const onTerminal = (width: number, term = 'xterm'): void => {
  Object.assign(process.stderr, { isTTY: true, columns: width });
  process.env['TERM'] = term;
};

beforeEach(() => {
  written = '';
  Object.assign(process.stderr, { isTTY: false });
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => ((written += String(text)), true));
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance'] });
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
  Object.assign(process.stderr, { isTTY, columns });
  if (TERM === undefined) delete process.env['TERM'];
  else process.env['TERM'] = TERM;
});

/** Searches for so many seconds, and then until Ctrl-C where that is asked for. */
async function searched(seconds: number, interrupted = true): Promise<string> {
  const ending = await searchAloud(euro, async ({ signal, onProgress }) => {
    onProgress({ tier: 'bricks', value: 4, bound: 3 });
    await vi.advanceTimersByTimeAsync(seconds * 1000);
    if (!interrupted) return 'at its end';
    expect(signal.aborted).toBe(false);
    const [listener] = process.listeners('SIGINT').slice(-1);
    listener?.('SIGINT');
    return signal.aborted ? 'told to stop' : 'not told';
  });
  const before = written;
  await vi.advanceTimersByTimeAsync(60_000);
  expect(written).toBe(before);
  return ending;
}

const said = 'Supplies in use: 4 so far; no plan can be below 3.';
const stopping = 'Stopping with the best so far. Ctrl-C again ends at once.\n';

describe('progress of a long search', () => {
  test('is a line after a second and every five on standard error', async () => {
    const listening = process.listenerCount('SIGINT');
    expect(await searched(12)).toBe('told to stop');
    const line = (seconds: number): string => `Searching, ${seconds} s. ${said} Ctrl-C ends the search early.\n`;
    expect(written).toBe(`${line(1)}${line(6)}${line(11)}${stopping}`);
    expect(process.listenerCount('SIGINT')).toBe(listening);
  });

  test('is one line on a terminal, written over, within its width, and erased at the end', async () => {
    onTerminal(30);
    await searched(1.5);
    const [line, blank] = ['Searching, 1 s.', `\r${' '.repeat(29)}\r`];
    expect(written).toBe(`${line}${blank}${line}${blank}${line}${blank}${stopping}`);
  });

  test('is as much as a wider terminal has room for, and is erased when the search is over', async () => {
    onTerminal(80);
    expect(await searched(1, false)).toBe('at its end');
    expect(written).toBe(`Searching, 1 s. ${said}\r${' '.repeat(79)}\r`);
  });

  test('is lines on a terminal that can do nothing', async () => {
    onTerminal(80, 'dumb');
    await searched(6);
    expect(written).toMatch(/^(Searching, \d s\. .*early\.\n){2}Stopping .*\n$/);
  });

  test('is none of a search that is over within a second', async () => {
    onTerminal(80);
    await searched(0.9, false);
    expect(written).toBe('');
  });
});

test('a command whose search is over at once speaks of none', async () => {
  const before = 'process.stderr.isTTY = true; process.stderr.columns = 80;';
  const ended = await spawned(['choose', ...tideway, '--time', '0.001'], { before });
  expect(ended).toMatchObject({ code: 5, errors: '' });
});
