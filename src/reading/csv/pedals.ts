import type { Path } from '../../domain/finding.js';
import type { LocatedEntry, LocatedList, LocatedMap, LocatedNode } from '../text/located-tree.js';
import { columnsOf } from './columns.js';
import type { CellReading } from './figures.js';
import { cellOf, entryOf, mapOf, withPaths, withPower, type Renaming, type CsvTable } from './table.js';

/** The pedals of a table, a row each. */
export function pedalsOf(table: CsvTable, offset: number, reading: CellReading): LocatedList {
  const keys = Object.keys(columnsOf.pedals);
  const items = table.rows.map((row, index) => {
    const path = ['pedals', index];
    const volts: LocatedNode[] = [];
    // Draws by voltage stand under that voltage, which is known only when the row has been read.
    return withPaths(reading, underVolts(path, volts), (inner) => {
      const read = mapOf(table, row, keys, path, inner);
      const pedal = withPower(read, cellOf(table, row, 'volts'), path, inner);
      const accepted = pedal.entries.get('volts')?.value;
      if (accepted?.kind === 'list') volts.push(...accepted.items);
      return withDraws(withoutNoAdapter(pedal), path, inner);
    });
  });
  return { kind: 'list', offset, items };
}

/** A pedal that came with no adapter, as its cell says. */
function withoutNoAdapter(pedal: LocatedMap): LocatedMap {
  const said = pedal.entries.get('adapter')?.value;
  if (said?.kind !== 'scalar' || said.value !== false) return pedal;
  return { ...pedal, entries: new Map([...pedal.entries].filter(([key]) => key !== 'adapter')) };
}

const underVolts =
  (around: Path, volts: readonly LocatedNode[]): Renaming =>
  (path) => {
    const at = volts[Number(path[around.length + 1])];
    if (path[around.length] !== 'milliamps' || at === undefined) return path;
    return [...around, 'milliamps', keyOf(at)];
  };

/** A voltage as a key. One that is no plain number makes a key that the schema refuses. */
const keyOf = (volts: LocatedNode): string => (volts.kind === 'scalar' ? String(volts.value ?? volts.written) : '');

/** Several draws belong to the volts, one to each. */
function withDraws(pedal: LocatedMap, path: Path, { faults, lost }: CellReading): LocatedMap {
  const draws = pedal.entries.get('milliamps');
  if (draws?.value.kind !== 'list') return pedal;
  const volts = pedal.entries.get('volts')?.value;
  const entries = new Map(pedal.entries);
  if (volts?.kind === 'list' && volts.items.length === draws.value.items.length) {
    entries.set('milliamps', entryOf(draws.keyOffset, byVolts(volts.items, draws.value)));
  } else {
    const at = [...path, 'milliamps'];
    const found = draws.value.items.length;
    const count = volts?.kind === 'list' ? volts.items.length : 1;
    faults.push({
      path: at,
      offset: draws.value.offset,
      words: () => ({
        message: `has ${found} entries, but volts has ${count}.`,
        remedy: 'Write one draw for all volts, or one for each of them in the same order, as in 9/12 and 300/230.',
      }),
    });
    lost.push(at);
  }
  return { ...pedal, entries };
}

function byVolts(volts: readonly LocatedNode[], { offset, items }: LocatedList): LocatedMap {
  const entries = volts.flatMap((at, index): readonly (readonly [string, LocatedEntry])[] => {
    const draw = items[index];
    return draw === undefined ? [] : [[keyOf(at), entryOf(draw.offset, draw)]];
  });
  return { kind: 'map', offset, entries: new Map(entries) };
}
