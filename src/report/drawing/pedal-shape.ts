import type { Power } from '../../domain/pedal.js';
import type { Hazard } from '../words/hazards.js';
import { isOnBattery, type DrawnPedal } from './drawn-board.js';
import { faceOf, moved, movedFace, type Block, type Piece } from './face.js';
import type { Measures } from './measures.js';
import { capShape, partBlocks, partLine, partMarks } from './part-shape.js';
import { leastReach } from './plug-height.js';
import type { PedalShape } from './scene.js';
import { tagSize } from './tag.js';

const padding = 8;

/** A pedal at the origin, whose cap reaches out to the left. */
export function pedalShape(pedal: DrawnPedal, measures: Measures): PedalShape {
  const { pedal: width, cap: capWidth, sizes, space } = measures;
  const words = faceOf(pedalBlocks(pedal, measures), width - 2 * padding, sizes);
  const cap = pedal.parts.length === 0 || capWidth === null ? null : capShape(pedal.parts, capWidth, measures);
  const height = Math.max(
    words.height + 2 * space.inside.pedal,
    cap?.height ?? 0,
    tagSize([], sizes).height + 2 * leastReach,
  );
  const left = cap === null ? 0 : -cap.width;
  return {
    id: pedal.id,
    state: pedal.state,
    x: 0,
    y: 0,
    width,
    height,
    face: movedFace(words.face, padding, (height - words.height) / 2),
    cap: cap === null ? null : { ...cap, x: left, height, face: movedFace(cap.face, left, (height - cap.height) / 2) },
    plug: pedal.state === 'off' || isOnBattery(pedal) ? null : { x: left, y: height / 2 },
  };
}

function pedalBlocks(pedal: DrawnPedal, measures: Measures): readonly Block[] {
  const { name, parts } = pedal;
  const { cap, isTerse, isFlat, isLow } = measures;
  const [volts, ...others] = restPieces(pedal, measures);
  const rest = [volts, ...others].flatMap((piece) => piece ?? []);
  if (isFlat) return [{ kind: 'line', text: name, rest, isLow }, ...parts.map((part) => partLine(part, 'through '))];
  const within =
    cap !== null || isTerse
      ? []
      : parts.flatMap((part): readonly Block[] => [...partBlocks(part), { kind: 'parting' }]);
  const told = isTerse && volts !== undefined ? { aside: [volts], rest: others } : { aside: [], rest };
  return [...within, { kind: 'head', text: name, size: 'name', ...told }];
}

function restPieces(pedal: DrawnPedal, { isTight, isTerse, isFlat }: Measures): readonly Piece[] {
  const { volts, power, draw, polarity, traits, isExposed } = pedal;
  const gets =
    volts === null ? [] : [voltsAndPower(volts, power, isTight || isFlat), ...(isTerse || draw === null ? [] : [draw])];
  const sign: readonly Piece[] = polarity === null || isTerse ? [] : [{ kind: 'sign', sign: polarity }];
  return [
    ...(pedal.state === 'off' ? [textPiece('without power', 'strong')] : [textPiece(gets.join(', '), 'plain')]),
    ...sign,
    ...marksOf(pedal),
    // Where leads are not told, it is here that one reverses, or does by one reading of the label alone.
    ...(isTerse ? pedal.parts.filter(({ hazards }) => hazards.length > 0).flatMap(partMarks) : []),
    ...(isExposed ? [textPiece('exposed to noise', 'strong')] : []),
    ...(isTerse ? [] : traits.map((trait) => textPiece(trait, 'soft'))),
  ];
}

/** "9 V DC"; where there is little room, DC goes without saying. */
export const voltsAndPower = (volts: string, power: Power | null, isTight: boolean): string =>
  power === null || (isTight && power === 'DC') ? volts : `${volts} ${power}`.trim();

const textPiece = (text: string, manner: 'plain' | 'strong' | 'soft'): Piece => ({
  kind: 'text',
  text,
  strong: manner === 'strong',
  soft: manner === 'soft',
});

/** Those of its leads stand at these, where they are drawn, and a shared ground at what ties it. */
const elsewhere: readonly Hazard[] = ['reverses', 'chain', 'shared ground'];

const marksOf = ({ hazards }: DrawnPedal): readonly Piece[] =>
  hazards.filter((hazard) => !elsewhere.includes(hazard)).map((hazard) => ({ kind: 'mark', hazard }));

/** The pedal with all that is in it, elsewhere. */
export const movedPedal = (pedal: PedalShape, right: number, down: number): PedalShape => ({
  ...moved(pedal, right, down),
  face: movedFace(pedal.face, right, down),
  cap: pedal.cap === null ? null : { ...moved(pedal.cap, right, down), face: movedFace(pedal.cap.face, right, down) },
  plug: pedal.plug === null ? null : moved(pedal.plug, right, down),
});
