import type { Comparison, TradeOff } from '../../planning/compare/comparison.js';
import { beside, block } from './layout.js';
import { optionStandings } from '../words/option-standings.js';
import { bullet, type Screen } from './screen.js';
import { tradeOffWords } from '../words/trade-off-words.js';

const indent = 2;
const gap = 2;

/** What each option would have to cost to be the best, and why those that fail do. */
export const standingLines = (screen: Screen, comparison: Comparison): string[] =>
  block(
    optionStandings(screen, comparison).map(({ text, tone }) =>
      tone === 'plain' ? bullet(screen, text) : bullet(screen, text, screen.paints[tone]),
    ),
    screen.width,
    indent,
  );

/** What each step of quiet, or each supply less, costs: one line a choice that nothing else beats in both. */
export function tradeOffLines(screen: Screen, tradeOff: TradeOff): string[] {
  const { paints, width } = screen;
  const words = tradeOffWords(screen, tradeOff);
  if (words === null) return [];
  const prices = Math.max(0, ...words.rows.map(({ price }) => price.length));
  const amounts = Math.max(0, ...words.rows.map(({ amount }) => amount.length));
  const rows = words.rows.flatMap(({ price, amount, purchase }) => {
    const cells = [
      { pieces: [{ text: price, indent: prices - price.length }], width: prices },
      { pieces: [{ text: amount }], width: amounts },
      { pieces: [{ text: purchase }], width: width - indent - prices - amounts - 2 * gap },
    ];
    return beside(cells, indent, gap);
  });
  return [...block([{ text: words.lead, paint: paints.faint }], width, indent), ...rows];
}
