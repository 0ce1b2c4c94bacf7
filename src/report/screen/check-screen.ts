import { everyFeed } from '../../domain/plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Check } from '../../planning/check/check.js';
import { findingLines } from './check-findings.js';
import { checkedLines } from './checked-units.js';
import { checkedText, isWhole, toMindTexts, unsafeText } from '../words/check-words.js';
import { soundWiring } from '../words/usage.js';
import { block, type Piece } from './layout.js';
import { safeText } from '../words/safe-text.js';
import { bullet, screenFor, section, type Screen, type ScreenOptions } from './screen.js';
import { cautionLines, confirmLines } from './sections.js';

const indent = 2;

/** What came of checking a wiring as text for a screen, with a line break at its end. */
export function checkText(kit: Kit, check: Check, options: ScreenOptions): string {
  const screen = screenFor(kit, options);
  return `${checkLines(screen, check).join('\n')}\n`;
}

/** What is broken first, for that is what to unplug first; then what to mind; last all feeds with their numbers. */
function checkLines(screen: Screen, check: Check): readonly string[] {
  const { wiring } = check;
  const sound = soundWiring(check);
  const wrong = wiring.feeds.length - sound.feeds.length;
  const parts: readonly (readonly [string, readonly string[]])[] = [
    ['Broken rules, the worst first', findingLines(screen, check)],
    ['To mind', softLines(screen, check)],
    ['Confirm before plugging in', confirmLines(screen, wiring)],
    [wrong === 0 ? 'In order, feed by feed' : 'Feed by feed', checkedLines(screen, check)],
    ['Cautions', cautionLines(screen, sound, 'check', everyFeed(wiring))],
  ];
  return [
    ...headLines(screen, check),
    ...parts
      .filter(([, lines]) => lines.length > 0)
      .flatMap(([title, lines], at) => section(screen, `${at + 1}. ${title}`, lines)),
  ];
}

function headLines(screen: Screen, check: Check): string[] {
  const { board, paints, width } = screen;
  const title = { text: `${safeText(board.name)}: is its wiring safe?`, paint: paints.title };
  return block([title, verdictPiece(screen, check), { text: checkedText(screen, check) }], width);
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

const softLines = (screen: Screen, check: Check): string[] =>
  block(
    toMindTexts(screen, check).map((text) => bullet(screen, text, screen.paints.caution)),
    screen.width,
    indent,
  );
