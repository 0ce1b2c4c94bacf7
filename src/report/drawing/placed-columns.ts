import type { DrawnBoard, DrawnStrip } from './drawn-board.js';
import { leadsFrom, leadTo, startsOf } from './drawn-leads.js';
import { evenOut } from './even-out.js';
import { insertionOrder } from './insertion-order.js';
import type { Measures } from './measures.js';
import { movedPedal } from './pedal-shape.js';
import type { PedalShape, StripShape } from './scene.js';
import { movedStrip } from './strip-shape.js';

/** Supplies one below the other, and pedals one below the other. */
export type Columns = { readonly strips: readonly StripShape[]; readonly pedals: readonly PedalShape[] };

/** The supplies in an order in which leads cross little. */
export function stripsInOrder(board: DrawnBoard): readonly DrawnStrip[] {
  const places = new Map(board.pedals.map(({ id }, at) => [id, at]));
  const seats = new Map(
    board.strips.map((strip) => [
      strip,
      leadsFrom(board, strip.id).flatMap(({ ends }) => ends.map(({ pedal }) => places.get(pedal) ?? 0)),
    ]),
  );
  return insertionOrder(board.strips, (above, below) => {
    const lower = seats.get(below) ?? [];
    return (seats.get(above) ?? []).reduce((sum, seat) => sum + lower.filter((other) => other < seat).length, 0);
  });
}

/** Both columns with everything at its height: first the supplies near their pedals, then the pedals at their outputs. */
export function placedColumns(
  board: DrawnBoard,
  { strips, pedals }: Columns,
  { space: { between } }: Measures,
): Columns & { readonly height: number } {
  const height = Math.max(heightOf(strips, between.strips), heightOf(pedals, between.pedals));
  const evenly = evenlySpread(pedals, between.pedals, height);
  const tops = evenOut(
    strips.map((strip) => {
      const fed = leadsFrom(board, strip.id).flatMap(({ ends }) => ends.map(({ pedal }) => pedal));
      const middles = evenly.filter(({ id }) => fed.includes(id)).map((pedal) => pedal.y + pedal.height / 2);
      return { top: meanOf(middles) - strip.height / 2, weight: middles.length, height: strip.height };
    }),
    between.strips,
    height,
  );
  const placed = strips.map((strip, at) => movedStrip(strip, tops[at] ?? 0));
  return { height, strips: placed, pedals: nearOutputs(board, placed, evenly, { gap: between.pedals, height }) };
}

const heightOf = (shapes: readonly { readonly height: number }[], gap: number): number =>
  Math.max(
    0,
    shapes.reduce((sum, { height }) => sum + height + gap, -gap),
  );

const meanOf = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;

function evenlySpread(pedals: readonly PedalShape[], gap: number, height: number): readonly PedalShape[] {
  const spare = (height - heightOf(pedals, gap)) / Math.max(1, pedals.length);
  let top = spare / 2;
  return pedals.map((pedal) => {
    const placed = movedPedal(pedal, 0, top);
    top += pedal.height + gap + spare;
    return placed;
  });
}

/** Each pedal as far as may be at the height of its output. One on a chain has less to say, one without power nothing. */
function nearOutputs(
  board: DrawnBoard,
  strips: readonly StripShape[],
  pedals: readonly PedalShape[],
  { gap, height }: { readonly gap: number; readonly height: number },
): readonly PedalShape[] {
  const wishes = pedals.map((pedal) => {
    const lead = leadTo(board, pedal.id);
    if (lead === undefined) return { top: pedal.y, weight: 0, height: pedal.height };
    const sockets = startsOf(strips, lead).map(({ socket }) => socket.y);
    return { top: meanOf(sockets) - pedal.height / 2, weight: 1 / lead.ends.length, height: pedal.height };
  });
  const tops = evenOut(wishes, gap, height);
  return pedals.map((pedal, at) => movedPedal(pedal, 0, (tops[at] ?? 0) - pedal.y));
}
