import { pluggedOf } from '../../domain/kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { withPlanRecorded } from '../../reading/drafts/record-plan.js';
import type { ReadInputs } from './input-reader.js';
import type { News, Question } from './messages.js';
import { shownChoice, type Shown } from './told-sheet.js';

/** What is shown, with the question that it answers. */
export type Answered = Shown & { readonly question: Question };

/** The board's text with the plan that is shown as its wiring; null where nothing is plugged in it, or the text has no room. */
export function recorded(answered: Answered, chosen: string | null, readInputs: ReadInputs): News {
  const { kit, question } = answered;
  const { about, board, shop, meanings } = question;
  const plan = planShown(answered, chosen);
  const text =
    plan === null || pluggedOf(kit, plan.feeds).length === 0
      ? null
      : withPlanRecorded(
          { kit, text: board.text, read: (changed) => readInputs({ ...board, text: changed }, shop, meanings) },
          plan,
        );
  return { about, kind: 'recorded', text };
}

function planShown(shown: Shown, chosen: string | null): JudgedPlan | null {
  const { found } = shown;
  return shownChoice(shown, chosen)?.wiring ?? (found.kind === 'plan' ? found.wiring : null);
}
