import type { DrawnOutput, DrawnRun, DrawnStrip } from './drawn-board.js';
import type { Hazard } from '../words/hazards.js';
import { faceOf, joined, moved, movedFace, type Block, type Piece } from './face.js';
import type { Measures } from './measures.js';
import { capShape, partBlocks } from './part-shape.js';
import { voltsAndPower } from './pedal-shape.js';
import type { OutputShape, RunShape, StripShape } from './scene.js';

const padding = 8;
/** Left of the outputs: where a rail ties those on one ground together. */
const railRoom = 9;
/** Between one output and the next. */
const outputGap = 3;
const outputPadding = 4;
/** For the number of an output. */
const numberRoom = 20;
/** For the socket of an output. */
const socketRoom = 8;
const labelGap = 2;
const runGap = 5;

/** A supply unit at the origin: its name, then every output in its true order. */
export function stripShape(strip: DrawnStrip, measures: Measures): StripShape {
  const width = measures.strip;
  const head = faceOf(headBlocks(strip, measures.isTerse), width - 2 * padding, measures.sizes);
  let bottom = padding + head.height + 2;
  const runs = strip.runs.map((run): RunShape => {
    const shape = movedRun(runShape(run, hasLabels(strip), measures), bottom);
    bottom += shape.height + runGap;
    return shape;
  });
  return { id: strip.id, x: 0, y: 0, width, height: bottom, face: movedFace(head.face, padding, padding), runs };
}

/** What kind of ground the outputs have need not be said of each stretch where all are isolated. */
const hasLabels = ({ runs }: DrawnStrip): boolean => runs.some(({ isIsolated }) => !isIsolated);

function headBlocks(strip: DrawnStrip, isTerse: boolean): readonly Block[] {
  const grounds = hasLabels(strip) ? [] : ['isolated'];
  const notes = isTerse ? [] : [...strip.notes, ...grounds].map(softly);
  const totals = strip.totals.flatMap(({ text, percent }): readonly Block[] => [
    ...(isTerse ? [] : [{ kind: 'flow', pieces: [text, `${percent} %`].map(softly) } as const]),
    { kind: 'bar', percent },
  ]);
  return [{ kind: 'head', text: strip.name, size: 'name', aside: [], rest: notes }, ...totals];
}

const softly = (text: string): Piece => ({ kind: 'text', text, soft: true });

function runShape({ isIsolated, outputs }: DrawnRun, isLabelled: boolean, measures: Measures): RunShape {
  const width = measures.strip;
  const words: Piece = isIsolated
    ? { kind: 'text', text: 'isolated', soft: true }
    : { kind: 'mark', hazard: 'shared ground' };
  const label = faceOf(
    isLabelled ? [{ kind: 'flow', pieces: [words] }] : [],
    width - railRoom - padding,
    measures.sizes,
  );
  let bottom = label.height + labelGap;
  const shapes = outputs.map((output) => {
    const shape = movedOutput(outputShape(output, measures), bottom);
    bottom += shape.height + outputGap;
    return shape;
  });
  return {
    x: 0,
    y: 0,
    width,
    height: bottom - outputGap,
    isIsolated,
    face: movedFace(label.face, railRoom, 0),
    outputs: shapes,
  };
}

function outputShape(output: DrawnOutput, measures: Measures): OutputShape {
  const { strip, cap: capWidth, sizes } = measures;
  const width = strip - railRoom;
  const inside = width - outputPadding - socketRoom;
  const number = faceOf([{ kind: 'flow', pieces: [numberPiece(output)] }], numberRoom, sizes);
  const head = faceOf([headBlock(output, measures)], inside - numberRoom, sizes);
  const rest = faceOf(restBlocks(output, measures), inside, sizes);
  const cap = output.chain === null || capWidth === null ? null : capShape([output.chain], capWidth, measures);
  const words = head.height + rest.height;
  const height = Math.max(words + 2 * outputPadding, cap?.height ?? 0);
  const top = (height - words) / 2;
  const left = railRoom + outputPadding;
  return {
    id: output.id,
    state: output.state,
    x: railRoom,
    y: 0,
    width,
    height,
    face: joined([
      movedFace(number.face, left, top),
      movedFace(head.face, left + numberRoom, top),
      movedFace(rest.face, left, top + head.height),
    ]),
    socket: { x: strip, y: height / 2 },
    cap:
      cap === null ? null : { ...cap, x: strip, height, face: movedFace(cap.face, strip, (height - cap.height) / 2) },
  };
}

const numberPiece = ({ id, state }: DrawnOutput): Piece => ({
  kind: 'text',
  text: String(id.output),
  strong: true,
  soft: state === 'free',
});

function headBlock({ state, gives, power, load, hazards }: DrawnOutput, { isTerse, isTight }: Measures): Block {
  if (state === 'free')
    return { kind: 'flow', pieces: isTerse ? [softly('free')] : [softly('free'), softly(gives), ...marksOf(hazards)] };
  const aside = load === null || isTight ? [] : [load.text, `${load.percent} %`];
  return {
    kind: 'head',
    text: voltsAndPower(gives, power, isTight),
    size: 'plain',
    aside: aside.map((text) => ({ kind: 'text', text })),
    rest: [],
  };
}

function restBlocks(
  { load, hazards, notes, chain, state }: DrawnOutput,
  { isTerse, isTight, cap }: Measures,
): readonly Block[] {
  if (state === 'free') return [];
  const marks = isTerse ? (chain?.hazards ?? []) : hazards;
  return [
    ...(load === null || isTerse || !isTight ? [] : [flowOf([{ kind: 'text', text: load.text }])]),
    ...(load === null ? [] : [{ kind: 'bar', percent: load.percent } as const]),
    flowOf([...marksOf(marks), ...(isTerse ? [] : notes.map((text): Piece => ({ kind: 'text', text })))]),
    ...(chain === null || cap !== null || isTerse ? [] : [{ kind: 'parting' } as const, ...partBlocks(chain)]),
  ];
}

const flowOf = (pieces: readonly Piece[]): Block => ({ kind: 'flow', pieces });

const marksOf = (hazards: readonly Hazard[]): readonly Piece[] => hazards.map((hazard) => ({ kind: 'mark', hazard }));

const movedRun = (run: RunShape, down: number): RunShape => ({
  ...moved(run, 0, down),
  face: movedFace(run.face, 0, down),
  outputs: run.outputs.map((output) => movedOutput(output, down)),
});

const movedOutput = (output: OutputShape, down: number): OutputShape => ({
  ...moved(output, 0, down),
  face: movedFace(output.face, 0, down),
  socket: moved(output.socket, 0, down),
  cap: output.cap === null ? null : { ...moved(output.cap, 0, down), face: movedFace(output.cap.face, 0, down) },
});

/** The strip with all that is in it, further down. */
export const movedStrip = (strip: StripShape, down: number): StripShape => ({
  ...moved(strip, 0, down),
  face: movedFace(strip.face, 0, down),
  runs: strip.runs.map((run) => movedRun(run, down)),
});
