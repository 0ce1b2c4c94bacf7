import type { Wanted } from '../../planning/wanted/wanted.js';
import { safeText } from '../words/safe-text.js';
import { wantedLead, wantedPassages, wantedStanding } from '../words/wanted.js';
import { passageLines } from './impossible.js';
import { block } from './layout.js';
import { screenFor, type ScreenOptions } from './screen.js';

/** What to look for, as text for a screen with a line break at its end. */
export function wantedText(wanted: Wanted, options: ScreenOptions): string {
  const screen = screenFor(wanted.kit, options);
  const { board, paints, width } = screen;
  const head = block(
    [
      { text: `${safeText(board.name)}: what to look for`, paint: paints.title },
      { text: wantedLead(screen, wanted) },
      { text: wantedStanding(wanted), paint: wanted.isProven ? paints.good : paints.caution },
    ],
    width,
  );
  return `${[...head, ...wantedPassages(screen, wanted).flatMap((passage) => passageLines(screen, passage))].join('\n')}\n`;
}
