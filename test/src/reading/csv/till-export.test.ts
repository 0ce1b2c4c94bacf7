import { readFileSync } from 'node:fs';

import { describe, expect, it } from 'vitest';

import { convertTable } from '../../../../src/reading/csv/convert-table.js';
import { inputsFromText, type Inputs } from '../../../../src/reading/inputs-from-text.js';
import type { ReadResult } from '../../../../src/reading/faults/input-fault.js';
import { boardText } from '../texts.js';

const text = readFileSync(new URL('../../../../fixtures/tables/till-export.csv', import.meta.url), 'utf8');

const read = (table: string, skipBadRows = true, currency = 'EUR'): ReadResult<Inputs> =>
  inputsFromText(
    { file: 'b.yaml', text: boardText({ currency: `currency: ${currency}` }) },
    { file: 'till.csv', text: table },
    { skipBadRows },
  );

function shopIn(table: string): Inputs['catalogue'] {
  const result = read(table);
  if (result.kind === 'faulty') throw new Error(JSON.stringify(result.faults));
  return result.value.catalogue;
}

const setting = (volts: number, milliamps: number) => ({ millivolts: volts * 1000, rating: milliamps * 1000 });

describe('a table as a shop has it', () => {
  it('is read as it is, but for the rows that nobody could use', () => {
    const mains = { from: 100_000, to: 240_000 };
    const plain = { power: 'DC', plug: 'barrel-2.1', polarity: 'centre-negative' };
    const { supplies, parts, currency } = shopIn(text);
    expect(currency.code).toBe('EUR');
    expect(supplies.map(({ id }) => id)).toEqual(['501', '502', '504', '510', '520']);
    expect(supplies).toMatchObject([
      {
        name: 'Perch nine',
        price: 990,
        stock: 12,
        source: { volts: mains },
        total: null,
        banks: [{ outputs: 1, isolated: true, ...plain, settings: [setting(9, 500)] }],
      },
      { name: 'Perch nine, turned', banks: [{ ...plain, polarity: 'centre-positive' }] },
      {
        source: { volts: { from: 220_000, to: 240_000 } },
        banks: [{ power: 'AC', polarity: null, settings: [setting(9, 1000)] }],
      },
      { price: 103_900, total: { microamps: 800_000 }, banks: [{ outputs: 5, isolated: false }] },
      {
        total: { microamps: 1_500_000 },
        banks: [
          { firstOutput: 1, outputs: 6, isolated: true },
          {
            firstOutput: 7,
            outputs: 2,
            switching: 'each',
            settings: [setting(9, 300), setting(12, 250), setting(18, 150)],
          },
        ],
      },
    ]);
    expect(parts).toMatchObject([
      { id: '601', name: 'Turning lead', price: 400, stock: 20, reverses: true, role: { kind: 'adapter' } },
      { id: '602', fits: 'barrel-2.1', gives: 'jack-3.5', reverses: false },
      { id: '603', fits: 'barrel-2.1', gives: 'barrel-2.1', role: { kind: 'chain', tails: 5 } },
      { id: '701', name: 'Nine-volt block' },
    ]);
  });

  it('says by name what was left out of it, with the reason, and once what is not used', () => {
    const result = read(text);
    expect(result.kind === 'read' ? result.notes : []).toEqual([
      'till.csv: left out "Grey adapter" (line 4): Open circuit volts: missing; an output that is not regulated gives more volts without a load, and they bear on safety.',
      'till.csv: left out "Gift voucher" (line 13): says neither what an output gives nor what a lead fits: it is no supply, no lead and no battery.',
      'till.csv: not used: the column "Shelf".',
      'till.csv: not used: the remarks "best seller", "without a load not measured".',
    ]);
  });

  it('sells batteries whose names tell their type, and leaves others out by name', () => {
    const batteriesIn = (result: ReadResult<Inputs>) =>
      result.kind === 'read' ? result.value.catalogue.parts.filter(({ role }) => role.kind === 'battery') : null;
    expect(batteriesIn(read(text))).toMatchObject([
      {
        ...{ id: '701', name: 'Nine-volt block', price: 350, stock: 40 },
        role: { type: '9V-block', millivolts: 9000, microampHours: 550_000 },
      },
    ]);
    for (const name of ['Round cell', 'AA pack of four', '4 x AA']) {
      const result = read(text.replace('Nine-volt block', name));
      expect(batteriesIn(result)).toEqual([]);
      expect(result.kind === 'read' ? result.notes?.[2] : '').toContain(`left out "${name}": of which type`);
    }
    const voltless = read(text.replace(';9 V;550 mAh', ';;550 mAh'));
    expect(voltless.kind === 'read' ? voltless.notes?.join('\n') : '').toMatch(
      /left out "Nine-volt block" .*: Voltage: missing/,
    );
  });

  it('keeps them where it is made a catalogue', () => {
    const named = { file: 'till.csv', text: { kind: 'text', text } } as const;
    const made = convertTable(named, () => ({}), { skipBadRows: true });
    expect(made.kind === 'read' ? made.value.yaml : '').toMatch(
      /\nbatteries:\n {2}- \{.*name: Nine-volt block.*type: 9V-block.*milliampHours: 550\}/,
    );
  });

  it('has faults in those rows, and no others, where they are not to be left out', () => {
    const result = read(text, false);
    expect(result).toMatchObject({
      kind: 'faulty',
      more: 0,
      canSkipRows: true,
      faults: [
        { line: 4, key: 'Grey adapter, Open circuit volts' },
        { line: 13, key: 'Gift voucher' },
      ],
    });
  });

  it('loses a supply as a whole where one of its rows is wrong: its limits may stand there', () => {
    const shop = shopIn(text.replace('300/250/150 mA', '300/250 mA'));
    expect(shop.supplies.map(({ name }) => name)).not.toContain('Sluice eight');
    expect(shop.supplies).toHaveLength(4);
  });

  it('is refused where no row would be left', () => {
    const [header = '', , , bad = ''] = text.split('\n');
    expect(read([header, bad, ''].join('\n'))).toMatchObject({ kind: 'faulty', faults: [{ line: 2 }] });
    expect(read([header, bad, ''].join('\n'))).not.toHaveProperty('canSkipRows');
  });

  it('tells faults of one cause once, with every row', () => {
    const result = read(text.replaceAll('centre negative', 'like the others'), false);
    const faults = result.kind === 'faulty' ? result.faults : [];
    const [first] = faults.filter(({ key }) => key === 'Polarity');
    expect(first).toMatchObject({ line: 2, message: expect.stringContaining('found "like the others"') as string });
    expect(first?.alike?.map(({ line, name }) => `${line} ${name ?? ''}`)).toEqual([
      '4 Grey adapter',
      '6 Weir five',
      '7 Sluice eight',
      '8 Sluice eight',
    ]);
    expect(faults).toHaveLength(3);
  });

  it('is never rid of a limit: what may be one and is not understood is a fault', () => {
    const faults = (table: string) => {
      const result = read(table);
      return result.kind === 'faulty' ? result.faults.map(({ key, remedy }) => `${key}: ${remedy}`) : [];
    };
    const remedy = /^(?=.*totalMilliamps)(?!.*[Rr]emove)/;
    expect(faults(text.replace('Total mA', 'Most amps at once'))).toEqual([expect.stringMatching(remedy)]);
    // A heading that says nothing, above figures that do.
    expect(faults(text.replace('Total mA', 'Sum').replace(';800;', ';800 mA;'))).toEqual([
      expect.stringMatching(remedy),
    ]);
  });
});

describe('the currency of a table', () => {
  it.each([
    ['9,90 €', 'EUR'],
    ['£9.90', 'GBP'],
    ['CHF 9.90', 'CHF'],
  ])('is told by %s', (price, code) => {
    const result = read(text.replaceAll(/[\d.]+,\d\d €/g, price), true, code);
    expect(result).toMatchObject({ kind: 'read', value: { catalogue: { currency: { code } } } });
  });

  it('is not told by a sign that several have, nor by none', () => {
    for (const price of ['$9.90', '9.90']) {
      const result = read(text.replaceAll(/[\d.]+,\d\d €/g, price));
      expect(result).toMatchObject({ kind: 'faulty', faults: [{ key: 'currency' }] });
    }
  });

  it('is one, and the one that is stated', () => {
    const twice = read(text.replace(';4,00 €', ';4,00 £'), false);
    expect(twice).toMatchObject({
      kind: 'faulty',
      faults: [{ line: 4 }, { line: 9, key: 'Turning lead' }, { line: 13 }],
    });
    expect(read(`# currency: USD\n${text}`, false, 'USD')).toMatchObject({
      faults: [{ line: 3, message: expect.stringContaining('a price in EUR, but the currency') as string }, {}, {}],
    });
  });
});
