import type { Comparison, UnbeatenPoint } from '../../planning/compare/comparison.js';
import { billOf } from './option-words.js';
import type { Speech } from './speech.js';
import { countText, priceText } from './words.js';

/** What nothing beats besides the options that are shown, in words. */
export type UnbeatenWords = {
  readonly lead: string;
  /** The cheapest first: its price, what it has of the other two figures, and all that is bought. */
  readonly rows: readonly UnbeatenRow[];
};

type UnbeatenRow = {
  readonly price: string;
  readonly exposed: string;
  readonly supplies: string;
  readonly purchase: string;
};

/** Null where there is nothing to say: all of it is shown. */
export function unbeatenWords(speech: Speech, { options, unbeaten }: Comparison): UnbeatenWords | null {
  const isShown = ({ money, exposed, bricks }: UnbeatenPoint): boolean =>
    options.some(
      (option) =>
        option.kind === 'plan' &&
        option.score.money === money &&
        option.score.exposed === exposed &&
        option.score.bricks === bricks,
    );
  const others = unbeaten.points.filter((point) => !isShown(point));
  if (others.length === 0) return null;
  return {
    lead: unbeaten.complete
      ? 'On price, exposed pedals and supplies in use at once. Whatever is not here is beaten by one of these, or of those above.'
      : 'On price, exposed pedals and supplies in use at once, as far as is known: the search stopped early.',
    rows: others.map(({ money, exposed, bricks, wiring, isProven }) => ({
      price: priceText(money, speech.board),
      exposed: `${exposed} exposed`,
      supplies: countText(bricks, 'supply', 'supplies'),
      purchase: `${purchaseText(speech, wiring)}${isProven ? '' : ' (best found)'}`,
    })),
  };
}

const purchaseText = (speech: Speech, { buy }: UnbeatenPoint['wiring']): string =>
  billOf(speech, buy.supplies, buy.parts)
    .map(({ text }) => text)
    .join(', ');
