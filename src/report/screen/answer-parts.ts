import { shownOn, type AnswerPart, type Showing } from '../words/answer-parts.js';
import type { Remark } from '../words/remark.js';
import { confirmLead } from '../words/remarks.js';
import { unitUses } from '../words/usage.js';
import { changeLines, entryLines } from './rewire-changes.js';
import { findingLines } from './check-findings.js';
import { optionTable, unbeatenLines } from './comparison-table.js';
import { block, indent, type Paint } from './layout.js';
import { pluggingLines } from './plugging.js';
import { stepLines } from './rewire-steps.js';
import { bullet, sectionsOf, type Screen } from './screen.js';
import { shoppingLines } from './shopping.js';
import { checkedLines, leftLines } from './unit-lines.js';

/** The parts of an answer that are shown on a screen and say something, each under its heading; some of them numbered. */
export const partLines = (
  screen: Screen,
  parts: readonly AnswerPart[],
  isNumbered: (id: string) => boolean = () => true,
): string[] =>
  sectionsOf(
    screen,
    shownOn('screen', showing, parts, screen).map(({ id, title, shown }) => [title, shown, isNumbered(id)]),
  );

const showing: Showing<Screen, readonly string[]> = {
  remarks: ({ lead, remarks }, screen) => remarkLines(screen, remarks, lead),
  confirm: ({ remarks }, screen) => remarkLines(screen, remarks, confirmLead),
  paragraph: ({ text }, screen) => (text === null ? [] : block([{ text }], screen.width, indent)),
  'to mind': ({ texts }, screen) => bullets(screen, texts, screen.paints.caution),
  'to tick': ({ texts }, screen) => bullets(screen, texts),
  'left out': ({ pedals }, screen) =>
    bullets(
      screen,
      pedals.map(({ name, why }) => `${name}: ${why}`),
      screen.paints.caution,
    ),
  broken: ({ check }, screen) => findingLines(screen, check),
  loads: ({ check }, screen) => checkedLines(screen, check),
  left: ({ wiring }, screen) => leftLines(screen, wiring),
  purchase: ({ plan }, screen) => shoppingLines(screen, plan),
  outputs: ({ plan }, screen) => pluggingLines(screen, unitUses(screen.board, screen.inventory, plan.wiring)),
  changes: ({ changes }, screen) => changeLines(screen, changes),
  entries: ({ entries }, screen) => (entries === null ? [] : entryLines(screen, entries)),
  steps: ({ plan }, screen) => stepLines(screen, plan),
  options: ({ of }, screen) => optionTable(screen, of),
  standings: ({ standings }, screen) =>
    standings.flatMap(({ text, tone }) => bullets(screen, [text], tone === 'plain' ? undefined : screen.paints[tone])),
  unbeaten: ({ unbeaten }, screen) => (unbeaten === null ? [] : unbeatenLines(screen, unbeaten)),
  reach: null,
  drawing: null,
  feeds: null,
  chart: null,
};

/** One below the other, what asks for care in its colour; nothing where there is none. */
export function remarkLines(screen: Screen, remarks: readonly Remark[], lead?: string): string[] {
  if (remarks.length === 0) return [];
  const first = lead === undefined ? [] : block([{ text: lead, paint: screen.paints.faint }], screen.width, indent);
  return [
    ...first,
    ...remarks.flatMap(({ text, care }) => bullets(screen, [text], care ? screen.paints.caution : undefined)),
  ];
}

/** A bulleted list below a heading. */
export const bullets = (screen: Screen, texts: readonly string[], paint?: Paint): string[] =>
  block(
    texts.map((text) => bullet(screen, text, paint)),
    screen.width,
    indent,
  );
