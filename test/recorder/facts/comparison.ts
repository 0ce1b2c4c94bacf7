import { filled, listAt, picked, valueAt, type Data } from '../data.js';
import { boughtFacts, reasonFacts } from './plan.js';

/** The options in their order, each with what it comes to, and what money buys. */
export const comparisonFacts = (comparison: unknown): Data =>
  filled({
    ...picked(comparison, 'status', 'wanted', 'end'),
    options: listAt(comparison, 'options').map(optionFacts),
    tradeOffs: listAt(comparison, 'tradeOffs').map(tradeOffFacts),
    reasons: listAt(comparison, 'reasons').map(reasonFacts),
  });

const optionFacts = (option: unknown): Data =>
  filled({
    ...picked(option, 'rank', 'asked', 'status', 'price', 'score', 'sockets', 'prefer', 'unbeaten'),
    buy: boughtFacts(valueAt(option, 'buy')),
    reasons: listAt(option, 'reasons').map(reasonFacts),
  });

const tradeOffFacts = (tradeOff: unknown): Data => ({
  ...picked(tradeOff, 'against', 'exact'),
  points: listAt(tradeOff, 'points').map((point) => picked(point, 'money', 'exposed', 'bricks', 'parts')),
});
