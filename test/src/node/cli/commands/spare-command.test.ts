import { readFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';

import { boardfeed, complaints, fixture, marramStreet, printedObject, scratchFiles, tideway } from '../command.js';

const scratch = scratchFiles();
const sparing = (...parameters: readonly string[]) => boardfeed(['spare', ...parameters]);
const hurried = fixture('boards/hurried.yaml');

describe('what a board has to spare', () => {
  test('is told with what each output has left', async () => {
    const ended = await sparing(...tideway);
    expect(ended.code).toBe(0);
    expect(complaints(ended)).toBe('');
    expect(ended.output).toMatch(/none as that plan has it, 1 when others may\s+move/);
    expect(ended.output).toContain('left: 184 mA');
  });

  test('is one JSON object with --json, and needs no catalogue where the gear is described', async () => {
    const ended = await sparing(...tideway, '--json');
    expect(ended.code).toBe(0);
    expect(printedObject(ended)).toMatchObject({
      format: 'boardfeed/spare/1',
      status: 'spare',
      basis: 'plan',
      complete: true,
      counted: { volts: 9, milliamps: 100 },
      asPlugged: { more: 0, largestDigital: { answer: 'fits', milliamps: 83, exposes: 0 } },
      replugged: { more: 1, largestDigital: { milliamps: 333 } },
      units: [{ supply: 'quay-6', unit: 1, totals: [{ of: 'supply', rating: 1800 }] }],
    });
    expect((await sparing(fixture('boards/new-pedal.yaml'))).code).toBe(0);
  });

  test('is written as a page with --report, which does not go with --add', async () => {
    const page = join(dirname(await scratch('beside.txt', '')), 'room.html');
    expect((await sparing(...tideway, '--report', page)).code).toBe(0);
    expect(await readFile(page, 'utf8')).toContain('what it has to spare</h1>');
    expect(complaints(await sparing(...tideway, '--report', page))).toContain('a file of that name already');
    const both = await sparing(...tideway, '--report', page, '--add', '9 V, 100 mA');
    expect([both.code, complaints(both)]).toEqual([2, expect.stringContaining('--report does not go with --add')]);
  });

  test('is not told of a wiring that breaks rules', async () => {
    const board = await scratch('board.yaml', {
      board: 'Wrong',
      currency: 'EUR',
      policy: { headroom: { alone: 1.2, chained: 2, supply: 1.2 }, guess: 1.5, chains: 'allow', noisePrice: 20 },
      assume: { power: 'DC', polarity: 'centre-negative', inlet: 'barrel-2.1', ground: 'negative' },
      pedals: [{ name: 'Echo', volts: 9, milliamps: 300, figure: 'label' }],
      owned: { supplies: ['quay-6'] },
      wiring: [{ pedal: 'echo', supply: 'quay-6', unit: 1, output: 1, volts: 9, parts: [] }],
    });
    const ended = await sparing(board, tideway[1]);
    expect(ended.code).toBe(4);
    expect(ended.output).toContain('The wiring breaks hard rules');
    expect(printedObject(await sparing(board, tideway[1], '--json'))).toMatchObject({
      status: 'unsafe',
      findings: [{ rule: 'current' }],
    });
  });
});

describe('one more pedal', () => {
  /** Tideway with a place for every pedal, as the best plan has it. */
  const plugged = async (): Promise<string> => {
    const board = parse(await readFile(tideway[0], 'utf8')) as object;
    const on = (pedal: string, output: number, volts: number) => ({ pedal, supply: 'quay-6', unit: 1, output, volts });
    const wiring = [on('estuary-echo', 5, 9), on('tarn-fuzz', 1, 9), on('chapel-drive', 6, 18)];
    return scratch('plugged.yaml', { ...board, wiring });
  };

  test('is told with the moves that it takes', async () => {
    const ended = await sparing(await plugged(), tideway[1], '--add', '9V 300mA digital');
    expect(ended.code).toBe(0);
    expect(ended.output).toContain('One more pedal: yes, when Chapel drive moves, nothing bought.');
    expect(ended.output).toMatch(/Assumed: [^]*the new pedal/);
  });

  test('may have a name in front, as on every line for a pedal', async () => {
    const ended = await sparing(await plugged(), tideway[1], '--add', 'moth delay 9 V 300 mA');
    expect(ended.output).toContain('One more pedal: yes, when Chapel drive moves, nothing bought.');
    expect(ended.output).toMatch(/Assumed: [^]*Moth delay/i);
    const json = await sparing(await plugged(), tideway[1], '--add', 'moth delay 9 V 300 mA', '--json');
    expect(printedObject(json)).toMatchObject({ answer: 'yes', pedal: 'moth-delay' });
  });

  test('moves nothing that is not plugged in', async () => {
    const ended = await sparing(...tideway, '--add', '9 V, 300 mA, digital');
    expect(ended.output).toContain('One more pedal: yes, and nothing else moves, nothing bought.');
    expect(ended.output).toMatch(/1 pedal stays, none moves, 3 are new/);
  });

  test('is told as JSON with the whole plan, or that it does not fit', async () => {
    const yes = await sparing(await plugged(), tideway[1], '--add', '9 V, 300 mA, digital', '--json');
    expect(printedObject(yes)).toMatchObject({
      format: 'boardfeed/spare-add/1',
      answer: 'yes',
      pedal: 'new-pedal',
      result: { format: 'boardfeed/plan/1', status: 'proven', moved: ['chapel-drive'] },
      bought: null,
    });
    const no = await sparing(...tideway, '--add', '9 V, 2000 mA', '--json');
    expect(no.code).toBe(4);
    expect(printedObject(no)).toMatchObject({ answer: 'no', bought: { status: 'impossible' } });
  });

  test('has to be understood', async () => {
    const ended = await sparing(...tideway, '--add', '9 V, 300 mA, digitl');
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toContain('--add: "digitl" is not understood. Did you mean digital?');
  });
});

test('a search without time ends with 5', async () => {
  const ended = await sparing(hurried, marramStreet, '--time', '0.000001');
  expect(ended.code).toBe(5);
});
