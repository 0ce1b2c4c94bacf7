import type { Board, Catalogue } from '../domain/board.js';
import type { Comparison } from '../planning/comparison.js';
import { standingLines, tradeOffLines } from './comparison-notes.js';
import { optionTable } from './comparison-table.js';
import { confirmEntries } from './confirm.js';
import { impossibleText } from './impossible.js';
import { block, type Piece } from './layout.js';
import { safeText } from './safe-text.js';
import { screenFor, section, type Screen, type ScreenOptions } from './screen.js';
import { countText, priceText } from './words.js';

const indent = 2;

/** Purchases side by side as text for a screen, with a line break at its end. */
export function comparisonText(
  board: Board,
  catalogue: Catalogue,
  comparison: Comparison,
  options: ScreenOptions,
): string {
  const screen = screenFor(board, catalogue, options);
  return `${comparisonLines(screen, comparison).join('\n')}\n`;
}

function comparisonLines(screen: Screen, comparison: Comparison): readonly string[] {
  const impossible = comparison.reasons.length === 0 ? [] : impossibleText(screen, comparison.reasons);
  if (comparison.options.length === 0 && impossible.length > 0) return impossible;
  return [
    ...headLines(screen, comparison),
    ...section(screen, 'Side by side', optionTable(screen, comparison.options)),
    ...section(screen, 'What it would take to be the best', standingLines(screen, comparison)),
    ...comparison.tradeOffs.flatMap((tradeOff) =>
      section(screen, tradeOffTitles[tradeOff.against], tradeOffLines(screen, tradeOff)),
    ),
    ...section(screen, 'Before you plug anything in', nextLines(screen, comparison)),
    ...(impossible.length === 0 ? [] : ['', ...impossible]),
  ];
}

const tradeOffTitles = { exposed: 'Money against noise', bricks: 'Money against supplies in use' } as const;

function headLines(screen: Screen, comparison: Comparison): string[] {
  const { board, paints, width } = screen;
  return block(
    [
      { text: `${safeText(board.name)}: purchases compared`, paint: paints.title },
      { text: `${comparedText(screen, comparison)} ${aimText(screen, comparison)}` },
      endPiece(screen, comparison),
    ],
    width,
  );
}

function comparedText({ catalogue }: Screen, { options }: Comparison): string {
  const best = options.filter(({ rank }) => rank !== null).length;
  const asked = options.filter(({ rank }) => rank === null).length;
  const shop = safeText(catalogue.name);
  const found = best === 1 ? 'The best purchase' : `The ${best} best purchases`;
  if (best === 0) return `${countText(asked, 'purchase')} at ${shop} that you asked for.`;
  return asked === 0 ? `${found} at ${shop}.` : `${found} at ${shop}, and ${asked} that you asked for.`;
}

function aimText({ board }: Screen, { aim }: Comparison): string {
  const { noisePrice } = board.policy;
  const counted = noisePrice === 0 ? '' : `, with ${priceText(noisePrice, board)} counted for each exposed pedal`;
  switch (aim) {
    case 'cost':
      return `Best is what costs least${counted}; then what takes fewer supplies.`;
    case 'bricks':
      return `Best is what takes the fewest supplies; then what costs least${counted}.`;
    case 'quiet':
      return 'Best is what exposes the fewest pedals to digital noise; then what costs least.';
  }
}

function endPiece({ paints }: Screen, { options, best: { wanted, end } }: Comparison): Piece {
  const ranked = options.filter(({ rank }) => rank !== null);
  if (end === 'stopped') {
    const known = ranked.length === 0 ? 'Nothing is proven' : `Not all of the ${wanted} best are proven`;
    return {
      text: `${known}: the search stopped early. More may stand before or between these.`,
      paint: paints.caution,
    };
  }
  if (ranked.length === 0) return { text: 'None of what is for sale can power the board.', paint: paints.bad };
  if (end === 'all')
    return {
      text: 'Proven: there are no others, but for purchases that only add to one of these.',
      paint: paints.good,
    };
  const text =
    ranked.length === 1
      ? 'Proven: no purchase is better.'
      : 'Proven best, one after the other; purchases that only add to one of these are left out.';
  return { text, paint: paints.good };
}

/** A comparison shows no wiring; nobody should plug from memory. */
function nextLines(screen: Screen, { options, aim }: Comparison): string[] {
  const { board, inventory, width } = screen;
  const feeds = options.flatMap((option) => (option.kind === 'plan' ? option.wiring.feeds : []));
  if (feeds.length === 0) return [];
  const open = confirmEntries(board, inventory, feeds).length;
  const assumed = open === 0 ? '' : ` ${countText(open, 'entry', 'entries')} of your files are assumed or guessed.`;
  const flag = aim === 'cost' ? '' : ` --aim ${aim}`;
  return block(
    [
      {
        text:
          `Each option's wiring is in the output of --json; boardfeed choose${flag} prints that of the best, with all that ` +
          `is to be confirmed and measured first.${assumed}`,
      },
    ],
    width,
    indent,
  );
}
