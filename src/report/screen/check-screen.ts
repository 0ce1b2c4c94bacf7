import type { Kit } from '../../domain/kit.js';
import type { Check } from '../../planning/check/check.js';
import { checkAsked, checkedText, checkParts, isWhole, unsafeText } from '../words/check-words.js';
import { partLines } from './answer-parts.js';
import type { Piece } from './layout.js';
import { headLines, screenFor, type Screen, type ScreenOptions } from './screen.js';

/** What came of checking a wiring as text for a screen, with a line break at its end. */
export function checkText(kit: Kit, check: Check, options: ScreenOptions): string {
  const screen = screenFor(kit, options);
  const head = headLines(screen, checkAsked, verdictPiece(screen, check), { text: checkedText(screen, check) });
  return `${[...head, ...partLines(screen, checkParts(screen, check))].join('\n')}\n`;
}

function verdictPiece(screen: Screen, check: Check): Piece {
  const { paints } = screen;
  if (check.wiring.feeds.length === 0)
    return { text: 'Nothing is plugged: the board file has no wiring.', paint: paints.caution };
  const whole = isWhole(screen, check) ? '' : ' as far as it is plugged';
  if (check.status === 'safe')
    return { text: `Safe${whole}, if your files are right: no hard rule is broken.`, paint: paints.good };
  return { text: unsafeText(screen, check), paint: paints.bad };
}
