import { LineCounter } from 'yaml';

import type { InputKind, Words } from '../../domain/finding.js';
import { longestText } from '../schema/schema-fields.js';
import type { LocatedEntry, LocatedMap } from '../text/located-tree.js';
import type { TreeOfText } from '../text/tree-of-text.js';
import type { TableKind } from './columns.js';
import { hasDecimalComma, type CellReading } from './figures.js';
import { readHeader } from './header.js';
import { tableKindOf, type Meanings } from './headings.js';
import { missingColumns, strayCells } from './misplaced.js';
import { parsePreamble } from './preamble.js';
import { currencyOfPrices } from './price-currency.js';
import { parseRows, separatorOf, type CsvRow, type Separator } from './rows.js';
import { entryOf, type CsvTable } from './table.js';
import { placesOf, type TablePlaces } from './table-places.js';
import { thingsOf, type Things } from './things.js';
import { withUnsaid } from './unsaid.js';

/** Whether a file is a table, by its name. */
export const isCsvName = (file: string): boolean => /\.(csv|tsv)$/i.test(file);

/** What a table of that kind makes. */
export const sourceOf = (kind: TableKind): InputKind => (kind === 'pedals' ? 'board' : 'catalogue');

/** A table as the board or catalogue that it makes: the same tree that a file in YAML has. */
export type CsvTree = TreeOfText & {
  readonly tableKind: TableKind;
  /** To say where in the table something stands; null when it was refused. */
  readonly places: TablePlaces | null;
};

export type TableOptions = {
  /** What is stated beside the table; it goes before what stands above its header. */
  readonly given?: ReadonlyMap<string, LocatedEntry>;
  /** The offsets of rows that are left out. */
  readonly without?: ReadonlySet<number>;
  /** What headings mean that are not understood. A table is one of supplies where this is given, whatever its headings say. */
  readonly meanings?: Meanings | undefined;
  /** Whether what neither a pedal's row nor `assume` says is taken for not known; else it is a fault. */
  readonly leavesOpen?: boolean | undefined;
};

/**
 * Reads a table. What it says of each thing stands in its rows; currency, policy and the like stand above it as lines
 * `# currency: EUR`, or are given beside it. Of these the name has a default, that of the file, and the currency may be told
 * by the signs at the prices.
 */
export function readCsv(
  file: string,
  original: string,
  { given = new Map(), without, meanings, leavesOpen = false }: TableOptions = {},
): CsvTree {
  // Lines and columns stay what they are.
  const text = original.replace(/\r\n?/g, '\n');
  const lines = lineCounterOf(text);
  const refuse = (offset: number, words: Words): CsvTree => ({
    kind: 'refused',
    offset,
    words,
    lines,
    ...unknownTable,
  });
  const separated = /^"?sep=([,;\t])"?[,;\t ]*(?:\n|$)/i.exec(text);
  const above = parsePreamble(text, separated?.[0].length ?? 0);
  if (above.kind === 'not yaml') return refuse(above.offset, above.words);
  const separator = separators.find((sign) => sign === separated?.[1]) ?? separatorOf(lineAt(text, above.end));
  const parsed = parseRows(text, above.end, separator);
  if (parsed.kind === 'not csv') return refuse(parsed.offset, parsed.words);
  const [header, ...all] = parsed.rows;
  if (header === undefined) return refuse(0, noTable);
  const rows = all.filter(({ offset }) => without?.has(offset) !== true);
  const kind = meanings === undefined ? tableKindOf(header.cells.map((cell) => cell.text)) : 'supplies';
  const { columns, misspelled, ignored, open, faults } = readHeader(kind, [header, ...rows], meanings);
  const missing = missingColumns({ kind, columns, missing: misspelled, rows }, header);
  const table: CsvTable = { kind, columns, missing: [...misspelled, ...missing.keys], rows };
  const reading: CellReading = {
    decimalCommas: separator !== ',' || all.some(({ cells }) => cells.some((cell) => hasDecimalComma(cell.text))),
    faults: [...above.preamble.faults, ...faults, ...missing.faults, ...strayCells(table, header)],
    lost: [...above.preamble.lost],
  };
  const entries = new Map([...above.preamble.entries, ...given]);
  const things = thingsOf(table, (key) => entries.get(key)?.value ?? null, reading);
  const stated = rootOf({ table, things, file, header, entries }, reading);
  const root = leavesOpen ? withUnsaid(stated) : stated;
  const places = placesOf(table, { header, ignored, open, separator, groups: things.groups });
  return { kind: 'tree', root, faults: reading.faults, lost: reading.lost, lines, tableKind: kind, places };
}

const separators: readonly Separator[] = [',', ';', '\t'];
const unknownTable = { tableKind: 'pedals', places: null } as const;

function lineAt(text: string, offset: number): string {
  const newline = text.indexOf('\n', offset);
  return text.slice(offset, newline < 0 ? text.length : newline);
}

function lineCounterOf(text: string): LineCounter {
  const lines = new LineCounter();
  for (let start = 0; start >= 0;) {
    lines.addNewLine(start);
    const newline = text.indexOf('\n', start);
    start = newline < 0 ? -1 : newline + 1;
  }
  return lines;
}

type Read = {
  readonly table: CsvTable;
  readonly things: Things;
  readonly file: string;
  readonly header: CsvRow;
  /** What stands above the table or is given beside it. */
  readonly entries: ReadonlyMap<string, LocatedEntry>;
};

function rootOf({ table, things, file, header, entries: above }: Read, reading: CellReading): LocatedMap {
  const entries = new Map(above);
  const { kind } = table;
  const nameKey = kind === 'pedals' ? 'board' : 'catalogue';
  if (!entries.has(nameKey)) {
    const name = nameOf(file);
    entries.set(nameKey, entryOf(0, { kind: 'scalar', offset: 0, value: name, written: name }));
  }
  const currency = currencyOfPrices(table, header, entries.get('currency'), reading);
  if (currency !== null) entries.set('currency', currency);
  const twice = entries.get(kind);
  if (twice !== undefined) reading.faults.push({ path: [kind], offset: twice.keyOffset, words: () => inTheRows(kind) });
  for (const [key, list] of things.lists) entries.set(key, entryOf(header.offset, list));
  return { kind: 'map', offset: 0, entries };
}

/** The name of the file without its folders and its ending. */
function nameOf(file: string): string {
  const stem = (file.split(/[/\\]/).at(-1) ?? '').replace(/\.[^.]*$/, '').trim();
  return stem === '' ? 'Table' : stem.slice(0, longestText);
}

const inTheRows = (kind: TableKind): Words => ({
  message: `the ${kind} stand in the rows of the table.`,
  remedy: 'Remove this line.',
});

const noTable: Words = {
  message: 'there is no table; its first row must name the columns.',
  remedy: 'Begin with a row such as name,volts,milliamps.',
};
