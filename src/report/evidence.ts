import type { ChoosingAim } from '../domain/aim.js';
import { tierValue } from '../domain/aim.js';
import type { Wiring } from '../domain/plan.js';
import { minorUnits } from '../domain/quantities.js';
import type { Evidence } from '../planning/answer.js';
import { block } from './layout.js';
import { safeText } from './safe-text.js';
import type { Screen } from './screen.js';
import { countText, priceText } from './words.js';

const indent = 2;

/** Why no plan is better, in words that need no mathematics; nothing where the plan is not proven. */
export function evidenceLines(
  screen: Screen,
  aim: ChoosingAim,
  wiring: Wiring,
  evidence: Evidence | undefined,
): string[] {
  if (evidence === undefined) return [];
  const text =
    evidence.kind === 'tags' ? tagsText(screen, aim, wiring, evidence.cases) : agreementText(screen, aim, wiring);
  return block([{ text }], screen.width, indent);
}

/** The argument of the price tags: no supply can carry more than it costs, so all cost at least what the tags add up to. */
function tagsText(screen: Screen, aim: ChoosingAim, wiring: Wiring, cases: number): string {
  const shop = safeText(screen.catalogue.name);
  const told = cases === 1 ? '' : ` That holds in each of ${cases} cases that together leave nothing out.`;
  return (
    `${claimText(screen, aim, wiring)}: ${tagText(screen, aim, wiring)} No unit at ${shop}, nor any that you own, can ` +
    `carry pedals whose tags come to more than ${priceOfUnit(aim)}. So no plan does with less.${told}`
  );
}

const agreementText = (screen: Screen, aim: ChoosingAim, wiring: Wiring): string =>
  `${claimText(screen, aim, wiring)}: two searches that put the question in different ways found no better plan, ` +
  'and each ruled every other one out.';

function claimText(screen: Screen, aim: ChoosingAim, { score }: Wiring): string {
  const among = score.unpowered === 0 ? '' : ` for ${countText(screen.board.pedals.length - score.unpowered, 'pedal')}`;
  switch (aim) {
    case 'cost':
      return `The cheapest possible${among}`;
    case 'bricks':
      return `The fewest supplies possible${among}`;
    case 'quiet':
      return `The quietest possible${among}, at the least money`;
  }
}

function tagText({ board }: Screen, aim: ChoosingAim, { score }: Wiring): string {
  const cost = priceText(minorUnits(tierValue('cost', score, board.policy)), board);
  switch (aim) {
    case 'cost':
      return `put a price tag on every pedal${score.exposed === 0 ? '' : ', noise counted in'}; the tags make ${cost} in all.`;
    case 'bricks':
      return `put a tag on every pedal, a share of a supply and of money; the tags make ${countText(score.bricks, 'supply', 'supplies')} and ${cost} in all.`;
    case 'quiet':
      return `put a tag on every pedal, a share of noise and of money; the tags make ${countText(score.exposed, 'exposed pedal')} and ${priceText(score.money, board)} in all.`;
  }
}

const priceOfUnit = (aim: ChoosingAim): string =>
  aim === 'cost' ? 'it costs with its leads' : 'it counts for with its leads';
