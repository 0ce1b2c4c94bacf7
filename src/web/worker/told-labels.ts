import type { Kit } from '../../domain/kit.js';
import type { DecisiveLabels } from '../../planning/ask/decisive-labels.js';
import { readFirstText, weightOf, type Weight } from '../../report/words/label-weights.js';
import { labelGroups, labelText, undecidingText } from '../../report/words/label-words.js';
import { sentence, speechOf } from '../../report/words/speech.js';

/** Which labels decide, a sentence each, the most decisive first. */
export type ToldLabels = {
  readonly deciding: readonly { readonly weight: Exclude<Weight, 'nothing'>; readonly text: string }[];
  /** Those that decide nothing, in one sentence; null where there are none. */
  readonly others: string | null;
  /** Which of them are to be read before anything is bought; null where there is nothing of the kind. */
  readonly first: string | null;
};

/** Null where there is no plan that they could decide anything of. */
export function toldLabels(kit: Kit, found: DecisiveLabels): ToldLabels | null {
  if (found.kind !== 'labels') return null;
  const speech = speechOf(kit);
  const silent = found.labels.filter(({ decides }) => decides === 'nothing');
  return {
    deciding: (['first', 'purchase', 'unknown', 'wiring'] as const).flatMap((weight) =>
      labelGroups(found.labels.filter((label) => weightOf(label) === weight)).map((group) => ({
        weight,
        text: sentence(speech, labelText(speech, found, group)),
      })),
    ),
    first: readFirstText(speech, found.labels),
    others: silent.length === 0 ? null : undecidingText(speech, silent),
  };
}
