import type { ChoosingAim } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Explanation } from '../../planning/explain/explain.js';
import type { Cheaper, Forced } from '../../planning/explain/purchases.js';
import { namesText } from './explain-argument.js';
import { differencesText } from './explain-difference.js';
import type { FactsContext } from './explain-facts.js';
import { boughtTexts } from './purchases.js';
import { listText, priceText } from './words.js';

export type ExplainedPlan = Extract<Explanation, { kind: 'plan' }>;

/** Why each thing is bought; that nothing is, where that is so. */
export function forcedTexts(told: FactsContext, { forced, wiring, aim }: ExplainedPlan): readonly string[] {
  if (forced.length === 0) return [nothingText(told, aim, wiring)];
  return forced.map((each) => forcedText(told, each));
}

const nothingText = ({ board }: FactsContext, aim: ChoosingAim, { score }: JudgedPlan): string =>
  aim === 'cost' && score.exposed === 0 && board.policy.supplyPrice === 0
    ? 'Nothing is bought and no pedal is exposed: no plan costs less than nothing.'
    : 'Nothing is bought: what you own powers every pedal.';

function forcedText(told: FactsContext, { bought, without, pedals }: Forced): string {
  const { inventory } = told;
  const name = bought.of === 'supply' ? inventory.supplyName(bought.id) : inventory.partName(bought.id);
  const forcing =
    pedals.length === 0
      ? ''
      : ` It is there for ${namesText(told, pedals)}: without it ${pedals.length === 1 ? 'that pedal gets no power' : 'not all of them get power'} for the same money.`;
  return `${bought.units} × ${name}. ${withoutText(told, without)}${forcing}`;
}

function withoutText(told: FactsContext, without: Forced['without']): string {
  if (without === 'unknown') return 'What the best plan without it comes to was not settled in time.';
  if (without === null) return 'Without it no plan exists.';
  if (without.length === 0) return 'Another plan without it is as good.';
  return `The best plan without it: ${differencesText(told, without)}.`;
}

/** What the best plan for less money lacks; nothing where there is none to be had for less, or it is not known. */
export function cheaperTexts(told: FactsContext, cheaper: Cheaper | null): readonly string[] {
  if (cheaper === null) return [];
  const { score, buy } = cheaper.wiring;
  const bought = boughtTexts(told, buy);
  const head = `The best that less money can do costs ${priceText(score.money, told.board)} and buys ${bought.length === 0 ? 'nothing' : listText(bought)}.`;
  if (cheaper.kind === 'worse')
    return [
      `${head} Every pedal has power all the same, but it is the worse plan: ${differencesText(told, cheaper.differences)}.`,
    ];
  const left = `It leaves ${namesText(told, cheaper.wiring.unpowered)} without power.`;
  const { pedals } = cheaper;
  const set =
    pedals.length === 0
      ? ''
      : ` No plan for less powers ${pedals.length === 1 ? namesText(told, pedals) : `all of ${namesText(told, pedals)}`}.`;
  return [`${head} ${left}${set}`];
}
