import type { Path } from '../../domain/finding.js';
import type { LocatedMap } from '../text/located-tree.js';
import { batteryTypeIn, type BatteryType } from '../typed/source-words.js';
import { figureNode, measureOf, textNode, type CellReading } from './figures.js';
import type { RowGroup } from './row-kinds.js';
import { cellOf, entryOf, mapOf, type CsvTable } from './table.js';

/** The type that a name tells; null where it tells none, or the price may be one of several. */
export const batteryTypeNamed = (name: string): BatteryType | null =>
  /pack|\bset\b|\d\s*[x×]|[x×]\s*\d/i.test(name) ? null : batteryTypeIn(name);

/** A battery of a table: what it holds stands where supplies say what they give. */
export function batteryOf(table: CsvTable, { rows: [row] }: RowGroup, path: Path, reading: CellReading): LocatedMap {
  if (row === undefined) throw new Error('a battery has no row');
  const map = mapOf(table, row, ['id', 'name', 'price', 'stock', 'volts'], path, reading);
  const name = cellOf(table, row, 'name');
  const holds = cellOf(table, row, 'milliamps');
  const type = name === null ? null : batteryTypeNamed(name.text);
  if (name === null || holds === null || type === null) return map;
  const held = figureNode(holds, measureOf('mAh'), [...path, 'milliampHours'], reading);
  return {
    ...map,
    entries: new Map([
      ...map.entries,
      ['type', entryOf(name.offset, { ...textNode(name), value: type })],
      ['milliampHours', entryOf(holds.offset, held)],
    ]),
  };
}
