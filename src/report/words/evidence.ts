import { tierValue, type ChoosingAim, type MoneyTier } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { minorUnits } from '../../domain/quantities.js';
import type { Evidence } from '../../planning/answer.js';
import { countedText } from './money-words.js';
import type { Speech } from './speech.js';
import { countText, listText, priceText } from './words.js';

/**
 * Why no plan is better, by the argument of the price tags: no supply can carry more than it costs, so that all cost at least what
 * the tags add up to; what is limited is let save as much as it ever could. Null where the plan is not proven.
 */
export function evidenceText(
  speech: Speech,
  aim: ChoosingAim,
  wiring: JudgedPlan,
  evidence: Evidence | undefined,
): string | null {
  if (evidence === undefined) return null;
  const claim = claimText(speech, aim, wiring);
  if (isNothing(speech, aim, wiring)) return `${claim}: ${nothingText[aim]}.`;
  const { cases, limits } = evidence;
  const [tags, worth] = [tagText(speech, aim, wiring), worthText(speech, aim, wiring)];
  const left = limits
    ? `, and let what is limited (units that you own, stock, limits of your own) save as much as it ever could; ${worth} is left. No other`
    : `; the tags make ${worth} in all. No`;
  return (
    `${claim}: put ${tags}${left} unit at ${speech.shop ?? 'the shop'} can carry pedals whose tags come to more than ` +
    `${costText(speech, aim)}. So no plan does with less.${casesText(cases)}`
  );
}

/** A sentence about cases that were told apart, after what it is about; nothing where there is one. */
export const casesText = (cases: number): string =>
  cases === 1 ? '' : ` That holds in each of ${cases} cases that together leave nothing out.`;

/** Whether there is nothing to prove: what cannot be less than nothing is nothing. */
const isNothing = ({ board }: Speech, aim: ChoosingAim, { score }: JudgedPlan): boolean =>
  score.money === 0 &&
  score.exposed === 0 &&
  (score.bricks === 0 || (aim !== 'bricks' && board.policy.supplyPrice === 0));

const nothingText: Readonly<Record<ChoosingAim, string>> = {
  cost: 'it costs nothing, and no pedal is exposed',
  bricks: 'no supply is in use',
  quiet: 'no pedal is exposed, and nothing has to be bought',
};

function claimText({ board }: Speech, aim: ChoosingAim, { score }: JudgedPlan): string {
  const among = score.unpowered === 0 ? '' : ` for ${countText(board.pedals.length - score.unpowered, 'pedal')}`;
  switch (aim) {
    case 'cost':
      return `The cheapest possible${among}`;
    case 'bricks':
      return `The fewest supplies possible${among}`;
    case 'quiet':
      return `The quietest possible${among}, at the least money${countedText('outlay', board)}`;
  }
}

const tagText = ({ board }: Speech, aim: ChoosingAim, { score }: JudgedPlan): string => {
  const within = [
    ...(score.exposed === 0 ? [] : ['noise']),
    ...(board.policy.supplyPrice === 0 ? [] : ['supplies in use']),
  ];
  switch (aim) {
    case 'cost':
      return `a price tag on every pedal${within.length === 0 ? '' : `, ${listText(within)} counted in`}`;
    case 'bricks':
      return 'a tag on every pedal, a share of a supply and of money';
    case 'quiet':
      return 'a tag on every pedal, a share of noise and of money';
  }
};

function worthText({ board }: Speech, aim: ChoosingAim, { score }: JudgedPlan): string {
  const price = (tier: MoneyTier): string => priceText(minorUnits(tierValue(tier, score, board.policy)), board);
  switch (aim) {
    case 'cost':
      return price('cost');
    case 'bricks':
      return `${countText(score.bricks, 'supply', 'supplies')} and ${price('cost')}`;
    case 'quiet':
      return `${countText(score.exposed, 'exposed pedal')} and ${price('outlay')}`;
  }
}

const costText = ({ board }: Speech, aim: ChoosingAim): string =>
  aim === 'cost' && board.policy.supplyPrice === 0 ? 'it costs with its leads' : 'it counts for with its leads';
