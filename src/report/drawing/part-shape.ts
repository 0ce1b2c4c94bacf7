import type { DrawnPart } from './drawn-board.js';
import { faceOf, movedFace, type Block, type Piece } from './face.js';
import type { Measures } from './measures.js';
import type { CapShape } from './scene.js';

const padding = 5;

const batterySign: Piece = { kind: 'sign', sign: 'battery' };

/** Leads one after the other, from the supply's side, at the origin. */
export function capShape(parts: readonly DrawnPart[], width: number, { sizes }: Measures): CapShape {
  const blocks = parts.flatMap((part, at): readonly Block[] => [
    ...(at === 0 ? [] : [{ kind: 'parting' } as const]),
    ...partBlocks(part),
  ]);
  const { face, height } = faceOf(blocks, width - 2 * padding, sizes);
  return {
    x: 0,
    y: 0,
    width,
    height: height + 2 * padding,
    face: movedFace(face, padding, padding),
    parts: parts.map(({ id }) => id),
  };
}

/** What is said of a lead: its name, its marks and what it changes; of a battery with its sign. */
export const partBlocks = (part: DrawnPart): readonly Block[] => [
  { kind: 'flow', pieces: [...(part.isBattery ? [batterySign] : []), { kind: 'text', text: part.name }] },
  { kind: 'flow', pieces: partMarks(part) },
];

/** The marks of a lead, and what it changes, or on which reading of a label. */
export const partMarks = ({ hazards, notes }: DrawnPart): readonly Piece[] => [
  ...hazards.map((hazard): Piece => ({ kind: 'mark', hazard })),
  ...notes.map((text): Piece => ({ kind: 'text', text, soft: true })),
];

/** The same in one line as far as may be, with a word before the name of a lead. */
export const partLine = (part: DrawnPart, before: string): Block => ({
  kind: 'flow',
  pieces: [
    ...(part.isBattery ? [batterySign] : []),
    { kind: 'text', text: `${part.isBattery ? 'on ' : before}${part.name}` },
    ...partMarks(part),
  ],
});
