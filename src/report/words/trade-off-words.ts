import type { TradeOff } from '../../planning/compare/comparison.js';
import { purchaseTexts } from './option-words.js';
import type { Speech } from './speech.js';
import { countText, priceText } from './words.js';

/** What money buys, in words. */
export type TradeOffWords = {
  readonly lead: string;
  /** The cheapest first: its price, what it has of the other figure, and what is bought. */
  readonly rows: readonly { readonly price: string; readonly amount: string; readonly purchase: string }[];
};

/** What each step of quiet, or each supply less, costs; null where there is nothing to say. */
export function tradeOffWords(speech: Speech, { against, points, complete }: TradeOff): TradeOffWords | null {
  if (points.length === 0 && complete) return null;
  return {
    lead: tradeOffText(against, points.length, complete),
    rows: points.map(({ money, amount, wiring }) => ({
      price: priceText(money, speech.board),
      amount: amountText(against, amount),
      purchase: purchaseTexts(speech, wiring.buy.supplies).join(', '),
    })),
  };
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
