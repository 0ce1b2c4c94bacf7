import type { Path } from '../../domain/finding.js';
import { columnsOf } from './columns.js';
import type { OpenColumn } from './header.js';
import { remarkOf } from './remarks.js';
import type { RowGroup, RowKind } from './row-kinds.js';
import type { CsvRow, PlacedCell, Separator } from './rows.js';
import { textOf, type CsvTable } from './table.js';

/** Rows that are about one thing, and what they call it. */
export type TableThing = {
  readonly kind: RowKind;
  /** Null when they do not name it. */
  readonly name: string | null;
  /** The offsets of its rows. */
  readonly rows: readonly number[];
  /** What stands in their remarks; empty where there is nothing. */
  readonly remark: string;
};

/** Whether it can be planned with. */
export const isUseful = ({ kind }: TableThing): boolean => kind !== 'battery' && kind !== 'nothing';

/** Where things stand in a table, in the words of whoever made it. */
export type TablePlaces = {
  readonly separator: Separator;
  /** What the row is about in which an offset lies; null for the header and what stands above it. */
  readonly thingAt: (offset: number) => TableThing | null;
  /** The heading of the column that a value was read from; null for what stands in no column. */
  readonly headingOf: (path: Path) => string | null;
  readonly hasHeading: (path: Path) => boolean;
  /** Whether there is a column of that key. */
  readonly hasColumn: (key: string) => boolean;
  /** In the order of the table. */
  readonly things: readonly TableThing[];
  /** Headings of columns that are not used, and what stands in the remarks that are not read. */
  readonly ignored: readonly string[];
  readonly unread: readonly string[];
  /** The columns of which nobody has said what they hold. */
  readonly open: readonly OpenColumn[];
};

export function placesOf(
  table: CsvTable,
  read: {
    readonly header: CsvRow;
    readonly ignored: readonly PlacedCell[];
    readonly open: readonly OpenColumn[];
    readonly separator: Separator;
    readonly groups: readonly RowGroup[];
  },
): TablePlaces {
  const { header, ignored, open, separator, groups } = read;
  const things = groups.map((group): TableThing => thingOf(table, group));
  const ends = groups.flatMap((group, index) => group.rows.map(({ offset, end }) => ({ offset, end, index })));
  const headings = new Map(table.columns.flatMap((column, at) => headingAt(column?.key, header.cells[at])));
  const keyAt = (path: Path): string | null => columnKeyOf(path, headings);
  return {
    separator,
    things,
    thingAt: (offset) => things[rowAt(ends, offset)?.index ?? -1] ?? null,
    headingOf: (path) => {
      const key = keyAt(path);
      return key === null ? null : (headings.get(key) ?? spelledOut(key));
    },
    hasColumn: (key) => headings.has(key),
    hasHeading: (path) => headings.has(keyAt(path) ?? ''),
    ignored: ignored.map(({ text }) => text),
    unread: unreadIn(table, groups),
    open,
  };
}

type RowEnds = { readonly offset: number; readonly end: number; readonly index: number };

/** The row in which an offset lies: by halves, for every fault of a long table asks. */
function rowAt(rows: readonly RowEnds[], offset: number): RowEnds | null {
  let [low, high] = [0, rows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle]?.end ?? offset) < offset) low = middle + 1;
    else high = middle;
  }
  const row = rows[low];
  return row !== undefined && row.offset <= offset ? row : null;
}

function thingOf(table: CsvTable, { kind, name, rows }: RowGroup): TableThing {
  const [first] = rows;
  const id = first === undefined ? '' : textOf(table, first, 'id');
  const called = name === '' ? id : name;
  const remark = rows.map((row) => textOf(table, row, 'remark')).join(' ');
  return { kind, name: called === '' ? null : called, rows: rows.map(({ offset }) => offset), remark: remark.trim() };
}

const headingAt = (key: string | undefined, cell: PlacedCell | undefined): readonly (readonly [string, string])[] =>
  key === undefined || cell === undefined ? [] : [[key, cell.text]];

/** From where a value stands in the file that a table makes to the key of its column. */
function columnKeyOf(path: Path, headings: ReadonlyMap<string, string>): string | null {
  const [list, index, ...within] = path;
  if (typeof index !== 'number') return null;
  const inBank = within[0] === 'banks';
  const inRow = inBank ? within.slice(2) : within;
  const ofSetting = inRow[0] === 'settings' ? inRow.slice(typeof inRow[1] === 'number' ? 2 : 1) : inRow;
  const [key, unit] = ofSetting;
  if (typeof key !== 'string') return null;
  if (key === 'total') return `${inBank ? 'bank' : 'total'}${unit === 'watts' ? 'Watts' : 'Milliamps'}`;
  if (list === 'parts' && (key === 'fits' || key === 'gives') && !headings.has(key)) return 'plug';
  if (key === 'milliampHours') return 'milliamps';
  return [columnsOf.pedals, columnsOf.supplies].some((columns) => Object.hasOwn(columns, key)) ? key : null;
}

/** `openCircuitVolts` as a heading would have it: "Open circuit volts". */
function spelledOut(key: string): string {
  const words = key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

function unreadIn(table: CsvTable, groups: readonly RowGroup[]): readonly string[] {
  return groups.flatMap(({ kind, rows }) =>
    rows.flatMap((row) => {
      const text = textOf(table, row, 'remark');
      const remark = text === '' ? null : remarkOf(text);
      const isRead = remark !== null && (kind === 'supply' ? remark.switch !== undefined : kind === 'part');
      return text === '' || isRead ? [] : [text];
    }),
  );
}
