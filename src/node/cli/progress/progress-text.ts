import { isMoney } from '../../../domain/aim.js';
import type { Board } from '../../../domain/board.js';
import { priceText } from '../../../domain/money.js';
import { minorUnits } from '../../../domain/quantities.js';
import type { Progress } from '../../../planning/choose/choose.js';
import { tierName } from '../../../report/words/money-words.js';
import { capital } from '../../../report/words/words.js';

/**
 * How far a search has come, as one line of ASCII: "Searching, 12 s. Cost, noise included: 47.00 EUR so far; no plan can
 * be below 36.50 EUR. Ctrl-C ends the search early." Sentences that do not fit into so many columns are left out.
 */
export function progressText(
  progress: Progress,
  seconds: number,
  board: Pick<Board, 'currency' | 'policy'>,
  width: number,
): string {
  const [first, ...others] = [
    `Searching, ${seconds} s.`,
    ...standingText(progress, board),
    'Ctrl-C ends the search early.',
  ];
  let line = first.slice(0, width);
  for (const sentence of others) {
    const longer = `${line} ${sentence}`;
    if (longer.length > width) break;
    line = longer;
  }
  return line;
}

/** A bound of nothing is no news. */
function standingText({ tier, value, bound }: Progress, board: Pick<Board, 'currency' | 'policy'>): readonly string[] {
  if (tier === null) return [];
  const money = isMoney(tier);
  const amount = (number: number): string => (money ? priceText(minorUnits(number), board) : String(number));
  const reached = value === null ? 'nothing found so far' : `${amount(value)} so far`;
  const least = bound === null || bound <= 0 ? '' : `; no plan can be below ${amount(bound)}`;
  return [`${capital(tierName(tier, board.policy))}: ${reached}${least}.`];
}
