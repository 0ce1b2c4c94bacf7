import { outputsOfStrip, type DrawnBoard } from './drawn-board.js';
import { tagSize } from './tag.js';
import type { TextSizes } from './text-size.js';

/**
 * For what room a board is drawn: a desk, a phone, a sheet of paper with words around, one with so many that the drawing has to be
 * as low as can be, or a third of a sheet beside others.
 */
export type DrawingSize = 'wide' | 'narrow' | 'sheet' | 'dense' | 'small';

/** What is left free around things, above and below them. */
export type Space = {
  /** Inside a supply, an output and a pedal. */
  readonly inside: { readonly strip: number; readonly output: number; readonly pedal: number };
  /** Between one supply, stretch of outputs, output or pedal and the next. */
  readonly between: {
    readonly strips: number;
    readonly runs: number;
    readonly outputs: number;
    readonly pedals: number;
  };
};

/** What decides how large things are, in the drawing's units of about one pixel. */
export type Measures = {
  readonly width: number;
  readonly strip: number;
  readonly pedal: number;
  /** How wide leads are that stand beside what they are plugged into; null where they are told in it. */
  readonly cap: number | null;
  /** Room for the number at an end of a lead. */
  readonly tag: number;
  readonly sizes: TextSizes;
  readonly space: Space;
  /** Between one lane of leads and the next, at most. */
  readonly lane: number;
  /** Little room for words: one below the other rather than side by side. */
  readonly isTight: boolean;
  /** Only names, numbers, volts and marks. */
  readonly isTerse: boolean;
  /** Little height: all of an output or a pedal in one line as far as may be. */
  readonly isFlat: boolean;
  /** As little height as can be: names are cut rather than given a line more. */
  readonly isLow: boolean;
};

const roomy: Space = {
  inside: { strip: 8, output: 4, pedal: 5 },
  between: { strips: 12, runs: 5, outputs: 3, pedals: 7 },
};

type Room = Omit<Measures, 'strip' | 'pedal' | 'tag'> & {
  /** The most that a supply and a pedal take. */
  readonly most: { readonly strip: number; readonly pedal: number };
  /** Between one lane and the next, before supplies and pedals have what they want. */
  readonly leastLane: number;
};

const flat: Omit<Room, 'sizes'> = {
  width: 760,
  most: { strip: 346, pedal: 358 },
  cap: null,
  leastLane: 5,
  space: {
    inside: { strip: 3, output: 1.5, pedal: 2 },
    between: { strips: 6, runs: 2, outputs: 2, pedals: 2.5 },
  },
  lane: 12,
  isTight: false,
  isTerse: false,
  isFlat: true,
  isLow: false,
};

const rooms: Readonly<Record<DrawingSize, Room>> = {
  // About what a sheet of paper takes, between its margins, at the size of small print.
  wide: {
    width: 760,
    most: { strip: 240, pedal: 232 },
    cap: 108,
    leastLane: 8,
    sizes: { name: 12, plain: 10.5, mark: 9.5 },
    space: roomy,
    lane: 14,
    isTight: false,
    isTerse: false,
    isFlat: false,
    isLow: false,
  },
  // The same paper, of which words take the most: eight points.
  sheet: { ...flat, sizes: { name: 11.3, plain: 11.3, mark: 11.3 } },
  // As little high as the least size that can be read allows: seven points.
  dense: { ...flat, isLow: true, sizes: { name: 10, plain: 10, mark: 10.5 } },
  // A small phone, without its margins.
  narrow: {
    width: 324,
    most: { strip: 134, pedal: 134 },
    cap: null,
    leastLane: 5,
    sizes: { name: 11.5, plain: 10.5, mark: 9 },
    space: roomy,
    lane: 8,
    isTight: true,
    isTerse: false,
    isFlat: false,
    isLow: false,
  },
  // Eighty millimetres.
  small: {
    width: 300,
    most: { strip: 104, pedal: 136 },
    cap: null,
    leastLane: 5,
    sizes: { name: 9.5, plain: 8.5, mark: 9 },
    space: { ...roomy, between: { ...roomy.between, pedals: 4 } },
    lane: 8,
    isTight: true,
    isTerse: true,
    isFlat: false,
    isLow: false,
  },
};

/** Beside the number of a lead. */
const besideTag = 10;

/** The measures for a board with so many lanes of leads: supplies and pedals share what leads and their numbers leave. */
export function measuresFor({ strips, pedals, leads }: DrawnBoard, size: DrawingSize, lanes: number): Measures {
  const { most, leastLane, ...room } = rooms[size];
  const marks = leads.flatMap(({ ends }) => ends.map(({ mark }) => mark));
  const tag = tagSize(marks, room.sizes).width + besideTag;
  const chains = strips.flatMap(outputsOfStrip).some(({ chain }) => chain !== null);
  const caps = (chains ? 1 : 0) + (pedals.some(({ parts }) => parts.length > 0) ? 1 : 0);
  const channel = 2 * tag + (lanes + 1) * leastLane + caps * (room.cap ?? 0);
  const left = Math.min(room.width - channel, most.strip + most.pedal);
  const strip = Math.floor((left * most.strip) / (most.strip + most.pedal));
  return { ...room, tag, strip, pedal: Math.floor(left) - strip };
}
