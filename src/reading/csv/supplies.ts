import type { Path } from '../../domain/finding.js';
import { quoted } from '../../domain/shown-text.js';
import type { LocatedEntry, LocatedList, LocatedMap, LocatedNode } from '../text/located-tree.js';
import { bankColumns, supplyColumns } from './columns.js';
import type { CellReading } from './figures.js';
import { remarkOf } from './remarks.js';
import type { RowGroup } from './row-kinds.js';
import type { CsvRow } from './rows.js';
import { cellOf, entryOf, mapOf, withPaths, withPower, type Renaming, type CsvTable } from './table.js';

/** A supply of a table, a row a bank. */
export function supplyOf(table: CsvTable, { rows }: RowGroup, path: Path, reading: CellReading): LocatedMap {
  const [first] = rows;
  if (first === undefined) throw new Error('a supply has no row');
  const row = mergedRow(table, rows, path, reading);
  const whole = withPaths(reading, inTotal(path), (inner) => mapOf(table, row, supplyColumns, path, inner));
  const banks = rows.map((each, index) => bankOf(table, each, [...path, 'banks', index], reading));
  const list: LocatedList = { kind: 'list', offset: first.offset, items: withOnlyGround(banks) };
  const total = totalOf(whole, 'totalMilliamps', 'totalWatts');
  const entries = new Map(
    [...whole.entries, ...chargeOf(whole), ...total, ['banks', entryOf(first.offset, list)] as const].filter(
      ([key]) => !isTotal(key) && key !== 'wattHours',
    ),
  );
  return { ...whole, entries };
}

/** The charge of a power bank. */
function chargeOf({ entries }: LocatedMap): readonly (readonly [string, LocatedEntry])[] {
  const stated = entries.get('wattHours');
  if (stated === undefined) return [];
  const { keyOffset } = stated;
  return [
    ['charge', entryOf(keyOffset, { kind: 'map', offset: keyOffset, entries: new Map([['wattHours', stated]]) })],
  ];
}

/** A single output shares its ground with none: it is isolated, whether or not its row says so. */
function withOnlyGround(banks: readonly LocatedMap[]): readonly LocatedMap[] {
  const [only] = banks;
  const outputs = only?.entries.get('outputs')?.value;
  if (only === undefined || banks.length > 1 || only.entries.has('isolated')) return banks;
  if (outputs?.kind !== 'scalar' || outputs.value !== 1) return banks;
  const isolated: LocatedNode = { kind: 'scalar', offset: outputs.offset, value: true, written: 'true' };
  return [{ ...only, entries: new Map([...only.entries, ['isolated', entryOf(outputs.offset, isolated)]]) }];
}

/** What the first row leaves open about the whole supply, a later one may state; what they both state must agree. */
function mergedRow(table: CsvTable, rows: readonly CsvRow[], path: Path, { faults }: CellReading): CsvRow {
  const [first, ...others] = rows;
  if (first === undefined) throw new Error('a supply has no row');
  const cells = [...first.cells];
  for (const [index, column] of table.columns.entries()) {
    const key = column?.key ?? '';
    if (!supplyColumns.includes(key)) continue;
    for (const row of others) {
      const stated = cells[index];
      const cell = cellOf(table, row, key);
      if (cell === null || cell.text === '') continue;
      if (stated === undefined || stated.text === '') cells[index] = cell;
      else if (stated.text !== cell.text) {
        faults.push({
          path: [...path, key],
          offset: cell.offset,
          words: (lineOf) => ({
            message: `found ${quoted(cell.text)}, but line ${lineOf(stated.offset)} of the same supply has ${quoted(stated.text)}.`,
            remedy: 'Write it once for each supply, or the same in each of its rows.',
          }),
        });
      }
    }
  }
  return { ...first, cells };
}

const settingKeys = ['volts', 'milliamps', 'openCircuitVolts'] as const;
/** Where a value stands in a file that was read from a column of that key. */
const inTotal =
  (around: Path): Renaming =>
  (path) => {
    const key = String(path[around.length]);
    if (key === 'wattHours') return [...around, 'charge', key];
    return isTotal(key) ? [...around, 'total', key.endsWith('Watts') ? 'watts' : 'milliamps'] : path;
  };
const inBank =
  (around: Path): Renaming =>
  (path) => {
    const key = String(path[around.length]);
    if (!settingKeys.some((one) => one === key)) return inTotal(around)(path);
    return [...around, 'settings', path[around.length + 1] ?? 0, key];
  };
const isTotal = (key: string): boolean => /^(total|bank)(Milliamps|Watts)$/.test(key);

function bankOf(table: CsvTable, row: CsvRow, path: Path, reading: CellReading): LocatedMap {
  const read = withPaths(reading, inBank(path), (inner) => mapOf(table, row, bankColumns, path, inner));
  const found = withSwitch(withPower(read, cellOf(table, row, 'volts'), path, reading), table, row);
  const settings = settingsOf(found, path, reading);
  const total = totalOf(found, 'bankMilliamps', 'bankWatts');
  const kept = [...found.entries].filter(([key]) => !isTotal(key) && !settingKeys.some((one) => one === key));
  const entries = new Map([...kept, ...total, ['settings', entryOf(row.offset, settings)] as const]);
  return { ...found, entries };
}

/** How the settings are chosen may stand in the remark. */
function withSwitch(bank: LocatedMap, table: CsvTable, row: CsvRow): LocatedMap {
  const cell = cellOf(table, row, 'remark');
  const says = cell === null ? undefined : remarkOf(cell.text)?.switch;
  if (cell === null || says === undefined || bank.entries.has('switch')) return bank;
  const node: LocatedNode = { kind: 'scalar', offset: cell.offset, value: says, written: cell.text };
  return { ...bank, entries: new Map([...bank.entries, ['switch', entryOf(cell.offset, node)]]) };
}

/** The total in milliamps or watts, or both, which the checks refuse. */
function totalOf(map: LocatedMap, milliamps: string, watts: string): readonly (readonly [string, LocatedEntry])[] {
  const units = { milliamps: map.entries.get(milliamps), watts: map.entries.get(watts) };
  const stated = Object.entries(units).flatMap(([key, entry]) => (entry === undefined ? [] : [[key, entry] as const]));
  const [first] = stated;
  if (first === undefined) return [];
  const { keyOffset } = first[1];
  return [['total', entryOf(keyOffset, { kind: 'map', offset: keyOffset, entries: new Map(stated) })]];
}

/** The settings that the lists of volts, milliamps and open-circuit volts make together, one entry of each. */
function settingsOf(bank: LocatedMap, path: Path, reading: CellReading): LocatedList {
  const lists = new Map(settingKeys.map((key) => [key, itemsOf(bank.entries.get(key)?.value)]));
  const count = Math.max(1, ...[...lists.values()].map((items) => items.length));
  for (const [key, items] of lists) {
    if (items.length > 0 && items.length < count) reportFewer(bank, key, path, items.length, count, reading);
  }
  const settings = Array.from({ length: count }, (_, index): LocatedMap => {
    const entries = [...lists].flatMap(([key, items]) => {
      const item = items[index];
      return item === undefined ? [] : [[key, entryOf(item.offset, item)] as const];
    });
    const gaps = new Map(settingKeys.flatMap((key) => [[key, bank.gaps?.get(key) ?? bank.offset] as const]));
    const offset = entries[0]?.[1].keyOffset ?? bank.offset;
    return { kind: 'map', offset, entries: new Map<string, LocatedEntry>(entries), gaps };
  });
  return { kind: 'list', offset: settings[0]?.offset ?? bank.offset, items: settings };
}

const itemsOf = (node: LocatedNode | undefined): readonly LocatedNode[] => {
  if (node === undefined) return [];
  return node.kind === 'list' ? node.items : [node];
};

function reportFewer(
  bank: LocatedMap,
  key: string,
  path: Path,
  found: number,
  count: number,
  { faults, lost }: CellReading,
): void {
  const at = [...path, 'settings'];
  faults.push({
    path: [...at, key],
    offset: bank.entries.get(key)?.value.offset ?? bank.offset,
    words: () => ({
      message: `has ${found === 1 ? '1 entry' : `${found} entries`}, but another column of this bank's settings has ${count}.`,
      remedy: 'Write one entry for each setting, in the same order, as in 9/12/18 and 400/300/200.',
    }),
  });
  for (let index = found; index < count; index += 1) lost.push([...at, index, key]);
}
