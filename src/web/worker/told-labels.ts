import type { Kit } from '../../domain/kit.js';
import type { Decides, DecisiveLabels } from '../../planning/ask/decisive-labels.js';
import { labelGroups, labelText, undecidingText } from '../../report/words/label-words.js';
import { sentence, speechOf } from '../../report/words/speech.js';

/** Which labels decide, a sentence each, the most decisive first. */
export type ToldLabels = {
  readonly deciding: readonly { readonly decides: Exclude<Decides, 'nothing'>; readonly text: string }[];
  /** Those that decide nothing, in one sentence; null where there are none. */
  readonly others: string | null;
};

/** Null where there is no plan that they could decide anything of. */
export function toldLabels(kit: Kit, found: DecisiveLabels): ToldLabels | null {
  if (found.kind !== 'labels') return null;
  const speech = speechOf(kit);
  const silent = found.labels.filter(({ decides }) => decides === 'nothing');
  return {
    deciding: (['purchase', 'unknown', 'wiring'] as const).flatMap((decides) =>
      labelGroups(found.labels.filter((label) => label.decides === decides)).map((group) => ({
        decides,
        text: sentence(speech, labelText(speech, found, group)),
      })),
    ),
    others: silent.length === 0 ? null : undecidingText(speech, silent),
  };
}
