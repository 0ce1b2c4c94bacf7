import type { Kit } from '../../domain/kit.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { Answer } from '../../planning/answer.js';
import { evidenceLines } from './evidence.js';
import { headline } from './headline.js';
import { impossibleText, stoppedText } from './impossible.js';
import { pluggingLines } from './plugging.js';
import { rewireLines } from './rewire-screen.js';
import { screenFor, section, sectionsOf, type Screen, type ScreenOptions } from './screen.js';
import { cautionLines, confirmLines, groundLines, leftOutLines } from './sections.js';
import { shoppingLines } from './shopping.js';
import { unitUses } from '../words/usage.js';

type AnswerOptions = ScreenOptions & {
  /** Whether the plan is written into the board file, so that nobody has to be told what to write there. Default false. */
  readonly recorded?: boolean;
};

/**
 * The answer as text for a screen, with a line break at its end. No line is wider than the screen (60 columns at least), and
 * nothing from a file reaches the screen as a control character.
 */
export function answerText(kit: Kit, answer: Answer, options: AnswerOptions): string {
  const screen = screenFor(kit, options);
  return `${answerLines(screen, answer, options.recorded).join('\n')}\n`;
}

function answerLines(screen: Screen, answer: Answer, recorded = false): readonly string[] {
  switch (answer.kind) {
    case 'plan': {
      const { aim, changes } = answer;
      if (aim !== 'moves') return planLines(screen, answer, aim);
      if (changes === undefined) throw new RangeError('a plan for re-plugging says what it changes');
      return rewireLines(screen, answer, changes, recorded);
    }
    case 'impossible':
      return impossibleText(screen, answer.reasons);
    case 'stopped':
      return stoppedText(screen);
  }
}

/** In the order in which a person goes about it: money first, then the labels, then the plugs. */
function planLines(
  screen: Screen,
  { wiring, gap, reasons, evidence }: Extract<Answer, { kind: 'plan' }>,
  aim: ChoosingAim,
): readonly string[] {
  const units = unitUses(screen.board, screen.inventory, wiring);
  const steps: readonly (readonly [string, readonly string[]])[] = [
    ['Buy', shoppingLines(screen, wiring, units)],
    ['Confirm before plugging in', confirmLines(screen, wiring)],
    ['Plug in', pluggingLines(screen, units)],
    ['Grounds and noise', groundLines(screen, wiring)],
    ['Cautions', cautionLines(screen, wiring)],
  ];
  return [
    ...headline(screen, aim, wiring, gap),
    ...section(screen, 'Left out', leftOutLines(screen, wiring, reasons)),
    ...sectionsOf(screen, steps),
    ...section(screen, 'Why no plan is better', evidenceLines(screen, aim, wiring, evidence)),
  ];
}
