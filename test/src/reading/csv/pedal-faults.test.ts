import { describe, expect, it } from 'vitest';

import { above, boardTable, expectFault, faultsOf, shopTable } from './tables.js';

describe('what is wrong with a table of pedals', () => {
  const usual = (row: string): string => ['name', 'volts', 'milliamps'].join(row.includes(';') ? ';' : ',');
  /** A table of one row below the usual header, or of all these lines. */
  const table = (rows: string): string => boardTable(rows.includes('\n') ? rows : `${usual(rows)}\n${rows}`);

  it.each([
    [
      'another unit',
      'Echo,‸9 mA,10',
      'Echo, volts',
      'found "9 mA", which is text. Allowed: a number of volts, a list such as 9/12, a range 9-18 or unknown',
      'Write a number of volts',
    ],
    ['volts for a current', 'Echo,9,‸0.3 V', 'Echo, milliamps', 'found "0.3 V"', 'Write a number of milliamps'],
    ['an empty cell', 'name,volts,milliamps\nEcho,9,10\nFuzz,‸,10', 'Fuzz, volts', 'missing.', 'Fill in the cell.'],
    ['a short row', 'Echo,9‸', 'Echo, milliamps', 'missing.', 'Fill in the cell.'],
    ['zero', 'Echo,9,‸0', 'Echo, milliamps', 'found 0.', 'above 0'],
    ['four decimals', 'Echo;9;‸0,1234', 'Echo, milliamps', 'at most three decimals', 'Write 0.123.'],
    ['a word', 'name,volts,milliamps,figure\nEcho,9,10,‸lable', 'Echo, figure', 'found "lable"', 'Did you mean label?'],
    [
      'perhaps',
      'name,volts,milliamps,digital\nEcho,9,10,‸perhaps',
      'Echo, digital',
      'found "perhaps". Allowed: yes or no.',
      'Write yes or no.',
    ],
    ['thousands', 'Echo,9,"‸1,800"', 'Echo, milliamps', 'may mean 1800 or 1.8', 'Write 1800 or 1.8,'],
    ['a point for thousands', 'Echo;9;‸1.800', 'Echo, milliamps', 'may mean 1800 or 1.8', 'Write 1800 or 1.8,'],
    [
      'the same beside decimal commas',
      'name,volts,milliamps\nEcho,9,‸1.125\nFuzz,9,"4,5"',
      'Echo, milliamps',
      'may mean 1125 or 1.125',
      'Write 1125 or 1.1250,',
    ],
    [
      'two voltages or one',
      'Echo;‸9,12;10',
      'Echo, volts',
      'may mean 9.12 V, or 9 V and 12 V',
      'Write 9.12 for one voltage, or 9/12 for two.',
    ],
    [
      'more draws than volts',
      'Echo,9/12,‸1/2/3',
      'Echo, milliamps',
      'has 3 entries, but volts has 2',
      'one for each of them',
    ],
    ['a wrong draw at some volts', 'Echo,9/12,300/‸2x', 'Echo, milliamps', 'found "2x"', 'Write a number of milliamps'],
    ['thousands at some volts', 'Echo;9/12;300/‸1.800', 'Echo, milliamps', 'may mean 1800 or 1.8', 'Write 1800'],
    ['thousands in a range', 'Echo;9-‸1.800;1', 'Echo, volts', 'may mean 1800 or 1.8', 'Write 1800'],
    [
      'a repeated id',
      'name,volts,milliamps\nEcho,9,10\n‸Echo,9,10',
      'Echo, name',
      'makes the id "echo", which line 9 uses already',
      'Add an `id`',
    ],
    [
      'an unknown column that speaks of electricity',
      'name,volts,milliamps,‸Load limit\nEcho,9,10,12',
      'Load limit',
      'this column is not understood, and it may hold a limit',
      'Call it what it is: maxVolts',
    ],
    [
      'an unknown column with figures in units',
      'name,volts,milliamps,‸Colour\nEcho,9,10,\nFuzz,9,10,300 mA',
      'Colour',
      'this column is not understood, and it may hold a limit',
      'Call it Remark if it limits nothing.',
    ],
    [
      'a misspelled column',
      'name,volts,‸milliamp\nEcho,9,10\nFuzz,9,10',
      'milliamp',
      'unknown column',
      'Did you mean milliamps?',
    ],
    [
      'a misspelled column with its unit',
      'name,‸Vlots (V),milliamps\nEcho,9,10',
      'Vlots (V)',
      'unknown column',
      'Did you mean volts?',
    ],
    [
      'a figure that may be mA or A',
      'name,volts,Current\nEcho,9,‸0.5',
      'Echo, Current',
      'found "0.5" without a unit, which may mean 0.5 mA or 0.5 A',
      'Write 0.5 mA or 0.5 A',
    ],
    [
      'DC and AC in one row',
      'name,power,volts,milliamps\nEcho,DC,‸9 V AC,10',
      'Echo, volts',
      'says AC, but the power of the same row is DC',
      'Write the one that the label gives.',
    ],
    [
      'DC and AC in one cell',
      'Echo,‸9 V DC/AC,10',
      'Echo, volts',
      'says DC and AC at once',
      'Write the one that the label gives.',
    ],
    [
      'a repeated column',
      'name,volts,milliamps,‸Volts\nEcho,9,10,9',
      'Volts',
      'a second time: "volts" says the same',
      'Put all that they hold into one of them.',
    ],
    [
      'a missing column',
      '‸name,volts\nEcho,9\nFuzz,9',
      'milliamps',
      'there is no such column',
      'Add a column `milliamps`.',
    ],
    [
      'a decimal comma that ends a cell',
      'Echo,9,5,‸100',
      'Echo',
      'this row has 4 cells, but the header has 3',
      'such as "9,5"',
    ],
    [
      'a cell without a column',
      'name,volts,milliamps,\nEcho,9,10,‸red',
      'Echo',
      'a column without a name',
      'Name the column',
    ],
    ['a lost quotation mark', '‸"Echo,9,10', '', 'this quotation mark is never closed', 'Close it'],
    ['a quotation mark inside', 'Say ‸"hey",9,10', '', 'a quotation mark at a wrong place', 'write two of them'],
    ['text behind a quoted cell', 'Echo,‸"9"V,10', '', 'a quotation mark at a wrong place', 'write two of them'],
  ])('%s', (_what, rows, key, message, remedy) => {
    expectFault('board', table(rows), key, message, remedy);
  });

  it('what the lines above say is checked as in any file, at its place', () => {
    const rows = ['name,volts,milliamps', 'Echo,9,10', ''];
    const text = [above.replace('alone: 1.2', 'alone: ‸0.9'), ...rows].join('\n');
    expectFault('board', text, 'policy.headroom.alone', 'found 0.9', 'a factor from 1');
    const misspelled = [above.replace('# currency', '# ‸curency'), ...rows].join('\n');
    expectFault('board', misspelled, 'curency', 'unknown key', 'Did you mean currency?');
    const unclosed = [above.replace('ground: negative}', 'ground: negative'), ...rows].join('\n');
    expect(faultsOf('board', unclosed)).toMatchObject([
      { message: expect.stringContaining('not valid YAML') as string },
    ]);
    const twice = [above, '# ‸currency: USD', ...rows].join('\n');
    expectFault('board', twice, 'currency', 'stands here a second time; line 2 has the first', 'Keep the one');
    const inside = [above, '# ‸pedals: []', ...rows].join('\n');
    expectFault('board', inside, 'pedals', 'the pedals stand in the rows of the table', 'Remove this line.');
  });

  it('what is stated nowhere is asked for in the words of a table', () => {
    const faults = faultsOf('board', 'name,volts,milliamps,power,inlet,ground\nEcho,9,10,DC,barrel-2.1,negative\n');
    expect(faults).toMatchObject([
      {
        line: 1,
        column: 1,
        key: 'currency',
        remedy: expect.stringMatching(/line `# currency: …` above the header/) as string,
      },
      { line: 1, column: 1, key: 'policy', remedy: expect.stringContaining('boardfeed convert') as string },
      {
        line: 2,
        column: 1,
        key: 'Echo, Polarity',
        remedy: expect.stringContaining('in a line `# assume: {…}`') as string,
      },
    ]);
  });

  it('what is not known and stands nowhere else is asked for in the words of a table', () => {
    const [fault] = faultsOf('board', boardTable('name,volts,milliamps', 'Echo,?,10'));
    expect(fault).toMatchObject({
      key: 'Echo, volts',
      message: expect.stringMatching(/^unknown, and nothing is assumed/) as string,
      remedy: expect.stringMatching(/^State what is likely in a line `# assume: \{…\}` above the header/) as string,
    });
  });

  it.each([
    ['', 'there is no table'],
    ['# currency: EUR\n', 'there is no table'],
    ['\0', 'binary'],
    ['name,volts,milliamps\n', 'an empty list'],
  ])('%j', (text, message) => {
    expect(
      faultsOf('board', text)
        .map((fault) => fault.message)
        .join('\n'),
    ).toContain(message);
  });

  it('more rows than any board has are refused before they fill the memory', () => {
    expect(faultsOf('board', `name\n${'a\n'.repeat(1_000_000)}`)).toMatchObject([
      { message: expect.stringContaining('more than 20000 rows') as string },
    ]);
  });

  it('the two files the wrong way round are one fault', () => {
    const table = shopTable('id,name,price,outputs,isolated,volts,milliamps', 'one,One,10,1,true,9,500');
    expect(faultsOf('board', table)).toMatchObject([{ message: 'this is a catalogue, not a board.' }]);
    expect(faultsOf('shop', boardTable('name,volts,milliamps', 'Echo,9,10'))).toMatchObject([
      { message: 'this is a board, not a catalogue.' },
    ]);
  });
});
