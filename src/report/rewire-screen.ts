import type { Wiring } from '../domain/plan.js';
import type { Answer } from '../planning/answer.js';
import type { Changes } from '../planning/changes.js';
import { gapText } from './headline.js';
import { block, type Piece } from './layout.js';
import { changeLines } from './rewire-changes.js';
import { stepLines } from './rewire-steps.js';
import { safeText } from './safe-text.js';
import { section, type Screen } from './screen.js';
import { cautionLines, confirmLines, groundLines, leftOutLines } from './sections.js';
import { shoppingLines } from './shopping.js';
import { unitUses } from './usage.js';
import { wiringEntry } from './wiring-entry.js';
import { capital, countText, listText, priceText } from './words.js';

type Plan = Extract<Answer, { kind: 'plan' }>;

/** A plan as a difference against today, in the order in which a person goes about it. */
export function rewireLines(screen: Screen, plan: Plan, changes: Changes): readonly string[] {
  const { wiring, reasons } = plan;
  const { board, inventory } = screen;
  const { supplies, parts } = wiring.buy;
  const shopping =
    supplies.length + parts.length === 0 ? [] : shoppingLines(screen, wiring, unitUses(board, inventory, wiring));
  const sections: readonly (readonly [string, readonly string[]])[] = [
    ['What changes', changeLines(screen, wiring, changes)],
    ['Buy', shopping],
    ['Confirm before plugging in', confirmLines(screen, wiring)],
    ['Re-plug, in this order', stepLines(screen, wiring, changes)],
    ['Write into the board file', entryLines(screen, wiring, changes)],
    ['Grounds and noise', groundLines(screen, wiring)],
    ['Cautions', cautionLines(screen, wiring)],
  ];
  return [
    ...headLines(screen, plan, changes),
    ...section(screen, 'Left out', leftOutLines(screen, wiring, reasons)),
    ...sections
      .filter(([, lines]) => lines.length > 0)
      .flatMap(([title, lines], at) => section(screen, `${at + 1}. ${title}`, lines)),
    ...section(screen, 'Why no plan is better', evidenceLines(screen, plan)),
  ];
}

function headLines(screen: Screen, plan: Plan, changes: Changes): string[] {
  const { board, paints, width } = screen;
  return block(
    [
      { text: `${safeText(board.name)}: how to re-plug it`, paint: paints.title },
      { text: `${movesText(changes)} ${costText(screen, plan.wiring)}` },
      { text: countsText(screen, plan.wiring) },
      provenPiece(screen, plan),
    ],
    width,
  );
}

/** "5 pedals stay, 2 move, 1 is new." */
function movesText({ stays, moves, added, dropped, steps }: Changes): string {
  if (steps.length === 0)
    return `Nothing to do: ${stays.length === 1 ? 'the pedal stays' : `all ${countText(stays.length, 'pedal')} stay`} as plugged.`;
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

function costText({ board, catalogue }: Screen, { score, buy }: Wiring): string {
  if (buy.supplies.length + buy.parts.length === 0) return 'Nothing to buy.';
  return `Spend ${priceText(score.money, board)} at ${safeText(catalogue.name)}.`;
}

function countsText({ board }: Screen, { feeds, score }: Wiring): string {
  const all = board.pedals.length;
  const powered =
    feeds.length === all
      ? `All ${countText(all, 'pedal')} powered`
      : `${feeds.length} of ${countText(all, 'pedal')} powered`;
  const counts = [
    `${powered} from ${countText(score.bricks, 'supply', 'supplies')}`,
    score.parts === 0 ? 'no extra leads' : countText(score.parts, 'extra lead'),
    noiseText(score),
  ];
  return `${counts.join(', ')}.`;
}

function noiseText({ exposed, newlyExposed = exposed }: Wiring['score']): string {
  if (exposed === 0) return 'none exposed to digital noise';
  return `${exposed} exposed to digital noise, ${newlyExposed === 0 ? 'none' : newlyExposed} of them newly`;
}

function provenPiece(screen: Screen, { wiring, gap }: Plan): Piece {
  const { paints } = screen;
  if (gap !== null)
    return {
      text: `Best found, not proven: the search stopped early. ${gapText(screen, gap)}`,
      paint: paints.caution,
    };
  const most = wiring.score.unpowered === 0 ? '' : 'no plan powers more of these pedals; of those that power as many, ';
  return { text: `Proven: ${most}${bestText(screen, wiring)}.`, paint: paints.good };
}

/** The tiers of the aim that matter for this plan. */
function bestText({ board }: Screen, { score }: Wiring): string {
  const { noisePrice } = board.policy;
  const isFree = score.money === 0 && (score.newlyExposed === 0 || noisePrice === 0);
  if (isFree && score.moved === 0) return 'nothing has to be bought, and no pedal has to move';
  if (isFree) {
    const quiet = noisePrice === 0 ? '' : ' and exposes no further pedal';
    return `no plan that costs nothing${quiet} moves fewer pedals`;
  }
  const counted = noisePrice === 0 ? '' : `, with ${priceText(noisePrice, board)} counted for each newly exposed pedal`;
  return `no plan costs less${counted}, and none at that cost moves fewer pedals`;
}

/** The entries of `wiring` that differ afterwards, so that the file is true again. */
function entryLines(
  { inventory, width, paints }: Screen,
  { feeds, buy }: Wiring,
  { steps, dropped }: Changes,
): string[] {
  if (steps.length === 0) return [];
  const plugged = new Set(steps.flatMap((step) => (step.kind === 'plug' ? [step.feed.pedal] : [])));
  const entries = feeds.filter(({ pedal }) => plugged.has(pedal)).map(wiringEntry);
  const texts = [
    ...(entries.length === 0 ? [] : ['These entries of `wiring` are then:']),
    ...(dropped.length === 0 ? [] : [`Take out of \`wiring\`: ${listText(dropped.map(inventory.pedalName))}.`]),
    ...(buy.supplies.length + buy.parts.length === 0 ? [] : ['Add what you have bought to `owned`.']),
  ];
  return block(
    [...texts.map((text) => ({ text, paint: paints.faint })), ...entries.map((text) => ({ text, hang: 4 }))],
    width,
    2,
  );
}

/** Nothing where the plan is not proven, and where there is nothing to prove. */
function evidenceLines(screen: Screen, { wiring: { score }, evidence }: Plan): string[] {
  if (evidence === undefined) return [];
  const isLeast = score.money === 0 && score.newlyExposed === 0 && score.moved === 0;
  const text = isLeast
    ? 'It costs nothing, exposes no further pedal and moves none: there is no less than that.'
    : 'The fewest moves possible at the least cost: two searches that put the question in different ways found no better ' +
      'plan, and each ruled every other one out.';
  return block([{ text }], screen.width, 2);
}
