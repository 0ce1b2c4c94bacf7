import type { Kit } from '../../domain/kit.js';
import type { Check } from '../../planning/check/check.js';
import { findingLines } from './check-findings.js';
import { checkedLines } from './checked-units.js';
import { pedalsInOrder } from '../words/usage.js';
import { block, type Piece } from './layout.js';
import { safeText } from '../words/safe-text.js';
import { bullet, screenFor, section, type Screen, type ScreenOptions } from './screen.js';
import { sentence } from '../words/speech.js';
import { cautionLines, confirmLines } from './sections.js';
import { digitalTogether, exposedText } from '../words/shared-grounds.js';
import { notOwnedText, softText } from '../words/soft-findings.js';
import { countText, listText } from '../words/words.js';

const indent = 2;

/** What came of checking a wiring as text for a screen, with a line break at its end. */
export function checkText(kit: Kit, check: Check, options: ScreenOptions): string {
  const screen = screenFor(kit, options);
  return `${checkLines(screen, check).join('\n')}\n`;
}

/** What is broken first, for that is what to unplug first; then what to mind; last all feeds with their numbers. */
function checkLines(screen: Screen, check: Check): readonly string[] {
  const { wiring } = check;
  const inOrder = pedalsInOrder(check);
  const wrong = wiring.feeds.length - inOrder.size;
  const sound = { ...wiring, feeds: wiring.feeds.filter(({ pedal }) => inOrder.has(pedal)) };
  const parts: readonly (readonly [string, readonly string[]])[] = [
    ['Broken rules, the worst first', findingLines(screen, check)],
    ['To mind', softLines(screen, check)],
    ['Confirm before plugging in', confirmLines(screen, wiring)],
    [wrong === 0 ? 'In order, feed by feed' : 'Feed by feed', checkedLines(screen, check)],
    ['Cautions', cautionLines(screen, sound, 'check')],
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
  return block([title, verdictPiece(screen, check), { text: countsText(screen, check) }], width);
}

function verdictPiece({ board, paints }: Screen, { status, findings, wiring }: Check): Piece {
  if (wiring.feeds.length === 0)
    return { text: 'Nothing is plugged: the board file has no wiring.', paint: paints.caution };
  const whole = wiring.feeds.length + keptPlaces(board) === board.pedals.length ? '' : ' as far as it is plugged';
  if (status === 'safe')
    return { text: `Safe${whole}, if your files are right: no hard rule is broken.`, paint: paints.good };
  const broken = findings.length === 1 ? 'A hard rule is broken' : `Hard rules are broken in ${findings.length} places`;
  return { text: `Not safe. ${broken}: pull the supplies from the mains before anything else.`, paint: paints.bad };
}

/** Kept places are not plugged, and have no need to be. */
const keptPlaces = ({ pedals }: Screen['board']): number => pedals.filter(({ kept }) => kept !== null).length;

function countsText({ board, inventory }: Screen, check: Check): string {
  const { feeds, score } = check.wiring;
  const all = board.pedals.length;
  const plugged =
    feeds.length === all
      ? `All ${countText(all, 'pedal')} plugged`
      : `${feeds.length} of ${countText(all, 'pedal')} plugged`;
  const wrong = feeds.length - pedalsInOrder(check).size;
  const kept = keptPlaces(board);
  const counts = [
    `${plugged} into ${countText(score.bricks, 'supply', 'supplies')}`,
    ...(kept === 0 ? [] : [`${countText(kept, 'place')} kept`]),
    ...(wrong === 0 ? [] : [`${wrong} of them not in order`]),
    exposedText(inventory, check.wiring),
  ];
  return `${counts.join(', ')}.`;
}

/** What is not owned shares a line, and so do the pedals without a feed. */
function softLines(screen: Screen, check: Check): string[] {
  const { board, inventory, paints, width } = screen;
  const told = check.soft.filter(({ kind }) => kind !== 'unfed' && kind !== 'not owned');
  const notOwned = check.soft.filter((finding) => finding.kind === 'not owned');
  const unfed = check.soft.flatMap((finding) => (finding.kind === 'unfed' ? [inventory.pedalName(finding.pedal)] : []));
  const texts = [
    ...told.map((finding) => sentence(screen, softText(board, inventory, check, finding))),
    ...digitalTogether(inventory, check.wiring).map((text) => sentence(screen, text)),
    ...(notOwned.length === 0 ? [] : [sentence(screen, notOwnedText(board, inventory, notOwned))]),
    ...(unfed.length === 0 ? [] : [`Without a feed: ${listText(unfed)}.`]),
  ];
  return block(
    texts.map((text) => bullet(screen, text, paints.caution)),
    width,
    indent,
  );
}
