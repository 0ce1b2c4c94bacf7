import type { Area } from './scene.js';
import type { DrawnOutput, DrawnUnit } from './contents.js';
import { marksWidth } from './mark.js';

/** A column's left edge and how wide it is. */
export type DrawnColumn = Pick<Area, 'x' | 'width'>;

/**
 * Where things stand from left to right in the wide drawing. Columns that nothing stands in are left out; where no lead goes
 * through both kinds of boxes, `trunk` and `adapters` are one and the same column.
 */
export type Columns = {
  readonly mains: DrawnColumn;
  readonly supply: DrawnColumn;
  readonly output: DrawnColumn;
  /** Chain and join leads. */
  readonly trunk: DrawnColumn | null;
  readonly adapters: DrawnColumn | null;
  readonly pedal: DrawnColumn;
  /** How much room a label on a wire takes, before the column that it is before. */
  readonly mark: number;
  readonly width: number;
};

/** The column right of the outputs: where their wires go first. */
export const afterOutputs = ({ trunk, adapters, pedal }: Columns): DrawnColumn => trunk ?? adapters ?? pedal;

/** About what a sheet of paper takes, between its margins, at the size of small print. */
const wholeWidth = 800;
const mainsWidth = 62;
/** How the rest is shared out. */
const shares = { supply: 24, output: 28, trunk: 22, adapters: 22, pedal: 36 } as const;
/** Between a column and the next: room for a frame, for a label on the wire, or for a turn of it. */
const gaps = { mains: 14, supply: 24 } as const;
/** Right of a chain lead, where its wires part. */
export const turnRoom = 14;
const besideMark = 8;
export const frameRoom = 7;

/** The same columns for all units of a plan, so that they line up. */
export function columnsFor(units: readonly DrawnUnit[]): Columns {
  const outputs = units.flatMap((unit) => unit.outputs);
  const ends = outputs.flatMap((output) => output.ends);
  const mark = marksWidth([...outputs, ...ends].map((thing) => thing.mark)) + besideMark;
  const leads = leadColumns(outputs);
  const names = (['supply', 'output', 'trunk', 'adapters', 'pedal'] as const).filter(
    (name) => (name !== 'trunk' && name !== 'adapters') || leads.includes(name),
  );
  const after = {
    supply: gaps.supply,
    output: frameRoom + mark,
    trunk: turnRoom + (leads.length === 2 ? besideMark : mark),
    adapters: mark,
    pedal: 0,
  };
  const left = mainsWidth + gaps.mains;
  const room = wholeWidth - left - names.reduce((sum, name) => sum + after[name], 0);
  const whole = names.reduce((sum, name) => sum + shares[name], 0);
  const placed = new Map<(typeof names)[number], DrawnColumn>();
  let x = left;
  for (const name of names) {
    const width = Math.floor((room * shares[name]) / whole);
    placed.set(name, { x, width });
    x += width + after[name];
  }
  const at = (name: 'supply' | 'output' | 'pedal'): DrawnColumn => placed.get(name) ?? { x, width: 0 };
  const trunk = placed.get('trunk') ?? null;
  return {
    mains: { x: 0, width: mainsWidth },
    supply: at('supply'),
    output: at('output'),
    trunk,
    adapters: placed.get('adapters') ?? trunk,
    pedal: at('pedal'),
    mark,
    width: x,
  };
}

/** Two columns only where a lead goes through both; one called `trunk` takes all boxes otherwise. */
function leadColumns(outputs: readonly DrawnOutput[]): readonly ('trunk' | 'adapters')[] {
  const adapted = ({ ends }: DrawnOutput): boolean => ends.some(({ adapters }) => adapters !== null);
  if (outputs.some((output) => output.trunk !== null && adapted(output))) return ['trunk', 'adapters'];
  return outputs.some((output) => output.trunk !== null || adapted(output)) ? ['trunk'] : [];
}
