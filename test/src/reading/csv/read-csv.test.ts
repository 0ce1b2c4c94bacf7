import { describe, expect, it } from 'vitest';

import { microamps, millivolts } from '../../../../src/domain/quantities.js';
import { boardTable, readBoard } from './tables.js';

describe('a table of pedals', () => {
  it('is the board that its rows and the lines above them say', () => {
    const board = readBoard(boardTable('Name,MILLIAMPS,volts,high gain', 'Echo,180,9,', 'Fuzz,4.5,9/18,TRUE'));
    expect(board).toMatchObject({
      name: 'tour',
      currency: { code: 'EUR' },
      policy: { headroom: { chained: { numerator: 2, denominator: 1 } } },
      pedals: [
        { id: 'echo', name: 'Echo', draw: { microamps: 180_000 }, highGain: false, assumed: { power: 'DC' } },
        {
          id: 'fuzz',
          accepts: { kind: 'listed', millivolts: [9000, 18_000] },
          draw: { microamps: 4500 },
          highGain: true,
        },
      ],
    });
  });

  it.each([
    ['commas', 'name,volts,milliamps\nEcho,9,"4,5"'],
    ['semicolons', 'name;volts;milliamps\nEcho;9;4,5'],
    ['tabs', 'name\tvolts\tmilliamps\nEcho\t9\t4,5'],
    ['semicolons and decimal points', 'name;volts;milliamps\nEcho;9;4.5'],
    ['blanks around cells', 'name , volts, milliamps\n Echo , 9 ,  "4.5" '],
    ['everything quoted', '"name","volts","milliamps"\r\n"Echo","9","4.5"\r\n'],
    ['old line ends', 'name;volts;milliamps\rEcho;9;4,5\r'],
    ['empty rows and cells', 'name,volts,milliamps,alone,,\n,,,,,\n\nEcho,9,4.5,,,\n,,,,,\n'],
  ])('with %s is read', (_name, table) => {
    expect(readBoard(boardTable(table)).pedals).toMatchObject([
      { name: 'Echo', accepts: { millivolts: [9000] }, draw: { kind: 'flat', microamps: 4500 } },
    ]);
  });

  it('may say at its top what separates its cells, and begin with a byte order mark', () => {
    const text = `\uFEFFsep=;\n${boardTable('name;volts;milliamps;inlet', 'Echo;9;10;a,b,c')}`;
    expect(readBoard(text).pedals).toMatchObject([{ inlet: 'a,b,c' }]);
  });

  it('may have its settings in quoted cells with empty ones behind, as spreadsheets write them', () => {
    const text = boardTable('name,volts,milliamps', 'Echo,9,10').replace(/^(# .*)$/gm, '"$1",,');
    expect(readBoard(text).currency.code).toBe('EUR');
    const bare = boardTable('name;volts;milliamps', 'Echo;9;10').replace(/^(# .*)$/gm, '$1;;');
    expect(readBoard(bare).currency.code).toBe('EUR');
  });

  it('takes text as text: a name of digits, quotes, line breaks, the separator', () => {
    const board = readBoard(boardTable('name,id,volts,milliamps', '27,a,9,1', '"Say ""hey"", or', 'not",b,9,1'));
    expect(board.pedals.map(({ name }) => name)).toEqual(['27', 'Say "hey", or\nnot']);
  });

  it('takes lists between slashes, ranges, and what YAML writes', () => {
    const board = readBoard(
      boardTable(
        'name;volts;milliamps',
        'A;9 / 12;300/230',
        'B;9-18;100',
        'C;9,5 – 18;100',
        'D;9 to 18;100',
        'E;[9, 12];{9: 300, 12: 230}',
        'F;9/12;100',
      ),
    );
    const two = { kind: 'listed', millivolts: [9000, 12_000] };
    const perVoltage = {
      kind: 'per voltage',
      microamps: new Map([
        [millivolts(9000), microamps(300_000)],
        [millivolts(12_000), microamps(230_000)],
      ]),
    };
    expect(board.pedals.map(({ accepts, draw }) => ({ accepts, draw }))).toMatchObject([
      { accepts: two, draw: perVoltage },
      { accepts: { kind: 'range', from: 9000, to: 18_000 } },
      { accepts: { kind: 'range', from: 9500, to: 18_000 } },
      { accepts: { kind: 'range', from: 9000, to: 18_000 } },
      { accepts: two, draw: perVoltage },
      { accepts: two, draw: { kind: 'flat', microamps: 100_000 } },
    ]);
  });

  it('as people write it: headings, units, yes and no, and what is not known', () => {
    const board = readBoard(
      boardTable(
        'Pedal;V;Current (A);Plug;Polarity;Digital;High gain;Later;Circuit;Ground;Shade',
        'Estuary echo;9 V DC;0,18;barrel 2.1;center negative;ja;;;;Negative;red',
        'Mole octave;9-18 V;0,03;Jack 3.5;?;no;x;yes;;unknown;',
        'Plover;?;500 mA;unknown;;1;;;;;blue',
        'Ruff;9/12;?;;;;;;fuzz;;',
      )
        .replace('chains: allow', 'chains: allow\n#   guess: 1.5\n#   noisePrice: 20')
        .replace('{power: DC', '{volts: 9, power: DC'),
    );
    expect(board.pedals).toMatchObject([
      {
        name: 'Estuary echo',
        accepts: { millivolts: [9000] },
        draw: { microamps: 180_000 },
        inlet: 'barrel-2.1',
        polarity: 'centre-negative',
        ground: 'negative',
        digital: true,
        kept: null,
        unknown: [],
      },
      { accepts: { from: 9000, to: 18_000 }, inlet: 'jack-3.5', highGain: true, digital: false, kept: 'later' },
      { name: 'Plover', draw: { microamps: 500_000 }, digital: true, kept: 'unread' },
      { name: 'Ruff', figure: 'guess', kept: null },
    ]);
    expect(board.pedals.map(({ unknown }) => unknown)).toEqual([
      [],
      ['polarity', 'ground'],
      ['inlet', 'volts'],
      ['milliamps'],
    ]);
  });
});
