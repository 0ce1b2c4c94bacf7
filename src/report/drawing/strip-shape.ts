import type { DrawnRun, DrawnStrip } from './drawn-board.js';
import { faceOf, moved, movedFace, type Block, type Piece } from './face.js';
import type { Measures } from './measures.js';
import { loadPieces, movedOutput, outputRows, railRoom, softly } from './output-shape.js';
import type { RunShape, StripShape } from './scene.js';

const padding = 8;
const labelGap = 2;

/** A supply unit at the origin: its name, then every output in its true order. */
export function stripShape(strip: DrawnStrip, measures: Measures): StripShape {
  const { strip: width, space, sizes } = measures;
  const head = faceOf(headBlocks(strip, measures), width - 2 * padding, sizes);
  let bottom = space.inside.strip + head.height + 2;
  const runs = strip.runs.map((run, at): RunShape => {
    const shape = movedRun(runShape(run, at > 0 || !run.isIsolated, measures), bottom);
    bottom += shape.height + space.between.runs;
    return shape;
  });
  return {
    id: strip.id,
    x: 0,
    y: 0,
    width,
    height: bottom,
    face: movedFace(head.face, padding, space.inside.strip),
    runs,
  };
}

function headBlocks(strip: DrawnStrip, { isTerse, isFlat, isLow }: Measures): readonly Block[] {
  // Of the first stretch of outputs, which needs no line of its own for that.
  const grounds = strip.runs[0]?.isIsolated === true ? ['isolated'] : [];
  const notes = isTerse ? [] : [...strip.notes, ...grounds].map(softly);
  if (isFlat) {
    const totals = strip.totals.flatMap((load) => loadPieces(load));
    return [{ kind: 'line', text: strip.name, rest: [...notes, ...totals], isLow }];
  }
  const totals = strip.totals.flatMap(({ text, percent }): readonly Block[] => [
    ...(isTerse ? [] : [{ kind: 'flow', pieces: [text, `${percent} %`].map(softly) } as const]),
    { kind: 'bar', percent },
  ]);
  return [{ kind: 'head', text: strip.name, size: 'name', aside: [], rest: notes }, ...totals];
}

function runShape({ isIsolated, outputs }: DrawnRun, isLabelled: boolean, measures: Measures): RunShape {
  const width = measures.strip;
  const gap = measures.space.between.outputs;
  const words: Piece = isIsolated
    ? { kind: 'text', text: 'isolated', soft: true }
    : { kind: 'mark', hazard: 'shared ground' };
  const label = faceOf(
    isLabelled ? [{ kind: 'flow', pieces: [words] }] : [],
    width - railRoom - padding,
    measures.sizes,
  );
  let bottom = label.height + labelGap;
  const shapes = outputRows(outputs, measures).flatMap((row) => {
    const top = bottom;
    bottom += Math.max(...row.map(({ height }) => height)) + gap;
    return row.map((shape) => movedOutput(shape, top));
  });
  return {
    x: 0,
    y: 0,
    width,
    height: bottom - gap,
    isIsolated,
    face: movedFace(label.face, railRoom, 0),
    outputs: shapes,
  };
}

const movedRun = (run: RunShape, down: number): RunShape => ({
  ...moved(run, 0, down),
  face: movedFace(run.face, 0, down),
  outputs: run.outputs.map((output) => movedOutput(output, down)),
});

/** The strip with all that is in it, further down. */
export const movedStrip = (strip: StripShape, down: number): StripShape => ({
  ...moved(strip, 0, down),
  face: movedFace(strip.face, 0, down),
  runs: strip.runs.map((run) => movedRun(run, down)),
});
