import type { MoneyTier } from '../../domain/aim.js';
import { confirmEntries } from './confirm.js';
import type { Comparison } from '../../planning/compare/comparison.js';
import { countedText } from './money-words.js';
import { safeText } from './safe-text.js';
import type { Speech } from './speech.js';
import { countText } from './words.js';

/** What a comparison says first. */
export type ComparisonHead = {
  readonly title: string;
  /** What is compared, and what counts as the best. */
  readonly lead: string;
  /** What is proven. */
  readonly standing: string;
  readonly tone: 'good' | 'caution' | 'bad';
};

export const comparisonHead = (speech: Speech, comparison: Comparison): ComparisonHead => ({
  title: `${safeText(speech.board.name)}: purchases compared`,
  lead: `${comparedText(speech, comparison)} ${aimText(speech, comparison)}`,
  ...standingOf(comparison),
});

export const tradeOffTitles = { exposed: 'Money against noise', bricks: 'Money against supplies in use' } as const;

function comparedText({ shop: name }: Speech, { options }: Comparison): string {
  const best = options.filter(({ rank }) => rank !== null).length;
  const asked = options.filter(({ rank }) => rank === null).length;
  const shop = name ?? 'the shop';
  const found = best === 1 ? 'The best purchase' : `The ${best} best purchases`;
  if (best === 0) return `${countText(asked, 'purchase')} at ${shop} that you asked for.`;
  return asked === 0 ? `${found} at ${shop}.` : `${found} at ${shop}, and ${asked} that you asked for.`;
}

function aimText({ board }: Speech, { aim }: Comparison): string {
  const counted = (tier: MoneyTier): string => countedText(tier, board);
  switch (aim) {
    case 'cost':
      return `Best is what costs least${counted('cost')}; then what takes fewer supplies.`;
    case 'bricks':
      return `Best is what takes the fewest supplies; then what costs least${counted('cost')}.`;
    case 'quiet':
      return `Best is what exposes the fewest pedals to digital noise; then what costs least${counted('outlay')}.`;
  }
}

function standingOf({ options, best: { wanted, end } }: Comparison): Pick<ComparisonHead, 'standing' | 'tone'> {
  const ranked = options.filter(({ rank }) => rank !== null);
  if (end === 'stopped') {
    const known = ranked.length === 0 ? 'Nothing is proven' : `Not all of the ${wanted} best are proven`;
    return {
      standing: `${known}: the search stopped early. More may stand before or between these.`,
      tone: 'caution',
    };
  }
  if (ranked.length === 0) return { standing: 'None of what is for sale can power the board.', tone: 'bad' };
  if (end === 'all')
    return { standing: 'Proven: there are no others, but for purchases that only add to one of these.', tone: 'good' };
  const standing =
    ranked.length === 1
      ? 'Proven: no purchase is better.'
      : 'Proven best, one after the other; purchases that only add to one of these are left out.';
  return { standing, tone: 'good' };
}

/** What comes before plugging: a comparison shows no wiring, and nobody should plug from memory. Null without a plan. */
export function nextText({ board, inventory }: Speech, { options, aim }: Comparison): string | null {
  const feeds = options.flatMap((option) => (option.kind === 'plan' ? option.wiring.feeds : []));
  if (feeds.length === 0) return null;
  const open = confirmEntries(board, inventory, feeds).length;
  const assumed = open === 0 ? '' : ` ${countText(open, 'entry', 'entries')} of your files are assumed or guessed.`;
  const flag = aim === 'cost' ? '' : ` --aim ${aim}`;
  return (
    `Each option's wiring is in the output of --json; boardfeed choose${flag} prints that of the best, with all that ` +
    `is to be confirmed and measured first.${assumed}`
  );
}
