import type { PlanHandout } from '../words/handout.js';
import type { DrawnBoard, DrawnLead } from './drawn-board.js';
import { drawnPedals } from './pedal-contents.js';
import { drawnStrip } from './strip-contents.js';

/** What a plan's board shows. */
export function drawnBoard(plan: PlanHandout): DrawnBoard {
  const { inventory } = plan.speech;
  const boxes = plan.hookup.filter(({ unit }) => unit.supply.source.kind !== 'battery');
  return {
    strips: boxes.map((unit) => drawnStrip(plan, unit)),
    pedals: drawnPedals(plan),
    leads: boxes.flatMap(({ unit: { supply, unit }, leads }) =>
      leads.map(({ number, use, ends }): DrawnLead => ({
        number,
        outputs: use.outputs.map((output) => ({ supply: supply.id, unit, output })),
        ends: ends.map(({ mark, feed }) => ({ pedal: feed.pedal, mark })),
        isKept: use.feeds.every(({ pedal }) => inventory.pedal(pedal).kept !== null),
      })),
    ),
  };
}
