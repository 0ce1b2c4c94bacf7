import { isDeepStrictEqual } from 'node:util';

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { nothingMoreStated, type Pedal } from '../../../../src/domain/pedal.js';
import { inputsFromText, type Inputs } from '../../../../src/reading/inputs-from-text.js';
import { boardFileOf, catalogueFileOf } from '../../../support/as-files.js';
import { boardTable, catalogueTable, type TableStyle } from '../../../support/as-table.js';
import { largerCase } from '../../../support/arbitraries.js';
import { share, trying } from '../../../support/runs.js';

const spaced = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const styles: fc.Arbitrary<TableStyle> = fc
  .record({
    separator: fc.constantFrom<TableStyle['separator'][]>(',', ';', '\t'),
    decimalSign: fc.constantFrom<TableStyle['decimalSign'][]>('.', ','),
    quoteAll: fc.boolean(),
    lineEnd: fc.constantFrom<TableStyle['lineEnd'][]>('\n', '\r\n'),
    byteOrderMark: fc.boolean(),
    header: fc.constantFrom<TableStyle['header'][]>(
      (key) => key,
      (key) => key.toUpperCase(),
      spaced,
    ),
    turn: fc.nat(20),
  })
  .map(({ turn, ...style }) => ({
    ...style,
    order: (keys) => [...keys.slice(turn % keys.length), ...keys.slice(0, turn % keys.length)],
  }));

function readFiles(board: readonly [string, string], catalogue: readonly [string, string]): Inputs {
  const result = inputsFromText({ file: board[0], text: board[1] }, { file: catalogue[0], text: catalogue[1] });
  if (result.kind === 'faulty') throw new Error(JSON.stringify(result.faults, null, 2));
  return result.value;
}

describe('a board and a catalogue that are written as files', () => {
  it('read back as they were, every field of a pedal that can be stated among what is drawn', () => {
    const drawn = new Set<string>();
    fc.assert(
      fc.property(largerCase(6, 5), ({ board, catalogue }) => {
        const found = readFiles(
          ['b.json', JSON.stringify(boardFileOf(board))],
          ['c.json', JSON.stringify(catalogueFileOf(catalogue))],
        );
        expect(found).toEqual(kitOf(board, catalogue));
        for (const pedal of board.pedals)
          for (const [field, value] of Object.entries(nothingMoreStated))
            if (!isDeepStrictEqual(pedal[field as keyof Pedal], value)) drawn.add(field);
      }),
      trying(300),
    );
    expect(drawn).toEqual(new Set(Object.keys(nothingMoreStated).filter((field) => !madeByReading.has(field))));
  });
});

/** No file of these boards assumes anything, or leaves out what a pedal needs. */
const madeByReading: ReadonlySet<string> = new Set(['assumed', 'kept']);

describe('a board and a catalogue as tables', () => {
  it('are what they are in JSON, however the tables are written', () => {
    fc.assert(
      fc.property(largerCase(6, 5), styles, styles, ({ board, catalogue }, boardStyle, shopStyle) => {
        // A table of nothing is no table.
        fc.pre(catalogue.supplies.length + catalogue.parts.length > 0);
        const files = { board: boardFileOf(board), catalogue: catalogueFileOf(catalogue) };
        const expected = readFiles(
          ['b.json', JSON.stringify(files.board)],
          ['c.json', JSON.stringify(files.catalogue)],
        );
        const found = readFiles(
          ['b.csv', boardTable(files.board, boardStyle)],
          ['c.tsv', catalogueTable(files.catalogue, shopStyle)],
        );
        expect(found).toEqual(expected);
      }),
      trying(300),
    );
  });
});

const pieces = [
  ',',
  ';',
  '\t',
  '"',
  '""',
  '\n',
  '\r\n',
  '#',
  '# ',
  'sep=;',
  '/',
  '-',
  '9,5',
  '1.800',
  '{',
  '[9, 12]',
  'x',
  ' ',
  '\0',
  '\ud800',
  ': ',
];
const edit = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.integer({ min: 0, max: 12 }),
  insert: fc.oneof(fc.constantFrom(...pieces), fc.constant(''), fc.string({ unit: 'binary', maxLength: 4 })),
});

describe('any table whatever', () => {
  it('never throws: it is read, or its faults stand inside it', () => {
    let faulty = 0;
    fc.assert(
      fc.property(
        largerCase(3, 2),
        styles,
        fc.array(edit, { minLength: 1, maxLength: 4 }),
        ({ board, catalogue }, style, edits) => {
          const changed = (text: string): string =>
            edits.reduce((current, { at, length, insert }) => {
              const start = Math.floor(at * current.length);
              return current.slice(0, start) + insert + current.slice(start + length);
            }, text);
          const texts: Readonly<Record<string, string>> = {
            'b.csv': changed(boardTable(boardFileOf(board), style)),
            'c.csv': changed(catalogueTable(catalogueFileOf(catalogue), style)),
          };
          const [b = '', c = ''] = Object.values(texts);
          const result = inputsFromText({ file: 'b.csv', text: b }, { file: 'c.csv', text: c });
          if (result.kind === 'read') return;
          faulty += 1;
          for (const fault of result.faults) {
            const text = (texts[fault.file] ?? '').replace(/^\uFEFF/, '');
            // A binary file is refused before anybody knows that its lines end in a lone carriage return.
            const lines = text.split(text.includes('\0') ? '\n' : /\r\n?|\n/);
            expect(fault.line).toBeGreaterThanOrEqual(1);
            expect(fault.line).toBeLessThanOrEqual(lines.length);
            expect(fault.column).toBeGreaterThanOrEqual(1);
            expect(fault.column).toBeLessThanOrEqual((lines[fault.line - 1] ?? '').length + 1);
            expect(fault.message).not.toBe('');
            expect(fault.remedy).not.toBe('');
            expect(fault.message).not.toContain('something else');
          }
        },
      ),
      trying(500),
    );
    expect(faulty).toBeGreaterThan(share(200));
  });

  it('of signs only never throws either', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 40 }), (signs) => {
        const result = inputsFromText({ file: 'b.csv', text: signs.join('') }, null);
        expect(result.kind).toBe('faulty');
      }),
      trying(500),
    );
  });
});
