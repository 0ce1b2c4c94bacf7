import { bankColumns, supplyColumns } from './columns.js';
import type { CsvRow } from './rows.js';
import { textOf, type CsvTable } from './table.js';

/** What a row is about; `nothing` where it names neither outputs nor plugs, as a voucher does. */
export type RowKind = 'pedal' | 'supply' | 'part' | 'battery' | 'nothing';

/** Rows below one another that are about one thing. */
export type RowGroup = { readonly kind: RowKind; readonly name: string; readonly rows: readonly CsvRow[] };

/** The things of a table: a row a pedal; of supplies, rows that follow each other and name the same one, or none, are one. */
export function groupsOf(table: CsvTable): readonly RowGroup[] {
  if (table.kind === 'pedals')
    return table.rows.map((row) => ({ kind: 'pedal', name: textOf(table, row, 'name'), rows: [row] }));
  const groups: OpenGroup[] = [];
  for (const row of table.rows) {
    const kind = kindOf(table, row);
    const [id, name] = [textOf(table, row, 'id'), textOf(table, row, 'name')];
    const current = groups.at(-1);
    if (current?.kind === 'supply' && kind === 'supply' && goesOn(current, id, name)) current.rows.push(row);
    else groups.push({ kind, rows: [row], id, name });
  }
  return groups;
}

type OpenGroup = { readonly kind: RowKind; readonly rows: CsvRow[]; readonly id: string; readonly name: string };

/** Ids decide where both have one, else names; a row with neither goes on with the supply above it. */
function goesOn(current: OpenGroup, id: string, name: string): boolean {
  if (id !== '' && current.id !== '') return id === current.id;
  return name === '' ? id === '' : name === current.name;
}

/** "barrel 2.1 to jack 3.5": what goes in, and what comes out. */
const leadThrough = /^(.+?)(\s+(?:to|auf)\s+|\s*(?:→|->|=>)\s*)(.+)$/i;

/** The ends of a lead as one cell has them; null where it is none. */
export function leadEnds(text: string): { readonly fits: string; readonly gives: string; readonly at: number } | null {
  const [, fits, between, gives] = leadThrough.exec(text) ?? [];
  if (fits === undefined || between === undefined || gives === undefined) return null;
  return { fits, gives, at: fits.length + between.length };
}

/** What is said of anything that is sold, and so tells nothing. */
const ofAnything = ['id', 'name', 'price', 'stock'];
const electrical = [...supplyColumns, ...bankColumns].filter((key) => !ofAnything.includes(key));

function kindOf(table: CsvTable, row: CsvRow): RowKind {
  const says = (key: string): boolean => textOf(table, row, key) !== '';
  if (/\d\s*m?Ah\b/i.test(textOf(table, row, 'milliamps'))) return 'battery';
  if (says('fits') || says('gives') || says('tails')) return 'part';
  if (leadEnds(textOf(table, row, 'plug')) !== null && !says('outputs')) return 'part';
  // Where columns are missing that tell, nothing is said of the rows.
  return table.missing.length > 0 || electrical.some(says) ? 'supply' : 'nothing';
}
