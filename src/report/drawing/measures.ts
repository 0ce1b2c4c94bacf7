import { outputsOfStrip, type DrawnBoard } from './drawn-board.js';
import { tagSize } from './tag.js';
import type { TextSizes } from './text-size.js';

/** For what room a board is drawn: a desk or a sheet of paper, a phone, or a third of a sheet beside others. */
export type DrawingSize = 'wide' | 'narrow' | 'small';

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
  /** Between one pedal and the next. */
  readonly gap: number;
  /** Between one lane of leads and the next, at most. */
  readonly lane: number;
  /** Little room for words: one below the other rather than side by side. */
  readonly isTight: boolean;
  /** Only names, numbers, volts and marks. */
  readonly isTerse: boolean;
};

type Room = Omit<Measures, 'strip' | 'pedal' | 'tag'> & {
  /** The most that a supply and a pedal take. */
  readonly most: { readonly strip: number; readonly pedal: number };
  /** Between one lane and the next, before supplies and pedals have what they want. */
  readonly leastLane: number;
};

const rooms: Readonly<Record<DrawingSize, Room>> = {
  // About what a sheet of paper takes, between its margins, at the size of small print.
  wide: {
    width: 760,
    most: { strip: 240, pedal: 232 },
    cap: 108,
    leastLane: 8,
    sizes: { name: 12, plain: 10.5, mark: 9.5 },
    gap: 7,
    lane: 14,
    isTight: false,
    isTerse: false,
  },
  // A small phone, without its margins.
  narrow: {
    width: 324,
    most: { strip: 134, pedal: 134 },
    cap: null,
    leastLane: 5,
    sizes: { name: 11.5, plain: 10.5, mark: 9 },
    gap: 7,
    lane: 8,
    isTight: true,
    isTerse: false,
  },
  // Eighty millimetres.
  small: {
    width: 300,
    most: { strip: 104, pedal: 136 },
    cap: null,
    leastLane: 5,
    sizes: { name: 9.5, plain: 8.5, mark: 8 },
    gap: 4,
    lane: 8,
    isTight: true,
    isTerse: true,
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
