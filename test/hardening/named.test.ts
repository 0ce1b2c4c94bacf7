import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

import { afterAll, describe, expect, test } from 'vitest';

import { tideway } from '../src/node/cli/command.js';
import type { Ran } from './command-host.js';
import { Host } from './host.js';
import { expectUpright } from './laws.js';

const host = new Host();
const folder = mkdtemp(join(tmpdir(), 'boardfeed-named-'));
afterAll(async () => {
  host.close();
  await rm(await folder, { recursive: true });
});

const board = readFile(tideway[0], 'utf8');

/** Runs `choose` on a board of the given text, and checks what holds of every run. */
async function chosen(text: string, ...flags: readonly string[]): Promise<Ran> {
  const path = join(await folder, 'board.yaml');
  await writeFile(path, text);
  const ran = await host.run(['choose', path, tideway[1], ...flags], await folder);
  expectUpright(ran);
  return ran;
}

/** The board with its first match of something replaced. @throws Error when there is nothing like it. */
async function boardWith(pattern: RegExp, replacement: string): Promise<string> {
  const text = await board;
  const changed = text.replace(pattern, () => replacement);
  if (changed === text) throw new Error(`the board has nothing like ${String(pattern)}`);
  return changed;
}

const refused = async (text: string, ...words: readonly string[]): Promise<void> => {
  const ran = await chosen(text);
  expect(ran.code).toBe(3);
  for (const word of words) expect(ran.errors).toContain(word);
};

describe('a board that is meant to do harm is refused, and told where', () => {
  test.each(['__proto__', 'constructor', 'prototype'])('the key %s changes no prototype', async (key) => {
    await refused(`${key}: { polluted: true }\n${await board}`, 'board.yaml:1:1');
    await refused(await boardWith(/volts: /, `${key}: { polluted: true }\n    volts: `), key);
    expect(Object.prototype).not.toHaveProperty('polluted');
  });

  test('aliases that stand for billions of values', async () => {
    const levels = Array.from({ length: 12 }, (_, n) =>
      n === 0
        ? 'a0: &a0 [x, x, x, x, x, x, x, x, x]'
        : `a${n}: &a${n} [${Array(9)
            .fill(`*a${n - 1}`)
            .join(', ')}]`,
    );
    await refused(`${levels.join('\n')}\n${await board}`, 'board.yaml:');
  });

  test('lists in lists, ten thousand deep, in either notation', async () => {
    const depth = 10_000;
    await refused(`name: ${'['.repeat(depth)}${']'.repeat(depth)}\n`, 'board.yaml:1:');
    await refused(`{"name":${'['.repeat(depth)}${']'.repeat(depth)}}`, 'board.yaml:1:');
    await refused(`${Array.from({ length: 2_000 }, (_, n) => `${' '.repeat(n)}a:`).join('\n')}\n`, 'board.yaml:');
  });

  test.each([
    '9007199254740993',
    '99999999999999999999999999',
    '1e400',
    '.nan',
    '.inf',
    '-.inf',
    '-0',
    '-0.0',
    '-9',
    '0x1F',
    '1e-9',
    '9.00001',
  ])('the current %s', async (number) => {
    await refused(await boardWith(/milliamps: *[\d.]+/, `milliamps: ${number}`), 'milliamps');
  });

  test('a key that stands twice', async () => {
    await refused(await boardWith(/volts: *[\d.]+/, 'volts: 9\n    volts: 18'), 'volts');
  });

  test('an id with a letter of another alphabet is not the id that it looks like', async () => {
    await refused(await boardWith(/pedal: estuary-echo/, 'pedal: estuary-ech\u043e'), 'wiring');
    await refused(await boardWith(/supply: quay-6/, 'supply: qu\u0430y-6'), 'wiring');
  });

  test('bytes that are no text', async () => {
    await refused(`\0${await board}`, 'board.yaml:1:');
    await refused(`${'\u0007'.repeat(3)}${await board}`, 'board.yaml:1:');
  });
});

const pedals = (count: number): string =>
  Array.from({ length: count }, (_, n) => `  - { name: P${n}, volts: 9, milliamps: 1 }\n`).join('');

describe('what is only strange is read', () => {
  test('a pedal whose name looks like another’s is a pedal of its own', async () => {
    const twin = 'Estu\u0430ry echo';
    const ran = await chosen(await boardWith(/pedals:\n/, `pedals:\n  - {name: ${twin}, volts: 9, milliamps: 5}\n`));
    expect(ran.code).toBe(0);
    expect(ran.output).toContain(twin);
    expect(ran.output).toContain('Estuary echo');
  });

  test('controls and turned writing in a name reach the terminal as words', async () => {
    const ran = await chosen(await boardWith(/name: Tarn fuzz/, String.raw`name: "Tide \e[31mred\e]0;x\a\u202Eback"`));
    expect(ran.code).toBe(0);
    expect(ran.output).toContain('Tide ');
  });

  test('two thousand pedals are read; the search ends when its time does, with what it has', async () => {
    const ran = await chosen(await boardWith(/pedals:\n/, `pedals:\n${pedals(1_997)}`), '--time', '1');
    expect([0, 4, 5]).toContain(ran.code);
  });

  test('two thousand and one are refused', async () => {
    await refused(await boardWith(/pedals:\n/, `pedals:\n${pedals(1_998)}`), 'pedals');
  });
});
