import type { Tier } from '../domain/aim.js';
import { minorUnits } from '../domain/quantities.js';
import type { Comparison, Failure, FailedOption, Option, Preference, TradeOff } from '../planning/comparison.js';
import { purchaseTexts } from './comparison-table.js';
import { beside, block, type Piece } from './layout.js';
import { bullet, sentence, type Screen } from './screen.js';
import { countText, fullStop, listText, priceText } from './words.js';

const indent = 2;
const gap = 2;

/** What each option would have to cost to be the best, and why those that fail do. */
export function standingLines(screen: Screen, { options }: Comparison): string[] {
  const pieces = options.flatMap((option) =>
    option.kind === 'plan'
      ? preferencePieces(screen, nameOf(screen, option), option.preference)
      : [failurePiece(screen, option)],
  );
  return block(pieces, screen.width, indent);
}

/** The number of one of the best, or what was asked for. */
const nameOf = (screen: Screen, { rank, supplies }: Option): string =>
  rank === null ? listText(purchaseTexts(screen, supplies)) : `Option ${rank}`;

function preferencePieces(screen: Screen, name: string, preference: Preference): readonly Piece[] {
  const { board, paints } = screen;
  switch (preference.kind) {
    case 'best':
    case 'unknown':
      return [];
    case 'as good':
      return [bullet(screen, `${name} is as good as the best.`, paints.good)];
    case 'price': {
      const [at, below] = [priceText(preference.at, board), priceText(preference.below, board)];
      return [bullet(screen, `${name} would be the best at ${at} or less for all of it: ${below} below its price.`)];
    }
    case 'never':
      return [bullet(screen, `${name} would not be the best even for nothing: ${behindText(screen, preference)}.`)];
  }
}

function behindText({ board }: Screen, { tier, behind }: Extract<Preference, { kind: 'never' }>): string {
  const words = counted[tier];
  if (words === null) return `leads and noise alone put it ${priceText(minorUnits(behind), board)} behind`;
  return `it is behind by ${countText(behind, ...words)}`;
}

/** Null for money. */
const counted: Readonly<Record<Tier, readonly [string, string] | null>> = {
  cost: null,
  newCost: null,
  money: null,
  unpowered: ['pedal without power', 'pedals without power'],
  exposed: ['exposed pedal', 'exposed pedals'],
  bricks: ['supply in use', 'supplies in use'],
  parts: ['lead', 'leads'],
  offPreferred: ['pedal off its preferred volts', 'pedals off their preferred volts'],
  moved: ['moved pedal', 'moved pedals'],
};

function failurePiece(screen: Screen, option: FailedOption): Piece {
  const { paints } = screen;
  const name = nameOf(screen, option);
  if (option.reasons.length === 0)
    return bullet(screen, `${name}: the search stopped before a plan was found.`, paints.caution);
  const reasons = option.reasons.map((reason) => fullStop(failureText(screen, reason)));
  return bullet(screen, `${name} cannot power the board: ${reasons.join(' ')}`, paints.bad);
}

function failureText(screen: Screen, reason: Failure): string {
  const { inventory } = screen;
  switch (reason.kind) {
    case 'pedal': {
      const [nearest] = reason.refusals;
      const name = inventory.pedalName(reason.pedal);
      if (nearest === undefined) return `nothing feeds ${name}`;
      return `nothing feeds ${name} (${nearest.rule}: ${sentence(screen, nearest.message)})`;
    }
    case 'together':
      return `${listText(reason.pedals.map(inventory.pedalName))}: ${sentence(screen, reason.message)}`;
    case 'limit':
    case 'stock':
    case 'request':
      return sentence(screen, reason.message);
  }
}

/** What each step of quiet, or each supply less, costs: one line a choice that nothing else beats in both. */
export function tradeOffLines(screen: Screen, { against, points, complete }: TradeOff): string[] {
  const { board, paints, width } = screen;
  const money = Math.max(0, ...points.map((point) => priceText(point.money, board).length));
  const amounts = points.map(({ amount }) => amountText(against, amount));
  const amountWidth = Math.max(0, ...amounts.map((text) => text.length));
  const rows = points.flatMap((point, at) => {
    const price = priceText(point.money, board);
    const texts = purchaseTexts(screen, point.wiring.buy.supplies);
    const rest = width - indent - money - amountWidth - 2 * gap;
    const cells = [
      { pieces: [{ text: price, indent: money - price.length }], width: money },
      { pieces: [{ text: amounts[at] ?? '' }], width: amountWidth },
      { pieces: [{ text: texts.join(', ') }], width: rest },
    ];
    return beside(cells, indent, gap);
  });
  const lead = block([{ text: tradeOffText(against, points.length, complete), paint: paints.faint }], width, indent);
  return points.length === 0 && complete ? [] : [...lead, ...rows];
}

const amountText = (against: TradeOff['against'], amount: number): string =>
  against === 'exposed' ? `${amount} exposed` : countText(amount, 'supply', 'supplies');

function tradeOffText(against: TradeOff['against'], points: number, complete: boolean): string {
  const noun = against === 'exposed' ? 'pedals exposed' : 'supplies in use';
  if (!complete) return `The search stopped early: there may be more choices than these.`;
  if (points === 1) {
    const also = against === 'exposed' ? 'the quietest' : 'that with the fewest supplies';
    return `The cheapest choice is ${also}, too. Exact: nothing costs less or has fewer ${noun}.`;
  }
  return `Exact: each is the cheapest with so few ${noun}, and whatever is not here is beaten by one of these.`;
}
