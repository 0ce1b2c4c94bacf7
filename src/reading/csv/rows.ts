import type { Words } from '../../domain/finding.js';

/** A cell of a table, without blanks around it, and where it stands. Offsets are UTF-16 units from the start of the text. */
export type PlacedCell = {
  readonly text: string;
  /** Of the first sign of its text; of an empty cell, where its text would stand. */
  readonly offset: number;
};

export type CsvRow = {
  readonly cells: readonly PlacedCell[];
  readonly offset: number;
  /** Past its last sign. */
  readonly end: number;
};

export type Separator = ',' | ';' | '\t';

/** The rows of a table, empty ones left out, or the first thing that makes it none. */
type ParsedRows =
  | { readonly kind: 'rows'; readonly rows: readonly CsvRow[] }
  | { readonly kind: 'not csv'; readonly offset: number; readonly words: Words };

/** Room for the largest catalogue with four banks to a supply. Bounds the memory of a parse. */
const mostRows = 20_000;

/** The rows from an offset on, as RFC 4180 has them but for blanks around cells. Line breaks must be single line feeds. */
export function parseRows(text: string, start: number, separator: Separator): ParsedRows {
  const rows: CsvRow[] = [];
  for (let at = start; at < text.length;) {
    if (rows.length === mostRows) return { kind: 'not csv', offset: start, words: tooLong };
    const row = rowAt(text, at, separator);
    if ('kind' in row) return row;
    rows.push(row);
    at = row.end + 1;
  }
  return { kind: 'rows', rows: rows.filter(isFilled) };
}

const isFilled = ({ cells }: CsvRow): boolean => cells.some(({ text }) => text !== '');

type Refused = Extract<ParsedRows, { kind: 'not csv' }>;

function rowAt(text: string, offset: number, separator: Separator): CsvRow | Refused {
  const cells: PlacedCell[] = [];
  for (let start = offset; ;) {
    const found = cellAt(text, pastBlanks(text, start, separator), separator);
    if ('kind' in found) return found;
    const { end, ...cell } = found;
    cells.push(cell);
    if (text[end] !== separator) return { cells, offset, end };
    start = end + 1;
  }
}

/** The cell that begins there, up to the separator or the line feed behind it, or to the end of the text. */
function cellAt(text: string, first: number, separator: Separator): (PlacedCell & { readonly end: number }) | Refused {
  if (text[first] === '"') return quotedCellAt(text, first, separator);
  let end = first;
  while (end < text.length && text[end] !== separator && text[end] !== '\n') end += 1;
  const written = text.slice(first, end);
  const quote = written.indexOf('"');
  if (quote >= 0) return { kind: 'not csv', offset: first + quote, words: misplaced(separator) };
  return { text: written.trim(), offset: first, end };
}

function quotedCellAt(
  text: string,
  first: number,
  separator: Separator,
): (PlacedCell & { readonly end: number }) | Refused {
  let close = text.indexOf('"', first + 1);
  while (close >= 0 && text[close + 1] === '"') close = text.indexOf('"', close + 2);
  if (close < 0) return { kind: 'not csv', offset: first, words: neverClosed };
  const end = pastBlanks(text, close + 1, separator);
  const isEnd = end === text.length || text[end] === separator || text[end] === '\n';
  if (!isEnd) return { kind: 'not csv', offset: first, words: misplaced(separator) };
  const written = text.slice(first + 1, close).replaceAll('""', '"');
  return { text: written.trim(), offset: written === '' ? first : first + 1, end };
}

/** Blanks around cells count for nothing. */
function pastBlanks(text: string, start: number, separator: Separator): number {
  const isBlank = (sign: string): boolean => sign !== separator && sign !== '\n' && sign.trim() === '';
  let offset = start;
  while (offset < text.length && isBlank(text.charAt(offset))) offset += 1;
  return offset;
}

const nameOf: Readonly<Record<Separator, string>> = { ',': 'comma', ';': 'semicolon', '\t': 'tab' };

const neverClosed: Words = {
  message: 'this quotation mark is never closed.',
  remedy: 'Close it at the end of the cell.',
};

const misplaced = (separator: Separator): Words => ({
  message: `a cell has a quotation mark at a wrong place; cells here end at each ${nameOf[separator]}.`,
  remedy: 'Put the whole cell into quotation marks, and write two of them for one inside.',
});

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
