import { filled, listAt, picked, textAt, type Data } from '../data.js';
import { checkFacts, outputAnswerFacts } from './check.js';
import { comparisonFacts } from './comparison.js';
import { explanationFacts } from './explanation.js';
import { planFacts } from './plan.js';
import { addedFacts, spareFacts } from './spare.js';

/** What a verdict rests on, but not over how many cases. */
const verdictFacts = (verdict: unknown): Data =>
  filled({
    ...picked(verdict, 'verdict', 'aim', 'tiers', 'unpowered', 'refused'),
    reasons: listAt(verdict, 'reasons').length,
  });

const factsByFormat: Readonly<Record<string, (printed: unknown) => Data>> = {
  'boardfeed/plan/1': planFacts,
  'boardfeed/check/1': checkFacts,
  'boardfeed/check-output/1': outputAnswerFacts,
  'boardfeed/comparison/1': comparisonFacts,
  'boardfeed/explain/1': explanationFacts,
  'boardfeed/spare/1': spareFacts,
  'boardfeed/spare-add/1': addedFacts,
  'boardfeed/verdict/1': verdictFacts,
};

/** What has to be the same whenever the same is asked; without the choice among equals, and without words. */
export function factsOf(printed: unknown): Data {
  const format = textAt(printed, 'format');
  if (format === undefined) return {};
  return factsByFormat[format]?.(printed) ?? { format };
}
