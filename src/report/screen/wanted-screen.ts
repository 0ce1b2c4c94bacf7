import type { Wanted } from '../../planning/wanted/wanted.js';
import { wantedLead, wantedPassages, wantedStanding } from '../words/wanted.js';
import { passageLines } from './impossible.js';
import { headLines, screenFor, type ScreenOptions } from './screen.js';

/** What to look for, as text for a screen with a line break at its end. */
export function wantedText(wanted: Wanted, options: ScreenOptions): string {
  const screen = screenFor(wanted.kit, options);
  const { paints } = screen;
  const head = headLines(
    screen,
    'what to look for',
    { text: wantedLead(screen, wanted) },
    { text: wantedStanding(wanted), paint: wanted.isProven ? paints.good : paints.caution },
  );
  return `${[...head, ...wantedPassages(screen, wanted).flatMap((passage) => passageLines(screen, passage))].join('\n')}\n`;
}
