import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Answer } from '../../planning/answer.js';
import type { Changes } from '../../planning/rewire/changes.js';
import { boardEntries } from '../words/board-entries.js';
import { noBreak } from '../words/glue.js';
import { block } from './layout.js';
import { changeLines } from './rewire-changes.js';
import { rewireEvidence, rewireHeadline } from '../words/rewire-headline.js';
import { stepLines } from './rewire-steps.js';
import { headLines, section, sectionsOf, type Screen } from './screen.js';
import { cautionLines, confirmLines, groundLines, leftOutLines } from './sections.js';
import { shoppingLines } from './shopping.js';
import { unitUses } from '../words/usage.js';

type Plan = Extract<Answer, { kind: 'plan' }>;

/**
 * A plan as a difference against today, in the order in which a person goes about it. What is recorded in the board file is not
 * told to be written there.
 */
export function rewireLines(screen: Screen, plan: Plan, changes: Changes, recorded: boolean): readonly string[] {
  const { wiring, reasons } = plan;
  const { board, inventory } = screen;
  const { supplies, parts } = wiring.buy;
  const shopping =
    supplies.length + parts.length === 0 ? [] : shoppingLines(screen, wiring, unitUses(board, inventory, wiring));
  const sections: readonly (readonly [string, readonly string[]])[] = [
    ['What changes', changeLines(screen, wiring, changes)],
    ['Buy', shopping],
    ['Confirm before plugging in', confirmLines(screen, wiring)],
    ['Re-plug, in this order', stepLines(screen, wiring, changes)],
    ['Write into the board file', recorded ? [] : entryLines(screen, wiring, changes)],
    ['Grounds and noise', groundLines(screen, wiring)],
    ['Cautions', cautionLines(screen, wiring)],
  ];
  return [
    ...topLines(screen, plan, changes),
    ...section(screen, 'Left out', leftOutLines(screen, wiring, reasons)),
    ...sectionsOf(screen, sections),
    ...section(screen, 'Why no plan is better', evidenceLines(screen, plan)),
  ];
}

function topLines(screen: Screen, plan: Plan, changes: Changes): string[] {
  const { paints } = screen;
  const { cost, counts, standing } = rewireHeadline(screen, plan, changes);
  return headLines(
    screen,
    'how to re-plug it',
    { text: cost },
    { text: counts },
    { text: standing, paint: plan.gap === null ? paints.good : paints.caution },
  );
}

function entryLines(screen: Screen, wiring: JudgedPlan, changes: Changes): string[] {
  const written = boardEntries(screen, wiring, changes);
  if (written === null) return [];
  const texts = written.texts.map((text) => ({ text, paint: screen.paints.faint }));
  return block(
    [...texts, ...written.entries.map((text) => ({ text: text.replaceAll(': ', `:${noBreak}`), hang: 4 }))],
    screen.width,
    2,
  );
}

function evidenceLines(screen: Screen, plan: Plan): string[] {
  const text = rewireEvidence(screen, plan);
  return text === null ? [] : block([{ text }], screen.width, 2);
}
