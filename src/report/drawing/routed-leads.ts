import type { DrawnBoard } from './drawn-board.js';
import { startsOf } from './drawn-leads.js';
import { lanesFor } from './lanes.js';
import { leadShape, runOf, type Channel, type Ending } from './lead-shape.js';
import type { Measures } from './measures.js';
import type { Columns } from './placed-columns.js';
import { outputShapes, type LeadShape, type OutputShape } from './scene.js';

/** How many colours help to follow leads. */
const tones = 4;

/** The leads in lanes between both columns, each with its number at its ends; and how many lanes that takes. */
export function routedLeads(
  board: DrawnBoard,
  { strips, pedals }: Columns,
  measures: Measures,
): { readonly leads: readonly LeadShape[]; readonly lanes: number } {
  const left = Math.max(0, ...strips.flatMap(outputShapes).map((output) => startOf(output).x));
  const right = Math.min(measures.width, ...pedals.map((pedal) => pedal.plug?.x ?? pedal.cap?.x ?? pedal.x));
  const { tag, sizes } = measures;
  const channel: Channel = { tagLeft: left + tag / 2, tagRight: right - tag / 2, sizes };
  const routed = board.leads.map((lead) => {
    const outputs = startsOf(strips, lead).map((output): Ending => ({
      at: startOf(output),
      mark: String(lead.number),
    }));
    const ends = pedals.flatMap(({ id, plug }): readonly Ending[] => {
      const end = lead.ends.find(({ pedal }) => pedal === id);
      return end === undefined || plug === null ? [] : [{ at: plug, mark: end.mark }];
    });
    return { lead, outputs, ends, run: runOf(outputs, ends) };
  });
  const lanes = lanesFor(routed.map(({ run }) => run));
  const count = Math.max(0, ...[...lanes.values()].map((lane) => lane + 1));
  const placeOf = lanePlaces(count, left + tag, right - tag, measures.lane);
  const leads = routed.map(({ lead, outputs, ends, run }) => {
    const lane = lanes.get(run);
    const shape = leadShape(lead, outputs, ends, lane === undefined ? null : placeOf(lane), channel);
    return { ...shape, tone: (lane ?? 0) % tones };
  });
  return { leads, lanes: count };
}

/** Where the lead of an output starts: past a chain lead that hangs on it. */
const startOf = ({ socket, cap }: OutputShape) => ({ x: socket.x + (cap?.width ?? 0), y: socket.y });

/** Where each lane is: all in the middle, as far apart as there is room for, and no further than is usual. */
function lanePlaces(count: number, from: number, to: number, usual: number): (lane: number) => number {
  const step = Math.min(usual, (to - from) / (count + 1));
  const first = (from + to - (count - 1) * step) / 2;
  return (lane) => first + lane * step;
}
