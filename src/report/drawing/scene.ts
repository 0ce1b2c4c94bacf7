/** A drawing as data, before it is written as SVG: what stands where, in units of about one pixel. */

export type Point = { readonly x: number; readonly y: number };
export type Area = Point & { readonly width: number; readonly height: number };

export type TextLine = Point & {
  /** `y` is the base line. */
  readonly text: string;
  readonly size: number;
  readonly strong: boolean;
  /** At most how wide it is. */
  readonly width: number;
  /** All of the text, where this line had to be cut; else null. */
  readonly full: string | null;
};

/** How full something is, as a bar; the figures stand in words beside it. */
export type Bar = Area & {
  /** Whole percent. */
  readonly percent: number;
};

export type BoxKind = 'mains' | 'supply' | 'output' | 'lead' | 'pedal' | 'mark' | 'off';

export type Box = Area & {
  readonly kind: BoxKind;
  readonly lines: readonly TextLine[];
  readonly bars: readonly Bar[];
  /** Where a line parts the box from left to right. */
  readonly partings: readonly number[];
};

/** From box to box, in straight lines along the axes. */
export type Wire = { readonly points: readonly Point[] };

/** A dashed line around what shares a ground. */
export type Frame = Area & { readonly label: readonly TextLine[] };

export type Scene = {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly Box[];
  readonly wires: readonly Wire[];
  readonly frames: readonly Frame[];
  /** Text outside of boxes. */
  readonly notes: readonly TextLine[];
};

/** Several scenes one under the other, with `gap` between them. */
export function stacked(scenes: readonly Scene[], gap: number): Scene {
  let down = 0;
  const moved = scenes.map((scene) => {
    const placed = shifted(scene, down);
    down += scene.height + gap;
    return placed;
  });
  return {
    width: Math.max(0, ...scenes.map(({ width }) => width)),
    height: Math.max(0, down - gap),
    boxes: moved.flatMap(({ boxes }) => boxes),
    wires: moved.flatMap(({ wires }) => wires),
    frames: moved.flatMap(({ frames }) => frames),
    notes: moved.flatMap(({ notes }) => notes),
  };
}

const shifted = ({ width, height, boxes, wires, frames, notes }: Scene, down: number): Scene => ({
  width,
  height,
  boxes: boxes.map((box) => movedBox(box, 0, down)),
  wires: wires.map(({ points }) => ({ points: points.map((point) => moved(point, 0, down)) })),
  frames: frames.map((frame) => ({ ...moved(frame, 0, down), label: frame.label.map((line) => moved(line, 0, down)) })),
  notes: notes.map((note) => moved(note, 0, down)),
});

/** The box with all that is in it, elsewhere. */
export const movedBox = (box: Box, right: number, down: number): Box => ({
  ...moved(box, right, down),
  lines: box.lines.map((line) => moved(line, right, down)),
  bars: box.bars.map((bar) => moved(bar, right, down)),
  partings: box.partings.map((parting) => parting + down),
});

const moved = <Thing extends Point>(thing: Thing, right: number, down: number): Thing => ({
  ...thing,
  x: thing.x + right,
  y: thing.y + down,
});
