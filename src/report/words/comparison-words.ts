import type { MoneyTier } from '../../domain/aim.js';
import { confirmEntries } from './confirm.js';
import type { Comparison } from '../../planning/compare/comparison.js';
import { countedText } from './money-words.js';
import { safeText } from './safe-text.js';
import type { Speech } from './speech.js';
import { countText, priceText } from './words.js';

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

function comparedText({ shop: name, board }: Speech, { options, listing }: Comparison): string {
  const listed = options.filter(({ rank }) => rank !== null).length;
  const asked = options.length - listed;
  const shop = name ?? 'the shop';
  const { budget } = board.policy;
  const spent = budget === null ? '' : ` The budget is ${priceText(budget, board)}: what is over it is told.`;
  if (listed === 0) return `${countText(asked, 'purchase')} at ${shop} that you asked for.${spent}`;
  const found = listing === 'kinds' ? choicesText(listed) : bestText(listed);
  return `${found(shop)}${asked === 0 ? '' : `, and ${asked} that you asked for`}.${spent}`;
}

const choicesText =
  (count: number) =>
  (shop: string): string =>
    count === 1 ? `The one choice at ${shop}` : `${count} choices at ${shop} that differ in what they give`;

const bestText =
  (count: number) =>
  (shop: string): string =>
    `${count === 1 ? 'The best purchase' : `The ${count} best purchases`} at ${shop}`;

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

function standingOf(comparison: Comparison): Pick<ComparisonHead, 'standing' | 'tone'> {
  const { options, best, listing, unbeaten } = comparison;
  const listed = options.filter(({ rank }) => rank !== null);
  if (best.end === 'stopped') return { standing: stoppedText(comparison), tone: 'caution' };
  if (listed.length === 0) return { standing: 'None of what is for sale can power the board.', tone: 'bad' };
  if (listing === 'kinds') {
    const others = unbeaten.points.length - listed.length;
    return { standing: `Proven: ${provenText(listed.length, others)}`, tone: 'good' };
  }
  if (best.end === 'all')
    return { standing: 'Proven: there are no others, but for purchases that only add to one of these.', tone: 'good' };
  const standing =
    listed.length === 1
      ? 'Proven: no purchase is better.'
      : 'Proven best, one after the other; purchases that only add to one of these are left out.';
  return { standing, tone: 'good' };
}

const inAllThree = 'on price, exposed pedals and supplies in use at once';

function provenText(shown: number, others: number): string {
  if (shown === 1)
    return `it is the best ${inAllThree}, and everything else is worse in one of these and better in none.`;
  const rest = others === 0 ? 'there are no others' : `${others} more ${others === 1 ? 'is' : 'are'} below`;
  return `nothing beats any of these ${inAllThree}; ${rest}.`;
}

function stoppedText({ options, best: { wanted }, listing }: Comparison): string {
  const known = options.some((option) => option.kind === 'plan' && option.rank !== null && option.gap === null);
  if (!known) return 'Nothing is proven: the search stopped early. More may stand before or between these.';
  return listing === 'best'
    ? `Not all of the ${wanted} best are proven: the search stopped early. More may stand before or between these.`
    : `What is not marked as best found is proven: nothing beats it ${inAllThree}. The search stopped early: there may be other choices.`;
}

/** The same where nobody types: on paper, and on a page that is handed over. */
export function nextAtHome(speech: Speech, comparison: Comparison): string | null {
  const open = openEntries(speech, comparison);
  if (open === null) return null;
  const assumed =
    open === 0
      ? ''
      : ` ${countText(open, 'pedal, supply or lead', 'pedals, supplies or leads')} with something that is assumed or guessed.`;
  return `Plug nothing by this comparison alone: the sheet of the choice that you take says what to read, to set and to measure first.${
    assumed
  }`;
}

/** What comes before plugging: a comparison shows no wiring, and nobody should plug from memory. Null without a plan. */
export function nextText(speech: Speech, comparison: Comparison): string | null {
  const open = openEntries(speech, comparison);
  if (open === null) return null;
  const assumed = open === 0 ? '' : ` ${countText(open, 'entry', 'entries')} of your files are assumed or guessed.`;
  return (
    'This shows no wiring. The plan of the best says what goes where, and what is to be read, set and measured ' +
    `first.${assumed}`
  );
}

/** How many pedals and supplies have something that nobody has read; null where nothing is plugged. */
function openEntries(
  { board, inventory }: Pick<Speech, 'board' | 'inventory'>,
  { options }: Comparison,
): number | null {
  const feeds = options.flatMap((option) => (option.kind === 'plan' ? option.wiring.feeds : []));
  return feeds.length === 0 ? null : confirmEntries(board, inventory, feeds).length;
}
