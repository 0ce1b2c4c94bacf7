import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { describe, expect, test } from 'vitest';

import { boardfeed, root, spawned, tideway } from './command.js';

describe('help and version', () => {
  test.each([
    { parameters: ['--help'], says: /^Usage: boardfeed .*\n[^]*\n {2}choose / },
    { parameters: ['-h'], says: /^Usage: boardfeed / },
    { parameters: ['help'], says: /^Usage: boardfeed / },
    { parameters: ['choose', '--help'], says: /^Usage: boardfeed choose .*\n[^]*\nExit codes:\n {2}0 / },
    { parameters: ['check', '--help'], says: /^Usage: boardfeed check .*\n[^]*\nExit codes:\n {2}0 {2}safe/ },
    { parameters: ['help', 'choose'], says: /^Usage: boardfeed choose / },
    { parameters: ['--version'], says: /^\d+\.\d+\.\d+\n$/ },
    { parameters: ['-V'], says: /^\d+\.\d+\.\d+\n$/ },
  ])('$parameters: on standard output, exit code 0', async ({ parameters, says }) => {
    const ended = await boardfeed(parameters);
    expect(ended).toMatchObject({ code: 0, errors: '' });
    expect(ended.output).toMatch(says);
  });

  test('without a command the help is on standard error, exit code 2', async () => {
    const ended = await boardfeed([]);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toMatch(/^Usage: boardfeed /);
  });

  test('help loads neither the search nor what reads files', async () => {
    const loaded = await codeLoadedBy(['--help']);
    expect(marks.filter((mark) => loaded.some((code) => code.includes(mark)))).toEqual([]);
    expect(loaded.length).toBeLessThan(8);
    expect(loaded.join('').length).toBeLessThan(120_000);
  });

  test('choosing does load them, so the test above sees what it looks for', async () => {
    const loaded = await codeLoadedBy(['choose', ...tideway, '--time', '0.001']);
    expect(marks.filter((mark) => !loaded.some((code) => code.includes(mark)))).toEqual([]);
  });
});

/** Names out of what reads YAML, what checks it and what searches for plans. */
const marks = ['YAMLParseError', '$ZodError', 'CoverSearch'];

/** All of our code that a run has loaded, file by file, as Node's own coverage lists them. */
async function codeLoadedBy(parameters: readonly string[]): Promise<readonly string[]> {
  const folder = await mkdtemp(join(tmpdir(), 'boardfeed-modules-'));
  try {
    await spawned(parameters, { environment: { NODE_V8_COVERAGE: folder } });
    const reports = await Promise.all((await readdir(folder)).map((name) => readFile(join(folder, name), 'utf8')));
    const addresses = reports.flatMap((report) => (JSON.parse(report) as Coverage).result.map(({ url }) => url));
    const ours = addresses.filter((address) => address.startsWith('file:'));
    return await Promise.all(ours.map(async (address) => readFile(new URL(address), 'utf8')));
  } finally {
    await rm(folder, { recursive: true });
  }
}

type Coverage = { readonly result: readonly { readonly url: string }[] };

describe('wrong use', () => {
  const files = ['board.yaml', 'shop.yaml'];
  test.each([
    { parameters: ['choose'], says: "missing required argument 'board'" },
    { parameters: ['choose', ...files, 'third.yaml'], says: 'too many arguments' },
    { parameters: ['choose', ...files, '--jsn'], says: "unknown option '--jsn'\n(Did you mean --json?)" },
    { parameters: ['chose', ...files], says: "unknown command 'chose'\n(Did you mean choose?)" },
    { parameters: ['--nonsense'], says: "unknown option '--nonsense'" },
    { parameters: ['choose', ...files, '--aim', 'cheap'], says: 'Allowed choices are cost, bricks, quiet.' },
    { parameters: ['choose', ...files, '--aim'], says: "option '--aim <aim>' argument missing" },
    { parameters: ['choose', ...files, '--time'], says: "option '--time <seconds>' argument missing" },
    ...['0', '0.0', '-1', 'abc', '', ' ', '10s', '0,5', '1e3', '0x10', 'Infinity', 'NaN', '9'.repeat(400)].map(
      (time) => ({
        parameters: ['choose', ...files, '--time', time],
        says: 'It takes a number of seconds above 0, such as 10 or 0.5.',
      }),
    ),
  ])('$parameters', async ({ parameters, says }) => {
    const ended = await boardfeed(parameters);
    expect(ended).toMatchObject({ code: 2, output: '' });
    expect(ended.errors).toMatch(/^error: .*\n/);
    expect(ended.errors).toContain(says);
    expect(ended.errors).toMatch(/\(run boardfeed (choose )?--help for what there is\)\n$/);
  });

  test('what was typed comes back without anything that a terminal could act on', async () => {
    const ended = await boardfeed(['choose', ...files, '--\u001b[31mred\u202e']);
    expect(ended.code).toBe(2);
    expect(ended.errors).toContain('--\\x1b[31mred\\u202e');
  });
});

test('a file may be called like an option', async () => {
  const ended = await boardfeed(['choose', '--', '--json', join(root, 'no-such-shop.yaml')]);
  expect(ended).toMatchObject({ code: 3, output: '' });
  expect(ended.errors).toContain('--json:1:1: there is no such file.');
});
