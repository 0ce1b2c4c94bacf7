import { compareScores, isMoney, tiersOf, tierValue, type ChoosingAim } from '../../domain/aim.js';
import type { Policy } from '../../domain/board.js';
import type { Score } from '../../domain/plan.js';
import { minorUnits } from '../../domain/quantities.js';
import type { Option, PlannedOption, Preference, TradeOff } from './comparison.js';
import type { OptionDraft } from './option-drafts.js';

type DraftPlan = Extract<OptionDraft, { kind: 'plan' }>;

/** The options in their order, each set beside the best and beside what nothing beats. */
export function finishedOptions(
  drafts: readonly OptionDraft[],
  tradeOffs: readonly TradeOff[],
  { aim, policy }: { readonly aim: ChoosingAim; readonly policy: Policy },
): readonly Option[] {
  const planned = drafts.filter((draft) => draft.kind === 'plan');
  const sorted = [...planned].sort((first, second) => compareScores(first.score, second.score, aim, policy));
  const best = planned.find(({ rank, gap }) => rank === 1 && gap === null);
  const preference = (draft: DraftPlan): Preference => {
    if (best === undefined || draft.gap !== null) return { kind: 'unknown' };
    return draft === best ? { kind: 'best' } : preferenceOf(draft.score, best.score, aim, policy);
  };
  return [
    ...sorted.map((draft) => ({ ...draft, preference: preference(draft), unbeaten: unbeatenBy(tradeOffs, draft) })),
    ...drafts.filter((draft) => draft.kind === 'fails'),
  ];
}

/** Whether the option's figures are those of a plan that nothing beats. */
function unbeatenBy(tradeOffs: readonly TradeOff[], { score }: DraftPlan): PlannedOption['unbeaten'] {
  const unbeatenIn = (against: TradeOff['against']): boolean | null => {
    const curve = tradeOffs.find((each) => each.against === against);
    const known = curve?.points.some(({ money, amount }) => money === score.money && amount === score[against]);
    return known === true ? true : curve?.complete === true ? false : null;
  };
  return { exposed: unbeatenIn('exposed'), bricks: unbeatenIn('bricks') };
}

/**
 * At which price for the whole of it an option is the best under the aim, when nothing else changes its price. Tiers before
 * money cannot be made up for by any price. Where those after it speak against the option, it has to be cheaper by one more
 * minor unit, so that they are not asked.
 */
export function preferenceOf(option: Score, best: Score, aim: ChoosingAim, policy: Policy): Preference {
  let below: number | null = null;
  for (const tier of tiersOf(aim)) {
    const behind = tierValue(tier, option, policy) - tierValue(tier, best, policy);
    if (isMoney(tier)) {
      below = behind;
    } else if (behind !== 0) {
      if (below === null) return { kind: 'never', tier, behind };
      if (behind > 0) below += 1;
      break;
    }
  }
  if (below === null || below <= 0) return { kind: 'as good' };
  if (below <= option.money) {
    return { kind: 'price', at: minorUnits(option.money - below), below: minorUnits(below) };
  }
  const tier = aim === 'quiet' ? 'money' : 'cost';
  return { kind: 'never', tier, behind: tierValue(tier, option, policy) - tierValue(tier, best, policy) };
}
