import { describe, expect, test } from 'vitest';

import { boardfeed, complaints, fixture, marramStreet, printedObject, scratchFiles, tideway } from '../command.js';

const scratch = scratchFiles();
const sparing = (...parameters: readonly string[]) => boardfeed(['spare', ...parameters]);
const hurried = fixture('boards/hurried.yaml');

describe('what a board has to spare', () => {
  test('is told with what each output has left', async () => {
    const ended = await sparing(...tideway);
    expect(ended.code).toBe(0);
    expect(complaints(ended)).toBe('');
    expect(ended.output).toMatch(/none as it is plugged, 1 when others may\s+move/);
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
  test('is told with the moves that it takes', async () => {
    const ended = await sparing(...tideway, '--add', '9 V, 300 mA, digital');
    expect(ended.code).toBe(0);
    expect(ended.output).toContain('One more pedal: yes, when Chapel drive moves, nothing bought.');
    expect(ended.output).toMatch(/Assumed: [^]*the new pedal/);
  });

  test('is told as JSON with the whole plan, or that it does not fit', async () => {
    const yes = await sparing(...tideway, '--add', '9 V, 300 mA, digital', '--json');
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
