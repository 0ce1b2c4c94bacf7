import { filled, listAt, picked, sorted, valueAt, type Data } from '../data.js';
import { boughtFacts, rulesOf } from './plan.js';

/** What stands in the way and what would help; or what the plan needs its purchases for, or the pedal its place. */
export const explanationFacts = (explanation: unknown): Data =>
  filled({
    ...picked(explanation, 'status', 'pedal', 'complete'),
    conflicts: listAt(explanation, 'conflicts').map(conflictFacts),
    ways: listAt(explanation, 'ways').map(wayFacts),
    plan: planFigures(valueAt(explanation, 'plan')),
    purchases: sorted(listAt(explanation, 'purchases').map(purchaseFacts)),
    cheaper: cheaperFacts(valueAt(explanation, 'cheaper')),
    elsewhere: listAt(valueAt(explanation, 'seat'), 'elsewhere').map(elsewhereFacts),
    unfit: listAt(valueAt(explanation, 'seat'), 'unfit').length,
  });

const conflictFacts = (conflict: unknown): Data =>
  filled({
    ...picked(conflict, 'size', 'facts', 'needed'),
    pedals: listAt(conflict, 'pedals').length,
    refusals: listAt(conflict, 'refusals').map((each) => rulesOf(valueAt(each, 'refusals'))),
  });

const wayFacts = (way: unknown): Data => ({
  ...picked(way, 'change', 'from', 'to', 'factor', 'budget', 'bricks', 'sockets', 'of', 'id', 'units', 'lead', 'pedal'),
  ...picked(way, 'output', 'cheapest'),
  pedals: listAt(way, 'pedals').length,
  plan: planFigures(valueAt(way, 'plan')),
});

const planFigures = (plan: unknown): Data | undefined =>
  plan === null || plan === undefined
    ? undefined
    : { ...picked(plan, 'money'), unpowered: listAt(plan, 'unpowered').length };

const purchaseFacts = (purchase: unknown): Data => picked(purchase, 'of', 'id', 'units', 'without');

const cheaperFacts = (cheaper: unknown): Data | undefined =>
  cheaper === null || cheaper === undefined
    ? undefined
    : { ...picked(cheaper, 'answer', 'differences'), buy: boughtFacts(valueAt(valueAt(cheaper, 'plan'), 'buy')) };

const elsewhereFacts = (elsewhere: unknown): Data =>
  filled({
    ...picked(elsewhere, 'supply', 'bank', 'outputs', 'answer', 'differences'),
    rules: rulesOf(valueAt(elsewhere, 'findings')),
  });
