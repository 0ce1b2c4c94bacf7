import { safeText } from '../words/safe-text.js';

/** A number is written as it is; text is quoted where it has to be, and never starts a formula. */
export type CsvCell = string | number;

/** So that spreadsheets read letters beyond ASCII. */
const byteOrderMark = '\ufeff';

/** A table as RFC 4180 has it, the names of its columns first, each row ended by a line break. */
export const csvText = (columns: readonly string[], rows: readonly (readonly CsvCell[])[]): string =>
  byteOrderMark + [columns, ...rows].map((row) => `${row.map(cellText).join(',')}\r\n`).join('');

function cellText(cell: CsvCell): string {
  if (typeof cell === 'number') return String(cell);
  const text = withoutFormula(safeText(cell));
  return /^\s|\s$|[",;\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * Signs that make a spreadsheet take a cell for a formula, their wide forms included, at the start of the text or behind a
 * semicolon, which parts cells in many countries. An apostrophe in front makes it text.
 */
const withoutFormula = (text: string): string => text.replace(/(^|;)(\s*)(?=[=+\-@＝＋－＠\t\r])/gu, "$1$2'");
