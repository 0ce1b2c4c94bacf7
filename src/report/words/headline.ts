import { isMoney, type ChoosingAim, type MoneyTier } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { pedalTiers } from '../../domain/pedal-tier.js';
import { minorUnits } from '../../domain/quantities.js';
import type { Gap } from '../../planning/answer.js';
import { exposedText } from './shared-grounds.js';
import { countedText, tierName } from './money-words.js';
import { pedalCounts } from './pedal-counts.js';
import type { Speech } from './speech.js';
import { pedalTierNotes } from './tier-words.js';
import { capital, countText, priceText } from './words.js';

/** The plan in three sentences. */
export type Headline = {
  /** What it costs. */
  readonly cost: string;
  /** What it comes to: pedals, supplies, leads, noise. */
  readonly counts: string;
  /** Whether no plan is better, or how far this one may be from the best. */
  readonly standing: string;
};

/** The same for any place to show it. */
export const headlineOf = (speech: Speech, aim: ChoosingAim, wiring: JudgedPlan, gap: Gap | null): Headline => ({
  cost: costText(speech, wiring),
  counts: countsText(speech, wiring),
  standing: standingText(speech, { wiring, gap }, bestText(speech, aim)),
});

const costText = (speech: Speech, wiring: JudgedPlan): string =>
  wiring.score.unpowered === 0 && buysNothing(wiring)
    ? 'Nothing to buy: what you own is enough.'
    : spentText(speech, wiring);

const buysNothing = ({ buy }: JudgedPlan): boolean => buy.supplies.length + buy.parts.length === 0;

/** What is spent, and where. */
export const spentText = ({ board, shop }: Speech, wiring: JudgedPlan): string =>
  buysNothing(wiring) ? 'Nothing to buy.' : `Spend ${priceText(wiring.score.money, board)} at ${shop ?? 'the shop'}.`;

function countsText(speech: Speech, { feeds, score, grounds }: JudgedPlan): string {
  const counts = [
    pedalCounts(speech, feeds, countText(score.bricks, 'supply', 'supplies')),
    score.parts === 0 ? 'no extra leads' : countText(score.parts, 'extra lead'),
    exposedText(speech.inventory, { score, grounds }),
  ];
  for (const tier of pedalTiers) if (score[tier] > 0) counts.push(pedalTierNotes[tier](score[tier]));
  return `${counts.join(', ')}.`;
}

/** Whether a plan is the best, which is then said of it, or how far it may be from it. */
export function standingText(
  speech: Speech,
  { wiring, gap }: { readonly wiring: JudgedPlan; readonly gap: Gap | null },
  best: string,
): string {
  if (gap !== null) return `Best found, not proven: the search stopped early. ${gapText(speech, gap)}`;
  const most = wiring.score.unpowered === 0 ? '' : 'no plan powers more of these pedals; of those that power as many, ';
  return `Proven: ${most}${best}.`;
}

function bestText(speech: Speech, aim: ChoosingAim): string {
  const counted = (tier: MoneyTier): string => countedText(tier, speech.board);
  switch (aim) {
    case 'cost':
      return `no plan costs less${counted('cost')}, and none at that cost uses fewer supplies`;
    case 'bricks':
      return `no plan uses fewer supplies, and none with as few costs less${counted('cost')}`;
    case 'quiet':
      return `no plan exposes fewer pedals, and none as quiet costs less${counted('outlay')}`;
  }
}

/** The first open tier: what the plan reaches, what no plan can beat, and so what could be gained at most. */
function gapText({ board }: Speech, { tier, value, bound }: Gap): string {
  const money = isMoney(tier);
  const form = (amount: number): string => (money ? priceText(minorUnits(amount), board) : String(amount));
  const reached = `${capital(tierName(tier, board.policy))}: ${form(value)} here`;
  if (bound === null) return `${reached}; how few it could be at best is not known.`;
  return `${reached}, no plan is below ${form(bound)}, so a better plan could gain ${form(value - bound)} at most.`;
}
