import { tierValue } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Answer } from '../../planning/answer.js';
import type { Changes } from '../../planning/rewire/changes.js';
import { casesText } from './evidence.js';
import { countedText } from './money-words.js';
import { spentText, standingText, type Headline } from './headline.js';
import { exposedText } from './shared-grounds.js';
import { pedalCounts } from './pedal-counts.js';
import type { Speech } from './speech.js';
import { allText, capital, countText } from './words.js';

type Plan = Extract<Answer, { kind: 'plan' }>;

/** The plan as a difference against today: what moves and costs, what it comes to, and whether no plan is better. */
export const rewireHeadline = (speech: Speech, plan: Plan, changes: Changes): Headline => ({
  cost: `${movesText(changes)} ${spentText(speech, plan.wiring)}`,
  counts: countsText(speech, plan.wiring),
  standing: standingText(speech, plan, bestText(speech, plan.wiring)),
});

/** "5 pedals stay, 2 move, 1 is new." */
export function movesText({ stays, moves, added, dropped, steps }: Changes): string {
  if (steps.length === 0)
    return `Nothing to do: ${allText(stays.length, 'pedal')} ${stays.length === 1 ? 'stays' : 'stay'} as plugged.`;
  const are = (count: number, one: string, many: string): readonly string[] =>
    count === 0 ? [] : [`${count} ${count === 1 ? one : many}`];
  const counts = [
    ...are(stays.length, 'stays', 'stay'),
    ...(moves.length === 0 ? ['none moves'] : are(moves.length, 'moves', 'move')),
    ...are(added.length, 'is new', 'are new'),
    ...are(dropped.length, 'is unplugged', 'are unplugged'),
  ];
  return `${capital(counts.join(', '))}.`.replace(
    /^(\d+) /,
    (_, count: string) => `${countText(Number(count), 'pedal')} `,
  );
}

function countsText(speech: Speech, wiring: JudgedPlan): string {
  const { feeds, score } = wiring;
  const counts = [
    pedalCounts(speech, feeds, countText(score.bricks, 'supply', 'supplies')),
    score.parts === 0 ? 'no extra leads' : countText(score.parts, 'extra lead'),
    noiseText(speech, wiring),
  ];
  return `${counts.join(', ')}.`;
}

function noiseText({ inventory }: Speech, wiring: JudgedPlan): string {
  const { exposed, newlyExposed = exposed } = wiring.score;
  const newly = exposed === 0 ? '' : `, ${newlyExposed === 0 ? 'none' : newlyExposed} of them newly`;
  return `${exposedText(inventory, wiring)}${newly}`;
}

/** The tiers of the aim that matter for this plan. */
function bestText({ board }: Speech, { score }: JudgedPlan): string {
  const { noisePrice } = board.policy;
  const isFree = tierValue('newCost', score, board.policy) === 0;
  if (isFree && score.moved === 0) return 'nothing has to be bought, and no pedal has to move';
  if (isFree) {
    const quiet = noisePrice === 0 ? '' : ' and exposes no further pedal';
    return `no plan that costs nothing${quiet} moves fewer pedals`;
  }
  return `no plan costs less${countedText('newCost', board)}, and none at that cost moves fewer pedals`;
}

/** Why no plan is better; null where the plan is not proven. */
export function rewireEvidence({ board }: Speech, { wiring: { score }, evidence }: Plan): string | null {
  if (evidence === undefined) return null;
  if (tierValue('newCost', score, board.policy) === 0 && score.newlyExposed === 0 && score.moved === 0)
    return 'It costs nothing, exposes no further pedal and moves none: there is no less than that.';
  const { cases, limits } = evidence;
  const saved = limits
    ? ', and let what is limited (units that you own, stock, limits of your own) save as much as it ever could'
    : '';
  return (
    `The fewest moves possible at the least cost: put a tag on every pedal, a share of money and of moves${saved}. ` +
    `No ${limits ? 'other ' : ''}unit can carry pedals whose tags come to more than it counts for with its leads and the ` +
    `moves to it. So no plan does with less.${casesText(cases)}`
  );
}
