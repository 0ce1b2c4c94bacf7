import { runsOf } from '../../domain/group-by.js';
import type { DrawnLoad, DrawnOutput } from './drawn-board.js';
import type { Hazard } from '../words/hazards.js';
import { faceOf, joined, moved, movedFace, type Block, type Piece } from './face.js';
import type { Measures } from './measures.js';
import { capShape, partBlocks, partLine } from './part-shape.js';
import { voltsAndPower } from './pedal-shape.js';
import type { Area, Face, OutputShape } from './scene.js';
import { textWidth } from './text-size.js';

/** Left of the outputs: where a rail ties those on one ground together. */
export const railRoom = 9;
const outputSides = 4;
/** For the number of an output. */
const numberRoom = 20;
/** For the socket of an output. */
const socketRoom = 8;
/** To either side of that of one in a row. */
const ringRoom = 6.5;
/** Of a bar along the lower edge of an output. */
const edgeHeight = 1.8;
/** So many outputs of which nothing else is to be told stand beside one another. */
const mostInRow = 7;

/** The outputs at the origin, a row each; where there is little height, free ones that give the same share a row. */
export const outputRows = (outputs: readonly DrawnOutput[], measures: Measures): readonly (readonly OutputShape[])[] =>
  (measures.isFlat ? alikeTogether(outputs) : outputs.map((output) => [output] as const)).map((row) => {
    const [only] = row;
    const isRow = measures.isFlat && only.state === 'free';
    return isRow ? freeRow(row, measures) : [outputShape(only, measures)];
  });

const alikeTogether = (outputs: readonly DrawnOutput[]) =>
  runsOf(outputs, (row, output) => row.length < mostInRow && areAlike(row[0], output));

const areAlike = (one: DrawnOutput, other: DrawnOutput): boolean =>
  one.state === 'free' && other.state === 'free' && one.gives === other.gives && one.power === other.power;

/** Each with its number and its socket close to it, the last one with what all of them give. */
function freeRow(row: readonly DrawnOutput[], measures: Measures): readonly OutputShape[] {
  const { strip, sizes, space } = measures;
  const setting = { size: sizes.plain, strong: true };
  const digits = Math.max(...row.map(({ id }) => textWidth(String(id.output), setting)));
  const cell = outputSides + digits + 2 * ringRoom;
  return row.map((output, at): OutputShape => {
    const x = railRoom + at * cell;
    const isLast = at === row.length - 1;
    const width = isLast ? strip - x : cell;
    const number = faceOf([{ kind: 'flow', pieces: [numberPiece(output)] }], digits, sizes);
    const told = isLast ? faceOf([headBlock(output, measures)], width - cell - outputSides, sizes) : null;
    const height = Math.max(number.height, told?.height ?? 0) + 2 * space.inside.output;
    const top = space.inside.output;
    return {
      id: output.id,
      state: output.state,
      x,
      y: 0,
      width,
      height,
      face: joined([
        movedFace(number.face, x + outputSides, top),
        ...(told === null ? [] : [movedFace(told.face, x + cell, top)]),
      ]),
      socket: { x: x + outputSides + digits + ringRoom, y: top + number.height / 2 },
      cap: null,
    };
  });
}

function outputShape(output: DrawnOutput, measures: Measures): OutputShape {
  const { strip, cap: capWidth, sizes, space, isFlat } = measures;
  const width = strip - railRoom;
  const inside = width - outputSides - socketRoom;
  const number = faceOf([{ kind: 'flow', pieces: [numberPiece(output)] }], numberRoom, sizes);
  const head = faceOf([headBlock(output, measures)], inside - numberRoom, sizes);
  const rest = faceOf(restBlocks(output, measures), inside, sizes);
  const cap = output.chain === null || capWidth === null ? null : capShape([output.chain], capWidth, measures);
  const words = head.height + rest.height;
  const height = Math.max(words + 2 * space.inside.output, cap?.height ?? 0);
  const top = (height - words) / 2;
  const left = railRoom + outputSides;
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
      ...(isFlat && output.load !== null ? [edgeBar(output.load, { x: railRoom, width, height })] : []),
    ]),
    socket: { x: strip, y: height / 2 },
    cap:
      cap === null ? null : { ...cap, x: strip, height, face: movedFace(cap.face, strip, (height - cap.height) / 2) },
  };
}

/** How full it is along its lower edge, where that takes no height. */
const edgeBar = ({ percent }: DrawnLoad, { x, width, height }: Pick<Area, 'x' | 'width' | 'height'>): Face => ({
  ...joined([]),
  bars: [{ x, y: height - edgeHeight, width, height: edgeHeight, percent }],
});

const numberPiece = ({ id, state }: DrawnOutput): Piece => ({
  kind: 'text',
  text: String(id.output),
  strong: true,
  soft: state === 'free',
});

function headBlock(output: DrawnOutput, { isTerse, isTight, isFlat, isLow }: Measures): Block {
  const { state, gives, power, load, hazards } = output;
  if (state === 'free')
    return { kind: 'flow', pieces: [softly('free'), ...(isTerse ? [] : [...offersOf(gives), ...marksOf(hazards)])] };
  if (isFlat) {
    const told = [...marksOf(hazards), ...notesOf(isLow ? { ...output, peak: null } : output)];
    return {
      kind: 'line',
      text: voltsAndPower(gives, power, isTight),
      rest: [...(load === null ? [] : loadPieces(load)), ...told],
      isLow,
    };
  }
  const aside = load === null || isTight ? [] : [load.text, `${load.percent} %`];
  return {
    kind: 'head',
    text: voltsAndPower(gives, power, isTight),
    size: 'plain',
    aside: aside.map((text) => ({ kind: 'text', text })),
    rest: [],
  };
}

/** Lines end between one thing that an output could give and the next. */
const offersOf = (gives: string): readonly Piece[] => gives.split(/(?<=,| or) /).map(softly);

function restBlocks(output: DrawnOutput, { isTerse, isTight, isFlat, cap }: Measures): readonly Block[] {
  const { load, hazards, chain, state } = output;
  if (state === 'free') return [];
  if (isFlat) return chain === null ? [] : [partLine(chain, '')];
  const marks = isTerse ? (chain?.hazards ?? []) : hazards;
  return [
    ...(load === null || isTerse || !isTight ? [] : [flowOf([{ kind: 'text', text: load.text }])]),
    ...(load === null ? [] : [{ kind: 'bar', percent: load.percent } as const]),
    flowOf([...marksOf(marks), ...(isTerse ? [] : notesOf(output))]),
    ...(chain === null || cap !== null || isTerse ? [] : [{ kind: 'parting' } as const, ...partBlocks(chain)]),
  ];
}

const notesOf = ({ peak, notes }: DrawnOutput): readonly Piece[] =>
  [...(peak === null ? [] : [peak]), ...notes].map((text) => ({ kind: 'text', text }));

const flowOf = (pieces: readonly Piece[]): Block => ({ kind: 'flow', pieces });

const marksOf = (hazards: readonly Hazard[]): readonly Piece[] => hazards.map((hazard) => ({ kind: 'mark', hazard }));

export const softly = (text: string): Piece => ({ kind: 'text', text, soft: true });

export const loadPieces = ({ text, percent }: DrawnLoad): readonly Piece[] => [
  { kind: 'text', text },
  { kind: 'text', text: `${percent} %` },
];

/** The output with all that is in it, further down. */
export const movedOutput = (output: OutputShape, down: number): OutputShape => ({
  ...moved(output, 0, down),
  face: movedFace(output.face, 0, down),
  socket: moved(output.socket, 0, down),
  cap: output.cap === null ? null : { ...moved(output.cap, 0, down), face: movedFace(output.cap.face, 0, down) },
});
