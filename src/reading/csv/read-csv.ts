import { LineCounter } from 'yaml';

import type { InputKind, Words } from '../../domain/finding.js';
import { longestText } from '../schema/schema-fields.js';
import type { TreeFault } from '../text/build-tree.js';
import type { LocatedEntry, LocatedMap } from '../text/located-tree.js';
import type { TreeOfText } from '../text/tree-of-text.js';
import { hasDecimalComma, type CellReading } from './cells.js';
import { tableKindOf, type TableKind } from './columns.js';
import { readHeader } from './header.js';
import { pedalsOf } from './pedals.js';
import { parsePreamble } from './preamble.js';
import { parseRows, separatorOf, type CsvRow, type Separator } from './rows.js';
import { suppliesOf } from './supplies.js';
import { entryOf, type CsvTable } from './table.js';

/** Whether a file is a table, by its name. */
export const isCsvName = (file: string): boolean => /\.(csv|tsv)$/i.test(file);

/** What a table of that kind makes. */
export const sourceOf = (kind: TableKind): InputKind => (kind === 'pedals' ? 'board' : 'catalogue');

/** A table as the board or catalogue that it makes: the same tree that a file in YAML has. */
export type CsvTree = TreeOfText & { readonly tableKind: TableKind };

/**
 * Reads a table. What it says of each pedal or supply stands in its rows; currency, policy and the like stand above it as
 * lines `# currency: EUR`, or is given beside it. Of these only the name has a default: that of the file.
 */
export function readCsv(file: string, original: string, given: ReadonlyMap<string, LocatedEntry> = new Map()): CsvTree {
  // Lines and columns stay what they are.
  const text = original.replace(/\r\n?/g, '\n');
  const lines = lineCounterOf(text);
  const refuse = (offset: number, words: Words): CsvTree => ({ kind: 'refused', offset, words, lines, ...noKind });
  const stated = /^"?sep=([,;\t])"?[,;\t ]*(?:\n|$)/i.exec(text);
  const above = parsePreamble(text, stated?.[0].length ?? 0);
  if (above.kind === 'not yaml') return refuse(above.offset, above.words);
  const separator = separators.find((sign) => sign === stated?.[1]) ?? separatorOf(lineAt(text, above.end));
  const parsed = parseRows(text, above.end, separator);
  if (parsed.kind === 'not csv') return refuse(parsed.offset, parsed.words);
  const [header, ...rows] = parsed.rows;
  if (header === undefined) return refuse(0, noTable);
  const kind = tableKindOf(header.cells.map((cell) => cell.text));
  const { keys, missing, faults } = readHeader(kind, header);
  const table: CsvTable = { kind, keys, missing, rows };
  const reading: CellReading = {
    decimalCommas: separator !== ',' || rows.some(({ cells }) => cells.some((cell) => hasDecimalComma(cell.text))),
    faults: [...above.preamble.faults, ...faults, ...strayCells(table, header)],
    lost: [...above.preamble.lost],
  };
  const root = rootOf(table, file, header.offset, new Map([...above.preamble.entries, ...given]), reading);
  return { kind: 'tree', root, faults: reading.faults, lost: reading.lost, lines, tableKind: kind };
}

const separators: readonly Separator[] = [',', ';', '\t'];
const noKind = { tableKind: 'pedals' } as const;

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

function rootOf(
  table: CsvTable,
  file: string,
  offset: number,
  above: ReadonlyMap<string, LocatedEntry>,
  reading: CellReading,
): LocatedMap {
  const entries = new Map(above);
  const nameKey = table.kind === 'pedals' ? 'board' : 'catalogue';
  if (!entries.has(nameKey)) {
    const name = nameOf(file);
    entries.set(nameKey, entryOf(0, { kind: 'scalar', offset: 0, value: name, written: name }));
  }
  const twice = entries.get(table.kind);
  if (twice !== undefined)
    reading.faults.push({ path: [table.kind], offset: twice.keyOffset, words: () => inTheRows(table.kind) });
  const list = table.kind === 'pedals' ? pedalsOf(table, offset, reading) : suppliesOf(table, offset, reading);
  entries.set(table.kind, entryOf(offset, list));
  return { kind: 'map', offset: 0, entries };
}

/** The name of the file without its folders and its ending. */
function nameOf(file: string): string {
  const stem = (file.split(/[/\\]/).at(-1) ?? '').replace(/\.[^.]*$/, '').trim();
  return stem === '' ? 'Table' : stem.slice(0, longestText);
}

/** Cells beyond the header or below an empty one: mostly a decimal comma that was taken for the end of a cell. */
function strayCells({ keys, rows }: CsvTable, header: CsvRow): readonly TreeFault[] {
  return rows.flatMap((row): readonly TreeFault[] => {
    const surplus = row.cells[keys.length];
    if (surplus !== undefined)
      return [{ path: [], offset: surplus.offset, words: () => surplusCell(row, keys.length) }];
    const nameless = row.cells.find(({ text }, index) => text !== '' && header.cells[index]?.text === '');
    return nameless === undefined ? [] : [{ path: [], offset: nameless.offset, words: () => namelessColumn }];
  });
}

const surplusCell = ({ cells }: CsvRow, columns: number): Words => ({
  message: `this row has ${cells.length} cells, but the header has ${columns}.`,
  remedy: 'Put cells with the separator inside into quotation marks, such as "9,5", or add the column to the header.',
});

const namelessColumn: Words = {
  message: 'this cell stands in a column without a name.',
  remedy: 'Name the column in the header, or empty the cell.',
};

const inTheRows = (kind: TableKind): Words => ({
  message: `the ${kind} stand in the rows of the table.`,
  remedy: 'Remove this line.',
});

const noTable: Words = {
  message: 'there is no table; its first row must name the columns.',
  remedy: 'Begin with a row such as name,volts,milliamps.',
};
