import type { Kit } from '../../domain/kit.js';
import type { AskedLabel } from '../../planning/ask/decisive-labels.js';
import type { AroundPins } from '../../planning/choose/choose-around.js';
import type { Comparison, PlannedOption } from '../../planning/compare/comparison.js';
import type { Wanted } from '../../planning/wanted/wanted.js';
import { comparisonSheet } from '../../report/sheet/comparison-sheet.js';
import { sheetText } from '../../report/sheet/sheet.js';
import { comparisonHandout } from '../../report/words/comparison-handout.js';
import { handoutOf, type Handout } from '../../report/words/handout.js';
import type { SheetOrder } from './messages.js';
import { handoutAround, type AskedPin } from './told-answer.js';
import { choiceHandout, plannedChoice } from './told-choices.js';

/** An answer that is shown, and what was found out beside it since. */
export type Shown = {
  readonly kit: Kit;
  readonly found: AroundPins | Wanted;
  readonly pins: readonly AskedPin[];
  /** Null until it was told what else could be bought. */
  readonly comparison: Comparison | null;
  /** Null until it was told which labels decide. */
  readonly labels: readonly AskedLabel[] | null;
};

/** The sheet of what is shown, as an HTML page of its own; null where there is nothing to take home. */
export function toldSheet(shown: Shown, { of, chosen, date }: Omit<SheetOrder, 'about'>): string | null {
  const { kit, comparison } = shown;
  if (of === 'choices')
    return comparison === null ? null : comparisonSheet(comparisonHandout({ kit, comparison }), { shop: null, date });
  const handout = handoutShown(shown, chosen);
  return handout === null ? null : sheetText(handout, { shop: null, date });
}

/** The choice that is shown; null where it is the answer. */
export const shownChoice = ({ comparison }: Shown, chosen: string | null): PlannedOption | null =>
  comparison === null || chosen === null ? null : plannedChoice(comparison, chosen);

function handoutShown(shown: Shown, chosen: string | null): Handout | null {
  const { kit, found, pins, comparison, labels } = shown;
  const option = shownChoice(shown, chosen);
  if (comparison !== null && option !== null) return choiceHandout(kit, comparison.aim, option);
  if (found.kind === 'held up') return null;
  const handout = handoutOf({ kit, answer: found, ...(labels === null ? {} : { labels }) });
  return handout.kind === 'plan' ? handoutAround(handout, pins) : handout;
}
