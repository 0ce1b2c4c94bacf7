import { CsvError, parse } from 'csv-parse/sync';

import type { Words } from '../../domain/finding.js';

/** A cell of a table, without blanks around it, and where it stands. Offsets are UTF-16 units from the start of the text. */
export type Cell = {
  readonly text: string;
  /** Of the first sign of its text; of an empty cell, where its text would stand. */
  readonly offset: number;
};

export type Row = {
  readonly cells: readonly Cell[];
  readonly offset: number;
  /** Past its last sign. */
  readonly end: number;
};

export type Separator = ',' | ';' | '\t';

/** The rows of a table, empty ones left out, or the first thing that makes it none. */
export type ParsedRows =
  | { readonly kind: 'rows'; readonly rows: readonly Row[] }
  | { readonly kind: 'not csv'; readonly offset: number; readonly words: Words };

/** Room for the largest catalogue with four banks to a supply. Bounds the memory of a parse. */
const mostRows = 20_000;

/** The rows from an offset on. Line breaks must be single line feeds. */
export function parseRows(text: string, start: number, separator: Separator): ParsedRows {
  const table = text.slice(start);
  try {
    const records = parse(table, {
      delimiter: separator,
      record_delimiter: '\n',
      relax_column_count: true,
      ltrim: true,
      rtrim: true,
      to: mostRows + 1,
    });
    if (records.length > mostRows) return { kind: 'not csv', offset: start, words: tooLong };
    return { kind: 'rows', rows: placedRows(records, text, start, separator).filter(isFilled) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { kind: 'not csv', offset: start + offsetOf(error, table, separator), words: wordsOf(error, separator) };
  }
}

const isFilled = ({ cells }: Row): boolean => cells.some(({ text }) => text !== '');

/** The parser tells values only: where they stand follows from how many signs each of them takes in the text. */
function placedRows(
  records: readonly (readonly string[])[],
  text: string,
  start: number,
  separator: Separator,
): readonly Row[] {
  let offset = start;
  return records.map((values) => {
    const rowOffset = offset;
    const cells = values.map((value): Cell => {
      const first = pastBlanks(text, offset, separator);
      const isQuoted = text[first] === '"';
      const quotes = value.split('"').length - 1;
      const end = first + (isQuoted ? value.length + quotes + 2 : value.length);
      offset = pastBlanks(text, end, separator) + 1;
      return { text: value.trim(), offset: isQuoted && value !== '' ? first + 1 : first };
    });
    return { cells, offset: rowOffset, end: offset - 1 };
  });
}

/** Those that the parser takes off: all but line breaks and the separator. */
function pastBlanks(text: string, start: number, separator: Separator): number {
  let offset = start;
  while (offset < text.length && text[offset] !== separator && ' \t\f'.includes(text[offset] ?? '.')) offset += 1;
  return offset;
}

/** The parser names the line, and the number of the cell in its row: its quote is looked up there. */
function offsetOf({ lines, index }: CsvError, table: string, separator: Separator): number {
  const before = table.split('\n').slice(0, Number(lines) - 1);
  const lineStart = before.reduce((sum, line) => sum + line.length + 1, 0);
  const line = table.slice(lineStart).split('\n', 1).join('');
  let cell = 0;
  for (let count = 0; count < Number(index); count += 1) cell = Math.max(cell, line.indexOf(separator, cell) + 1);
  return lineStart + Math.max(0, line.indexOf('"', cell));
}

const nameOf: Readonly<Record<Separator, string>> = { ',': 'comma', ';': 'semicolon', '\t': 'tab' };

function wordsOf({ code }: CsvError, separator: Separator): Words {
  if (code === 'CSV_QUOTE_NOT_CLOSED')
    return { message: 'this quotation mark is never closed.', remedy: 'Close it at the end of the cell.' };
  return {
    message: `a cell has a quotation mark at a wrong place; cells here end at each ${nameOf[separator]}.`,
    remedy: 'Put the whole cell into quotation marks, and write two of them for one inside.',
  };
}

const tooLong: Words = {
  message: `the table has more than ${mostRows} rows, the most that are read.`,
  remedy: 'Leave out what is not needed.',
};

/** What separates the cells: whatever stands most often in the header, outside quotation marks; a comma when nothing does. */
export function separatorOf(header: string): Separator {
  const outside = header.replace(/"[^"]*"/g, '');
  const count = (sign: string): number => outside.split(sign).length - 1;
  const separators: readonly Separator[] = [',', ';', '\t'];
  return separators.reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}
