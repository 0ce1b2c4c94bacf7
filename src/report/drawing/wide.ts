import { boxOf, linesHeight, linesOf } from './box.js';
import { afterOutputs, columnsFor, frameRoom, type DrawnColumn, type Columns } from './columns.js';
import type { DrawnUnit } from './contents.js';
import { level, movedBand, outputBand, rightOf, type Band } from './output-band.js';
import { movedBox, stacked, type Frame, type Scene, type TextLine } from './scene.js';

/** Between one output and the next. */
const outputGap = 12;
/** Between the names of the columns and what stands in them. */
const headGap = 6;
/** Above the outputs in a frame, for its label. */
const frameHead = 18;
const noteGap = 8;

/**
 * From left to right: mains, supply, outputs, leads, pedals; one scene a unit. Every pedal stands beside the output that feeds
 * it, and joined outputs are neighbours, so that no wire crosses another. The columns are named above every unit, or above the
 * first alone.
 */
export function wideScenes(units: readonly DrawnUnit[], heads: 'all' | 'first'): readonly Scene[] {
  const columns = columnsFor(units);
  return units.map((unit, at) => {
    const scene = unitScene(unit, columns);
    return at === 0 || heads === 'all' ? stacked([headScene(columns), scene], headGap) : scene;
  });
}

/** The names of the columns. */
function headScene(columns: Columns): Scene {
  const { mains, supply, output, pedal, width } = columns;
  const names: readonly (readonly [string, DrawnColumn])[] = [
    ['Mains', mains],
    ['Supply', supply],
    ['Output', output],
    ...(columns.trunk === null && columns.adapters === null ? [] : [['Leads', afterOutputs(columns)] as const]),
    ['Pedal', pedal],
  ];
  const notes = names.flatMap(([text, column]) => linesOf({ text, mostLines: 1 }, { ...column, y: 0 }));
  return {
    width,
    height: Math.max(...notes.map((note) => linesHeight([note]))),
    notes,
    boxes: [],
    wires: [],
    frames: [],
  };
}

function unitScene(unit: DrawnUnit, columns: Columns): Scene {
  const mains = movedBox(boxOf('mains', unit.mains, columns.mains.width), columns.mains.x, 0);
  const supply = movedBox(boxOf('supply', unit.supply, columns.supply.width), columns.supply.x, 0);
  const { bands, frames, bottom } = outputsOf(unit, columns);
  const notes = freeNotes(unit.free, columns, bottom + noteGap);
  const used = notes.length === 0 ? bottom : bottom + noteGap + linesHeight(notes);
  const height = Math.max(supply.height, mains.height, used);
  return {
    width: columns.width,
    height,
    boxes: [mains, { ...supply, height }, ...bands.flatMap(({ boxes }) => boxes)],
    wires: [level(rightOf(mains), supply.x, mains.height / 2), ...bands.flatMap(({ wires }) => wires)],
    frames,
    notes,
  };
}

/** The outputs one under the other; those on the common ground are neighbours and share a frame. */
function outputsOf({ outputs }: DrawnUnit, columns: Columns) {
  const bands: Band[] = [];
  const frames: Frame[] = [];
  let y = 0;
  let top: number | null = null;
  for (const [at, output] of outputs.entries()) {
    if (at > 0) y += outputGap;
    if (output.common && top === null) {
      top = y;
      y += frameHead;
    }
    const band = movedBand(outputBand(output, columns), y);
    bands.push(band);
    y += band.height;
    if (top !== null && outputs[at + 1]?.common !== true) {
      y += frameRoom;
      frames.push(frameOf(columns.output, top, y));
      top = null;
    }
  }
  return { bands, frames, bottom: y };
}

function frameOf({ x, width }: DrawnColumn, top: number, bottom: number): Frame {
  const label = linesOf({ text: 'common ground', mostLines: 1 }, { x, y: top + 3, width });
  return { x: x - frameRoom, y: top, width: width + 2 * frameRoom, height: bottom - top, label };
}

/** What is free, below the outputs. */
function freeNotes(texts: readonly string[], { output, width }: Columns, top: number): readonly TextLine[] {
  const notes: TextLine[] = [];
  for (const text of texts) {
    const column = { x: output.x, y: top + linesHeight(notes), width: width - output.x };
    notes.push(...linesOf({ text, mostLines: 2 }, column));
  }
  return notes;
}
