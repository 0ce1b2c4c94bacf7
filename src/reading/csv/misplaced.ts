import type { Words } from '../../domain/finding.js';
import type { TreeFault } from '../text/build-tree.js';
import { neededColumns, neededOfParts, type TableKind } from './columns.js';
import { groupsOf } from './row-kinds.js';
import type { CsvRow } from './rows.js';
import type { CsvTable } from './table.js';

/** The needed columns that are not there, beside those that are misspelled. */
export function missingColumns(
  table: CsvTable,
  header: CsvRow,
): { readonly keys: readonly string[]; readonly faults: readonly TreeFault[] } {
  const { kind, columns, missing: misspelled } = table;
  const hasSupplies = kind === 'pedals' || groupsOf(table).some((group) => group.kind !== 'part');
  const needed = hasSupplies ? neededColumns[kind] : neededOfParts;
  const keys = needed.filter((key) => !misspelled.includes(key) && !columns.some((column) => column?.key === key));
  return {
    keys,
    faults: keys.map((key) => ({ path: [key], offset: header.offset, words: () => missingColumn(kind, needed, key) })),
  };
}

const missingColumn = (kind: TableKind, needed: readonly string[], key: string): Words => ({
  message: `there is no such column; a table of ${kind} needs ${needed.join(', ')}.`,
  remedy: `Add a column \`${key}\`.`,
});

/** Cells beyond the header or below an empty one: mostly a decimal comma that was taken for the end of a cell. */
export function strayCells({ columns, rows }: CsvTable, header: CsvRow): readonly TreeFault[] {
  return rows.flatMap((row): readonly TreeFault[] => {
    const surplus = row.cells.slice(columns.length).find(({ text }) => text !== '');
    if (surplus !== undefined)
      return [{ path: [], offset: surplus.offset, words: () => surplusCell(row, columns.length) }];
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
