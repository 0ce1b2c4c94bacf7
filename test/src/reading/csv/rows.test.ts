import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { parseRows, separatorOf, type Separator } from '../../../../src/reading/csv/rows.js';

const separators = fc.constantFrom<Separator[]>(',', ';', '\t');
/** A cell's text with blanks around it, and how it is written. */
const signs = fc.constantFrom('a', 'é', '4', '"', ',', ';', '\t', ' ', '\n');
const written = fc.array(signs, { maxLength: 5 }).map((parts) => parts.join(''));
const blanks = fc.constantFrom('', ' ', '  ', '\u00a0');

const textsOf = (text: string, separator: Separator = ','): readonly (readonly string[])[] => {
  const parsed = parseRows(text, 0, separator);
  if (parsed.kind === 'not csv') throw new Error(parsed.words.message);
  return parsed.rows.map(({ cells }) => cells.map((cell) => cell.text));
};

describe('the rows of a table', () => {
  it('have the cells that were written, whatever they hold, and say where each stands', () => {
    const cell = fc.record({ text: written, before: blanks, after: blanks, isQuoted: fc.boolean() });
    const table = fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { maxLength: 4 });
    fc.assert(
      fc.property(table, separators, fc.boolean(), (rows, separator, hasEnd) => {
        const quoted = ({ text, isQuoted }: { readonly text: string; readonly isQuoted: boolean }): boolean =>
          isQuoted || /["\n]/.test(text) || text.includes(separator);
        const spelled = rows.map((cells) =>
          cells
            .map((each) => {
              const body = quoted(each) ? `"${each.text.replaceAll('"', '""')}"` : each.text;
              return each.before + body + each.after;
            })
            .join(separator),
        );
        const head = '# above\n';
        const text = head + spelled.join('\n') + (hasEnd ? '\n' : '');
        const parsed = parseRows(text, head.length, separator);
        if (parsed.kind === 'not csv') throw new Error(parsed.words.message);
        const expected = rows.map((cells) => cells.map((each) => each.text.trim()));
        expect(parsed.rows.map(({ cells }) => cells.map((each) => each.text))).toEqual(
          expected.filter((cells) => cells.some((each) => each !== '')),
        );
        for (const { cells, offset, end } of parsed.rows) {
          expect(text[offset - 1]).toBe('\n');
          expect(text[end] ?? '\n').toBe('\n');
          for (const each of cells) {
            const first = text.slice(each.offset).trimStart().replace(/^"+/, '"').charAt(0);
            expect(each.text === '' || each.text.startsWith(first)).toBe(true);
          }
        }
      }),
    );
  });

  it.each([
    ['a quotation mark inside a cell', 'a,b"c', 3, 'at a wrong place'],
    ['a quotation mark inside a later row', 'a\n"b"\n c"', 8, 'at a wrong place'],
    ['something behind a quoted cell', 'a,"b"c', 2, 'at a wrong place'],
    ['a quoted cell behind a quoted one', '"" "a"', 0, 'at a wrong place'],
    ['a quotation mark that is never closed', 'a,\n "b""\nc', 4, 'never closed'],
  ])('are none with %s, which is pointed at', (_what, text, offset, message) => {
    const parsed = parseRows(text, 0, ',');
    expect(parsed).toMatchObject({ kind: 'not csv', offset });
    expect(parsed.kind === 'not csv' ? parsed.words.message : '').toContain(message);
  });

  it('end with the text, and a separator begins a cell there', () => {
    expect(textsOf('a,b')).toEqual([['a', 'b']]);
    expect(textsOf('a,b,')).toEqual([['a', 'b', '']]);
    expect(textsOf('a;b\n', ',')).toEqual([['a;b']]);
    expect(textsOf('\n , \n\n')).toEqual([]);
    expect(textsOf('')).toEqual([]);
  });

  it('are 20,000 at the most, empty ones included', () => {
    expect(parseRows('a\n'.repeat(20_000), 0, ',').kind).toBe('rows');
    expect(parseRows('a\n'.repeat(20_001), 0, ',')).toMatchObject({ kind: 'not csv', offset: 0 });
    expect(parseRows('\n'.repeat(20_001), 0, ',').kind).toBe('not csv');
  });
});

it('the separator is what stands most often in the header, outside quotation marks', () => {
  expect(separatorOf('a;b;"c,d,e,f"')).toBe(';');
  expect(separatorOf('a\tb')).toBe('\t');
  expect(separatorOf('a')).toBe(',');
});
