import { filled, listAt, picked, sorted, textAt, valueAt, type Data } from '../data.js';
import { findingFacts } from './check.js';
import { boughtFacts, planFacts } from './plan.js';

/** How much more can be fed. Left as it is plugged, that is a matter of which of several best plans is taken. */
export const spareFacts = (spare: unknown): Data =>
  filled({
    ...picked(spare, 'status', 'basis', 'complete', 'counted'),
    buy: boughtFacts(valueAt(spare, 'buy')),
    findings: sorted(listAt(spare, 'findings').map(findingFacts)),
    ...(textAt(spare, 'basis') === 'plan'
      ? {}
      : { asPlugged: roomFacts(valueAt(spare, 'asPlugged')), units: listAt(spare, 'units').map(unitFacts) }),
    replugged: roomFacts(valueAt(spare, 'replugged')),
  });

const roomFacts = (room: unknown): Data => ({
  ...picked(room, 'more'),
  largest: largestFacts(valueAt(room, 'largestDigital')),
  quietest: largestFacts(valueAt(room, 'largestQuietDigital')),
});

const largestFacts = (largest: unknown): Data => picked(largest, 'answer', 'milliamps');

const unitFacts = (unit: unknown): Data => ({
  ...picked(unit, 'supply', 'unit'),
  used: listAt(unit, 'used').map((used) => picked(used, 'outputs', 'rating', 'planned', 'left')),
  free: listAt(unit, 'free').map((free) => picked(free, 'output', 'settings')),
  totals: listAt(unit, 'totals').map((total) => picked(total, 'of', 'rating', 'planned', 'left')),
});

/** Whether one more pedal can be fed, with nothing bought and with the shop open. */
export const addedFacts = (added: unknown): Data =>
  filled({
    ...picked(added, 'answer', 'basis'),
    findings: sorted(listAt(added, 'findings').map(findingFacts)),
    result: planFacts(valueAt(added, 'result')),
    bought: planFacts(valueAt(added, 'bought')),
  });
