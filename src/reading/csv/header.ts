import type { Words } from '../../domain/finding.js';
import { listed, quoted } from '../../domain/shown-text.js';
import type { TreeFault } from '../text/build-tree.js';
import { meantKey } from '../faults/schema-findings.js';
import { columnsOf, limits, type TableKind } from './columns.js';
import { headingOf, mayBeLimit, meansNothing, plainHeading, type Heading, type Meanings } from './headings.js';
import type { PlacedCell, CsvRow } from './rows.js';

/** Which column holds what, and what is wrong with the headings. */
type Header = {
  /** By position; null for a column that is not used or has no name. */
  readonly columns: readonly (Heading | null)[];
  /** What columns were meant to be that are misspelled: rows need not be blamed for that. */
  readonly misspelled: readonly string[];
  /** The headings of columns that are not used. */
  readonly ignored: readonly PlacedCell[];
  /** The columns of which nobody has said what they hold. */
  readonly open: readonly OpenColumn[];
  readonly faults: readonly TreeFault[];
};

/** A column that is not understood. */
export type OpenColumn = {
  readonly heading: string;
  /** What stands in it, as far as that tells what it is. */
  readonly samples: readonly string[];
  /** Whether nothing can be planned before somebody says what it holds. */
  readonly mayLimit: boolean;
};

/** Reads the first row of a table. Columns that are not understood and cannot hold a limit are left aside. */
export function readHeader(
  kind: TableKind,
  [header, ...rows]: readonly [CsvRow, ...CsvRow[]],
  meanings: Meanings = {},
): Header {
  const columns = header.cells.map(({ text }) => (text === '' ? null : headingOf(kind, text, meanings)));
  const absent = Object.keys(columnsOf[kind]).filter((key) => !columns.some((column) => column?.key === key));
  const faults: TreeFault[] = [...repeatedColumns(header.cells, columns)];
  const misspelled: string[] = [];
  const ignored = header.cells.filter(({ text }) => text !== '' && saysNothing(text, meanings));
  const open: OpenColumn[] = [];
  for (const [index, cell] of header.cells.entries()) {
    if (columns[index] !== null || cell.text === '' || ignored.includes(cell)) continue;
    const meant = meantKey(plainHeading(withoutUnit(cell.text)), absent);
    if (meant !== null) misspelled.push(meant);
    if (meant !== null) faults.push(faultAt(cell, misspelledColumn(meant)));
    else if (mayBeLimit(cell.text) || rows.some((row) => isFigure(row.cells[index]?.text ?? '')))
      faults.push(faultAt(cell, perhapsLimit(absent.filter((key) => limits(kind, key)))));
    else ignored.push(cell);
    open.push({ heading: cell.text, samples: samplesOf(rows, index), mayLimit: !ignored.includes(cell) });
  }
  return { columns, misspelled, ignored, open, faults };
}

const repeatedColumns = (cells: readonly PlacedCell[], columns: readonly (Heading | null)[]): readonly TreeFault[] =>
  cells.flatMap((cell, index) => {
    const key = columns[index]?.key;
    const earlier = columns.findIndex((one) => one !== null && one.key === key);
    return key === undefined || earlier === index ? [] : [faultAt(cell, repeatedColumn(cells[earlier]?.text ?? ''))];
  });

const saysNothing = (heading: string, meanings: Meanings): boolean =>
  Object.hasOwn(meanings, heading) && meanings[heading] === meansNothing;

const mostSamples = 3;

const samplesOf = (rows: readonly CsvRow[], index: number): readonly string[] =>
  [...new Set(rows.map(({ cells }) => cells[index]?.text ?? ''))].filter((text) => text !== '').slice(0, mostSamples);

/** People write a unit behind the name, in brackets. */
const withoutUnit = (text: string): string => text.split(/[([]/, 1).join('');

/** Whether a cell holds nothing but figures with an electrical unit. */
const isFigure = (text: string): boolean => /^[\d.,/\s-]+\s*(?:mA|A|W|VA|V)(?:\s*(?:DC|AC))?$/i.test(text);

const faultAt = ({ text, offset }: PlacedCell, words: Words): TreeFault => ({
  path: [text],
  offset,
  words: () => words,
});

const misspelledColumn = (meant: string): Words => ({
  message: 'unknown column.',
  remedy: `Did you mean ${meant}?`,
});

/** What is left unread might be the one figure that keeps a supply from being overloaded. */
function perhapsLimit(electrical: readonly string[]): Words {
  const names = electrical.length === 0 ? '' : `Call it what it is: ${listed(electrical, 'or')}. `;
  return {
    message: 'this column is not understood, and it may hold a limit.',
    remedy: `${names}Call it Remark if it limits nothing.`,
  };
}

const repeatedColumn = (earlier: string): Words => ({
  message: `stands here a second time: ${quoted(earlier)} says the same, and each column may stand once.`,
  remedy: 'Put all that they hold into one of them.',
});
