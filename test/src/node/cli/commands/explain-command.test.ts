import { readFile } from 'node:fs/promises';

import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';

import { boardfeed, complaints, fixture, marramStreet, printedObject, scratchFiles, tideway } from '../command.js';

const scratch = scratchFiles();

const explaining = (...parameters: readonly string[]) => boardfeed(['explain', ...parameters]);
const stranger = fixture('boards/impossible.yaml');

describe('a board without a plan', () => {
  test('is explained with its reason and the ways out, and ends with 4', async () => {
    const ended = await explaining(stranger, marramStreet);
    expect(ended.code).toBe(4);
    expect(complaints(ended)).toBe('');
    expect(ended.output).toContain('So no plan can have power for Kiln-yard amplifier.');
    expect(ended.output).toContain('Leave out Kiln-yard amplifier.');
  });

  test('points to what to look for where there is no catalogue', async () => {
    const { code, output } = await explaining(fixture('boards/first-board.yaml'));
    expect(code).toBe(4);
    const words = output.replaceAll(/\s+/g, ' ');
    expect(words).toContain(
      'For the outputs and leads that would do ask boardfeed choose, without a catalogue as well.',
    );
    expect(words).toContain('There is no supply, neither owned nor for sale.');
    expect((await explaining(stranger, marramStreet)).output).not.toContain('ask boardfeed choose');
  });

  test('is one whose plans are over the budget where nothing else is in the way', async () => {
    const text = await readFile(fixture('boards/first-board.yaml'), 'utf8');
    const path = await scratch('tight.yaml', text.replace(/budget: 150/, 'budget: 5'));
    const { code, output } = await explaining(path, marramStreet);
    expect(code).toBe(4);
    expect(output).toMatch(/^First board: why no plan is within the budget\n14\.50 EUR over the budget/);
    expect((await explaining(stranger, marramStreet)).output).toMatch(/^Board with a stranger: why no plan exists\n/);
  });

  test('is one JSON object with --json', async () => {
    const ended = await explaining(stranger, marramStreet, '--json');
    expect(ended.code).toBe(4);
    expect(printedObject(ended)).toMatchObject({
      format: 'boardfeed/explain/1',
      status: 'impossible',
      pedal: null,
      conflicts: [{ pedals: ['kiln-yard-amplifier'], facts: [], size: 'smallest' }],
      ways: [{ change: 'supply' }, { change: 'pedal', pedals: ['kiln-yard-amplifier'] }],
      plan: null,
    });
  });

  test('is told to be so where a pedal was asked about', async () => {
    const ended = await explaining(stranger, marramStreet, 'bogbean-drive');
    expect(ended.code).toBe(4);
    expect(ended.output).toMatch(/It is not among the pedals in\s+the way\./);
  });
});

describe('a board with a plan', () => {
  test('says why a pedal sits where it does', async () => {
    const ended = await explaining(...tideway, 'chapel-drive');
    expect(ended.code).toBe(0);
    expect(ended.output).toContain('It sits on Quay 6 output 6 at 18 V.');
    expect(ended.output).toContain('1 pedal more off the preferred volts');
  });

  test('says so as JSON, too', async () => {
    const ended = await explaining(...tideway, 'chapel-drive', '--json');
    expect(printedObject(ended)).toMatchObject({
      status: 'proven',
      pedal: 'chapel-drive',
      complete: true,
      seat: { feed: { supply: 'quay-6' }, elsewhere: [{ supply: 'quay-6', answer: 'plan' }] },
    });
  });
});

describe('a board that describes all its gear', () => {
  const alone = fixture('boards/new-pedal.yaml');

  test('needs no catalogue', async () => {
    const ended = await explaining(alone);
    expect(ended.code).toBe(0);
    expect(ended.output).toContain('It costs nothing, powers all 6 pedals from 1 supply');
    expect(printedObject(await explaining(alone, '--json'))).toMatchObject({ status: 'proven', pedal: null });
  });

  test('is asked about a pedal without one, too', async () => {
    const ended = await explaining(alone, 'cockle-fuzz');
    expect(ended.code).toBe(0);
    expect(ended.output).toContain('why Cockle fuzz sits where it does');
    const unknown = await explaining(alone, 'cockle-fuz');
    expect(unknown).toMatchObject({ code: 3, output: '' });
    expect(unknown.errors).toContain('Did you mean cockle-fuzz? There is no file of that name either.');
  });

  test('may have no plan, and is not told to buy', async () => {
    const board = parse(await readFile(alone, 'utf8')) as { readonly pedals: readonly object[] };
    const thirsty = { name: 'Thirsty', volts: 9, milliamps: 5000, figure: 'label' };
    const ended = await explaining(await scratch('board.yaml', { ...board, pedals: [...board.pedals, thirsty] }));
    expect(ended.code).toBe(4);
    expect(ended.output).toContain('What you own cannot power all 7 pedals by the rules.');
    expect(ended.output).toContain('Nothing that you own has an output for Thirsty.');
    expect(ended.output).toContain('Leave out Thirsty.');
  });
});

describe('what cannot be explained', () => {
  test('an unknown pedal is named with the near spelling, and ends with 3', async () => {
    const ended = await explaining(...tideway, 'chapel-drivve');
    expect(ended).toMatchObject({ code: 3, output: '' });
    expect(ended.errors).toContain('the board has no pedal "chapel-drivve". Did you mean chapel-drive?');
  });

  test('a file that is not there ends with 3, no files with 2', async () => {
    expect(await explaining('nowhere.yaml', marramStreet)).toMatchObject({ code: 3, output: '' });
    expect(await explaining()).toMatchObject({ code: 2, output: '' });
  });

  test('a search without time ends with 5', async () => {
    const ended = await explaining(...tideway, '--time', '0.000001');
    expect(ended.code).toBe(5);
    expect(ended.output).toMatch(/Give it more\s+time/);
  });
});
