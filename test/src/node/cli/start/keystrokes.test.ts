import { readFile, writeFile } from 'node:fs/promises';
import { PassThrough } from 'node:stream';

import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import type { Asker } from '../../../../../src/node/cli/start/asker.js';
import { clackAsker } from '../../../../../src/node/cli/start/clack-asker.js';
import { signsFor } from '../../../../../src/node/cli/start/label-help.js';
import { startWith } from '../../../../../src/node/cli/start/start-command.js';
import { boardfeed, complaints, marramStreet } from '../command.js';
import { starting } from './starting.js';

const { at, printed } = starting({ catalogue: false });

/** A person at the prompts of a terminal, who has for each question the keys to press. */
function typist(keys: readonly string[], width: number) {
  const [input, output] = [new PassThrough(), Object.assign(new PassThrough(), { columns: width })];
  const shown: string[] = [];
  output.setEncoding('utf8').on('data', (text: string) => shown.push(text));
  const ahead = [...keys];
  const terminal = clackAsker({ input, output, width });
  const press = <Answer>(answer: Promise<Answer>): Promise<Answer> => {
    // The prompt listens by now.
    setImmediate(() => input.write(ahead.shift() ?? '\u0003'));
    return answer;
  };
  const asker: Asker = {
    say: terminal.say,
    text: async (question, options) => press(terminal.text(question, options)),
    choose: async (question, choices) => press(terminal.choose(question, choices)),
    confirm: async (question, initial) => press(terminal.confirm(question, initial)),
  };
  return { asker, shown: () => shown.join(''), left: () => ahead };
}

const enter = '\r';
/** Six pedals, three of them with labels of which something is missing. */
const pedals = [
  'gorse drive 9v 8 c-',
  'heath fuzz 9v',
  'linnet chorus 9v 40',
  'ouzel delay 9v 250 c-',
  'plover reverb 500ma c-',
  'ruff tuner',
  // That is all.
  '',
];
/** As most pedals are; a budget; what quiet is worth, any mains, nothing owned: as Enter takes them. */
const rest = ['m', '120', '', '', ''];
const keys = [...pedals, ...rest].map((line) => `${line}${enter}`);

/** As a till exports it. */
const table = `Article;Price;In stock;Outputs;Isolated;Voltage;Output current;Plug;Polarity;Regulated
Rowan ten;80,00 €;2;10;yes;9 V DC;750 mA;barrel 2.1;centre negative;yes
Reversing lead;4,00 €;20;;;;;barrel 2.1 to barrel 2.1;reverses;
Gift voucher;50,00 €;;;;;;;;
`;

describe('six pedals in a terminal', () => {
  it('take 120 keystrokes in all', async () => {
    const { asker, left } = typist(keys, 80);
    const path = at('six.yaml');
    expect(await startWith(asker, signsFor(true), path, { catalogue: false })).toBe(0);
    expect(left()).toEqual([]);
    expect(keys.join('').length).toBeLessThanOrEqual(120);
    const board = parse(await readFile(path, 'utf8')) as { readonly pedals: readonly object[] };
    expect(board).toMatchObject({
      assume: { power: 'DC', inlet: 'barrel-2.1', ground: 'negative', volts: 9 },
      policy: { budget: 120, noisePrice: 20 },
    });
    expect(board.pedals).toMatchObject([
      { name: 'gorse drive', polarity: 'centre-negative', volts: 9, milliamps: 8, highGain: true },
      { name: 'heath fuzz', polarity: 'unknown', ground: 'unknown', volts: 9, milliamps: 'unknown', circuit: 'fuzz' },
      { name: 'linnet chorus', polarity: 'unknown', volts: 9, milliamps: 40 },
      { name: 'ouzel delay', polarity: 'centre-negative', volts: 9, milliamps: 250, digital: true },
      { name: 'plover reverb', polarity: 'centre-negative', volts: 'unknown', milliamps: 500, digital: true },
      { name: 'ruff tuner', polarity: 'unknown', volts: 'unknown', milliamps: 'unknown', circuit: 'tuner' },
    ]);
    const chosen = await boardfeed(['choose', path, marramStreet]);
    expect(chosen.code, complaints(chosen)).toBe(0);
    expect(chosen.output.replaceAll(/\s+/g, ' ')).toContain(
      '6 pedals: 2 powered, 2 right for either reading, 2 places kept',
    );
  });

  it('take one more to see what to buy and have it on paper, where the table of a shop lies beside the board', async () => {
    const path = at('six.yaml');
    await writeFile(at('shop.csv'), table);
    expect([`boardfeed start${enter}`, ...keys, enter].join('').length).toBeLessThanOrEqual(137);
    const { asker, shown, left } = typist([...keys, enter], 80);
    expect(await startWith(asker, signsFor(true), path, { catalogue: false })).toBe(0);
    expect(left()).toEqual([]);
    const asked = shown()
      .replaceAll(/\u001b\[[\d;]*m|│/g, '')
      .replaceAll(/\s+/g, ' ');
    expect(asked).toContain('what to buy from shop.csv, and write the sheet to print, six.sheet.html?');
    expect(printed.errors).toMatch(/Gift voucher.*left out|left out.*Gift voucher/s);
    expect(printed.output.replaceAll(/\s+/g, ' ')).toContain('2 right for either reading, 2 places kept');
    expect(await readFile(at('six.sheet.html'), 'utf8')).toContain('Rowan ten');
  });

  it.each([
    ['no', { tables: ['shop.csv'], key: 'n' }],
    ['Escape', { tables: ['shop.csv'], key: '\u001b' }],
    ['Ctrl-C', { tables: ['shop.csv'], key: '\u0003' }],
    ['two tables', { tables: ['shop.csv', 'other.csv'], key: null }],
  ])('end with the file where nothing is to be chosen yet: %s', async (_, { tables, key }) => {
    for (const name of tables) await writeFile(at(name), table);
    const { asker, left } = typist([...keys, ...(key === null ? [] : [key])], 80);
    expect(await startWith(asker, signsFor(true), at('six.yaml'), { catalogue: false })).toBe(0);
    expect(left()).toEqual([]);
    expect(printed.output).toBe('');
    expect(printed.errors).toContain('six.yaml CATALOGUE');
  });

  it.each([60, 80])('fit on a screen of %i columns, no word broken', async (width) => {
    const { asker, shown } = typist(keys, width);
    await startWith(asker, signsFor(true), undefined, { catalogue: false });
    const lines = shown()
      .replaceAll(/\u001b\[[\d;]*m/g, '')
      // Where the cursor goes somewhere else, what follows is another line.
      .split(/[\r\n]+|\u001b\[[\d;?]*[A-Za-z]/);
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
    expect(lines.filter((line) => line.length === width && !line.endsWith(' '))).toEqual([]);
  });
});
