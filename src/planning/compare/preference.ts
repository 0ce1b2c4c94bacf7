import { compareScores, isMoney, tiersOf, tierValue, type ChoosingAim, type Tier } from '../../domain/aim.js';
import type { Policy } from '../../domain/board.js';
import type { Score } from '../../domain/plan.js';
import { minorUnits } from '../../domain/quantities.js';
import type { Preferring } from './choices.js';
import type { Option, PlannedOption, Preference, TradeOff } from './comparison.js';
import { meritsOf } from './merits.js';
import type { OptionDraft } from './option-drafts.js';
import type { UnbeatenFound } from './unbeaten.js';

type DraftPlan = Extract<OptionDraft, { kind: 'plan' }>;

/** What the options are set beside; `best` is the score of the best under the aim, null where that is not known. */
export type Beside = {
  readonly best: Score | null;
  readonly unbeaten: UnbeatenFound;
  readonly tradeOffs: readonly TradeOff[];
};

/** The options in their order, each set beside the best and beside what nothing beats. */
export function finishedOptions(
  drafts: readonly OptionDraft[],
  { best, unbeaten, tradeOffs }: Beside,
  preferring: Preferring,
): readonly Option[] {
  const { aim, policy } = preferring;
  const planned = drafts.filter((draft) => draft.kind === 'plan');
  const sorted = [...planned].sort((first, second) => compareScores(first.score, second.score, aim, policy));
  const preference = (draft: DraftPlan): Preference => {
    if (best === null || draft.gap !== null) return { kind: 'unknown' };
    return draft.score === best ? { kind: 'best' } : preferenceOf(draft.score, best, aim, policy);
  };
  return [
    ...sorted.map((draft) => ({
      ...draft,
      merits: meritsOf(draft.score, best, unbeaten, preferring),
      preference: preference(draft),
      unbeaten: unbeatenBy(tradeOffs, draft),
    })),
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
  const behindIn = (tier: Tier): number => tierValue(tier, option, policy) - tierValue(tier, best, policy);
  const tiers = tiersOf(aim, policy);
  const money = tiers.findIndex(isMoney);
  const differs = (tier: Tier): boolean => behindIn(tier) !== 0;
  const before = tiers.slice(0, money).find(differs);
  if (before !== undefined) return { kind: 'never', tier: before, behind: behindIn(before) };
  const after = tiers.slice(money + 1).find(differs);
  const [tier = 'money'] = tiers.slice(money);
  const behind = behindIn(tier);
  const below = behind + (after !== undefined && behindIn(after) > 0 ? 1 : 0);
  if (below <= 0) return { kind: 'as good' };
  return below <= option.money
    ? { kind: 'price', at: minorUnits(option.money - below), below: minorUnits(below) }
    : { kind: 'never', tier, behind };
}
