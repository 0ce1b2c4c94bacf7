import type { Kit } from '../../domain/kit.js';
import type { Check } from '../../planning/check/check.js';
import { checkAsked, checkedText, checkParts, verdictText } from '../words/check-words.js';
import { partLines } from './answer-parts.js';
import { headLines, screenFor, type ScreenOptions } from './screen.js';

/** What came of checking a wiring as text for a screen, with a line break at its end. */
export function checkText(kit: Kit, check: Check, options: ScreenOptions): string {
  const screen = screenFor(kit, options);
  const { good, caution, bad } = screen.paints;
  const ofStatus = check.status === 'safe' ? good : bad;
  const head = headLines(
    screen,
    checkAsked,
    { text: verdictText(screen, check, 'files'), paint: check.wiring.feeds.length === 0 ? caution : ofStatus },
    { text: checkedText(screen, check) },
  );
  return `${[...head, ...partLines(screen, checkParts(screen, check))].join('\n')}\n`;
}
