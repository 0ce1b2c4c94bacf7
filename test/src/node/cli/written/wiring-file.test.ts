import { appendFile, readFile } from 'node:fs/promises';

import { afterEach, beforeEach, expect, it, vi } from 'vitest';

import { audit } from '../../../../../src/audit/audit.js';
import { kitOf } from '../../../../../src/domain/kit.js';
import { readInputs } from '../../../../../src/node/disk/read-inputs.js';
import { wiringFile } from '../../../../../src/node/cli/written/wiring-file.js';
import type { Answer } from '../../../../../src/planning/answer.js';
import { scratchFiles, tideway } from '../command.js';

const scratch = scratchFiles();

/** What is written to standard error. */
let written = '';
beforeEach(() => {
  written = '';
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => ((written += String(text)), true));
});
afterEach(() => {
  vi.restoreAllMocks();
});

/** A board that may be written to, and the plan that it is plugged as it is. */
async function opened(name: string) {
  const [from, shop] = tideway;
  const board = await scratch(name, await readFile(from, 'utf8'));
  const read = await readInputs(board, shop);
  if (read.kind === 'faulty') throw new Error('it cannot be read');
  const kit = read.value;
  const [wired] = kit.board.wiring;
  if (wired === undefined) throw new Error('nothing is plugged');
  const { millivolts, ...feed } = wired;
  const feeds = [{ ...feed, settings: [millivolts], polarity: 'centre-negative' as const }];
  const { wiring } = audit(kit.board, kit.catalogue, feeds, { partial: true });
  const answer: Answer = { kind: 'plan', aim: 'cost', wiring, gap: null, reasons: [] };
  const file = wiringFile({ record: true }, board, shop);
  if (file === null) throw new Error('nothing is to be written');
  return { board, kit: kitOf(kit.board, kit.catalogue), answer, file };
}

it('is none where nothing is to be recorded', () => {
  expect(wiringFile({ record: false }, 'board.yaml', undefined)).toBe(null);
});

it('gets the plan', async () => {
  const { board, kit, answer, file } = await opened('open.yaml');
  expect([await file.areWritable(), await file.write(kit, answer)]).toEqual([true, true]);
  expect(written).toBe(`Recorded in ${board}: the next question starts from this plan.\n`);
  expect(await readFile(board, 'utf8')).toContain('volts: 9, lead: 1}');
});

it('that has changed since it was read stays as it is', async () => {
  const { board, kit, answer, file } = await opened('changed.yaml');
  expect(await file.areWritable()).toBe(true);
  await appendFile(board, '# more\n');
  const before = await readFile(board, 'utf8');
  expect(await file.write(kit, answer)).toBe(false);
  expect(written).toBe(`${board}: the file has changed since it was read. Nothing was recorded; ask again.\n`);
  expect(await readFile(board, 'utf8')).toBe(before);
});

it('is refused beforehand where it is no ordinary file', async () => {
  const file = wiringFile({ record: true }, '/dev/null', undefined);
  expect(await file?.areWritable()).toBe(false);
  expect(written).toBe('/dev/null: --record writes into the board file, and this is no ordinary file.\n');
});
