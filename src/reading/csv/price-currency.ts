import type { Words } from '../../domain/finding.js';
import { currencyOf } from '../../domain/money.js';
import { listed } from '../../domain/shown-text.js';
import type { LocatedEntry } from '../text/located-tree.js';
import type { CellReading } from './figures.js';
import type { CsvRow, PlacedCell } from './rows.js';
import { cellOf, entryOf, type CsvTable } from './table.js';

/** Signs that stand for one currency only; of dollars and crowns there are several. */
const signs: ReadonlyMap<string, string> = new Map([
  ['€', 'EUR'],
  ['£', 'GBP'],
  ['₹', 'INR'],
  ['₩', 'KRW'],
  ['₺', 'TRY'],
  ['₴', 'UAH'],
  ['₫', 'VND'],
]);

/**
 * The currency of a table by the signs or codes at its prices. When one is stated already, prices in another one are faults;
 * so are prices in two. Null where nothing is to be added.
 */
export function currencyOfPrices(
  table: CsvTable,
  header: CsvRow,
  stated: LocatedEntry | undefined,
  { faults, lost }: CellReading,
): LocatedEntry | null {
  const found = new Map<string, PlacedCell>();
  for (const cell of priceCells(table, header)) {
    const code = codeIn(cell.text);
    if (code !== null && !found.has(code)) found.set(code, cell);
  }
  const given = stated?.value.kind === 'scalar' ? String(stated.value.value) : null;
  for (const [code, cell] of found)
    if (given !== null && code !== given)
      faults.push({ path: ['currency'], offset: cell.offset, words: () => otherCurrency(code, given) });
  const [first, second] = [...found];
  if (first === undefined || given !== null) return null;
  const [code, { offset }] = first;
  if (second !== undefined) {
    faults.push({ path: ['currency'], offset: second[1].offset, words: () => twoCurrencies([...found.keys()]) });
    lost.push(['currency']);
    return null;
  }
  return entryOf(offset, { kind: 'scalar', offset, value: code, written: code });
}

/** The heading of the prices, which may have the currency, and the prices. */
function priceCells(table: CsvTable, header: CsvRow): readonly PlacedCell[] {
  return [header, ...table.rows].flatMap((row) => cellOf(table, row, 'price') ?? []);
}

/** The code of a sign, or a code that stands there; null for a sign of several currencies, and for none. */
function codeIn(text: string): string | null {
  const [sign = ''] = /\p{Sc}/u.exec(text) ?? [];
  const [code = ''] = /(?<![A-Za-z])[A-Z]{3}(?![A-Za-z])/.exec(text) ?? [];
  return signs.get(sign) ?? currencyOf(code)?.code ?? null;
}

const otherCurrency = (code: string, given: string): Words => ({
  message: `found a price in ${code}, but the currency of the file is ${given}.`,
  remedy: `Write all prices in ${given}, or state the currency that they are in.`,
});

const twoCurrencies = (codes: readonly string[]): Words => ({
  message: `found prices in ${listed(codes, 'and')}; a file has one currency.`,
  remedy: 'Write all prices in one of them.',
});
