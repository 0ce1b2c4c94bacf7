import type { DrawnLead } from './drawn-board.js';
import type { Run } from './lanes.js';
import type { TextSizes } from './text-size.js';
import type { LeadShape, Point } from './scene.js';
import { tagAt } from './tag.js';

/** Where the numbers of leads stand, at the outputs and at the pedals. */
export type Channel = { readonly tagLeft: number; readonly tagRight: number; readonly sizes: TextSizes };

/** The place of an end of a lead, and what is written on it. */
export type Ending = { readonly at: Point; readonly mark: string };

/** A lead from its outputs to its pedals by way of its lane; null for a straight one. */
export function leadShape(
  lead: DrawnLead,
  outputs: readonly Ending[],
  pedals: readonly Ending[],
  lane: number | null,
  { tagLeft, tagRight, sizes }: Channel,
): Omit<LeadShape, 'tone'> {
  const ends = [...outputs, ...pedals].map(({ at }) => at).sort((one, other) => one.y - other.y);
  const between = ends.slice(1, -1);
  return {
    number: lead.number,
    outputs: lead.outputs,
    pedals: lead.ends.map(({ pedal }) => pedal),
    isKept: lead.isKept,
    lines: linesOf(ends, between, lane),
    joints: lane === null ? [] : between.map(({ y }) => ({ x: lane, y })),
    tags: [
      ...outputs.map(({ at, mark }) => tagAt({ x: tagLeft, y: at.y }, mark, sizes)),
      ...pedals.map(({ at, mark }) => tagAt({ x: tagRight, y: at.y }, mark, sizes)),
    ],
  };
}

function linesOf(ends: readonly Point[], between: readonly Point[], lane: number | null): LeadShape['lines'] {
  const [first, last] = [ends[0], ends.at(-1)];
  if (first === undefined || last === undefined) return [];
  if (lane === null) return [[first, last]];
  const whole = [first, { x: lane, y: first.y }, { x: lane, y: last.y }, last];
  return [whole, ...between.map((end) => [end, { x: lane, y: end.y }])];
}

/** The heights of a lead's ends. */
export const runOf = (outputs: readonly Ending[], pedals: readonly Ending[]): Run => ({
  lefts: outputs.map(({ at }) => at.y),
  rights: pedals.map(({ at }) => at.y),
});
