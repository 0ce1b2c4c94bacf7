import type { Kit } from '../../domain/kit.js';
import type { Answer } from '../../planning/answer.js';
import { planHandout } from '../words/handout.js';
import { isBeside, planParts } from '../words/plan-parts.js';
import { partLines } from './answer-parts.js';
import { impossibleText, stoppedText } from './impossible.js';
import { block } from './layout.js';
import { printed, type Screen, type ScreenOptions } from './screen.js';

type AnswerOptions = ScreenOptions & {
  /** Whether the plan is written into the board file, so that nobody has to be told what to write there. Default false. */
  readonly recorded?: boolean;
};

/**
 * The answer as text for a screen, with a line break at its end. No line is wider than the screen (60 columns at least), and
 * nothing from a file reaches the screen as a control character.
 */
export const answerText = (kit: Kit, answer: Answer, options: AnswerOptions): string =>
  printed(kit, options, (screen) => answerLines(screen, answer, options.recorded));

function answerLines(screen: Screen, answer: Answer, recorded = false): readonly string[] {
  switch (answer.kind) {
    case 'plan':
      return planLines(screen, answer, recorded);
    case 'impossible':
      return impossibleText(screen, answer.reasons);
    case 'stopped':
      return stoppedText(screen);
  }
}

function planLines(screen: Screen, plan: Extract<Answer, { kind: 'plan' }>, recorded: boolean): readonly string[] {
  const { paints, width } = screen;
  const handout = planHandout(screen, plan);
  const { title, headline, changes, proven } = handout;
  const { cost, counts, standing } = headline;
  const head = [
    { text: title, paint: paints.title },
    ...(changes === null ? [`${cost} ${counts}`] : [cost, counts]).map((text) => ({ text })),
    { text: standing, paint: proven ? paints.good : paints.caution },
  ];
  const parts = planParts(handout).filter(([id]) => !recorded || id !== 'entries');
  return [...block(head, width), ...partLines(screen, parts, (id) => !isBeside(id))];
}
