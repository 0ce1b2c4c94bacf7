import { execFile } from 'node:child_process';
import { mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

import { afterAll, describe, expect, test } from 'vitest';

import { Host } from '../hardening/host.js';
import { complaints } from '../src/node/cli/command.js';
import { checkout } from '../support/pack.js';
import { blocksOf, documents, type Block } from './documents.js';

/** A block that shows what is typed and what is printed then; a program of its own stands in the block before. */
type Example = {
  readonly path: string;
  readonly line: string;
  readonly printed: string;
  readonly before: Block | null;
};

const examples: readonly Example[] = documents.flatMap(({ path, text }) => {
  const blocks = blocksOf(text);
  return blocks.flatMap(({ language, body }, index) => {
    const [, line, printed] = /^\$ (.+)\n([^]*)$/.exec(body) ?? [];
    if (language !== 'console' || line === undefined || printed === undefined) return [];
    return [{ path, line, printed, before: blocks[index - 1] ?? null }];
  });
});
const commands = examples.filter(({ line }) => line.startsWith('boardfeed '));
const programs = examples.filter(({ line }) => line === 'node example.mjs');

test('every example is a command or a program', () => {
  const blocks = documents.flatMap(({ text }) => blocksOf(text));
  expect(commands.length + programs.length).toBe(blocks.filter(({ language }) => language === 'console').length);
  expect(programs).toHaveLength(blocks.filter(({ language }) => language === 'ts').length);
});

test('every question has an example, and checking one of a wiring that is safe to ask about and one that is not', () => {
  const asked = commands.map(({ line }) => line.split(' ')[1]);
  expect(asked).toEqual(expect.arrayContaining(['choose', 'rewire', 'explain', 'spare', 'ask', 'compare', 'convert']));
  expect(asked.filter((command) => command === 'check').length).toBeGreaterThanOrEqual(2);
});

describe('commands', () => {
  const host = new Host();
  afterAll(() => {
    host.close();
  });

  test.each(commands)('$path: $line', async ({ line, printed }) => {
    const ran = await host.run(line.split(' ').slice(1), checkout);
    const isFaulty = /^\d+ faults? in /m.test(printed);
    const shown = isFaulty ? { output: '', errors: printed } : { output: printed, errors: '' };
    // A slow machine shows progress besides.
    expect(ran === null ? null : { ...ran, errors: complaints(ran) }).toMatchObject({ ...shown, crash: null });
    // The answer to a question may be no.
    expect(isFaulty ? [3] : [0, 4]).toContain(ran?.code);
  });
});

describe('programs', () => {
  test.each(programs)('$path: $line', async ({ before, printed }) => {
    expect(before?.language).toBe('ts');
    const output = await printedBy(before?.body ?? '');
    // An ellipsis at the end stands for all that follows.
    if (printed.endsWith('\n…\n')) expect(output.slice(0, printed.length - 2)).toBe(printed.slice(0, -2));
    else expect(output).toBe(printed);
  });
});

/** What a program prints that uses the compiled library, in a folder with the fixtures. */
async function printedBy(code: string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'boardfeed-docs-'));
  try {
    for (const name of ['node_modules', 'fixtures']) await symlink(join(checkout, name), join(folder, name));
    const library = JSON.stringify(join(checkout, 'dist', 'src', 'index.js'));
    await writeFile(join(folder, 'example.mjs'), code.replace("'boardfeed'", library));
    return (await promisify(execFile)(process.execPath, ['example.mjs'], { cwd: folder })).stdout;
  } finally {
    await rm(folder, { recursive: true });
  }
}
