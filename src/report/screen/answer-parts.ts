import { shownOn, type AnswerPart, type Told } from '../words/answer-parts.js';
import { confirmLead } from '../words/remarks.js';
import { unitUses } from '../words/usage.js';
import { changeLines, entryLines } from './rewire-changes.js';
import { findingLines } from './check-findings.js';
import { optionTable, unbeatenLines } from './comparison-table.js';
import { block, type Paint } from './layout.js';
import { pluggingLines } from './plugging.js';
import { stepLines } from './rewire-steps.js';
import { bullet, sectionsOf, type Screen } from './screen.js';
import { shoppingLines } from './shopping.js';
import { checkedLines, leftLines } from './unit-lines.js';

const indent = 2;

/** The parts of an answer that are shown on a screen and say something, each under its heading; some of them numbered. */
export function partLines(
  screen: Screen,
  parts: readonly AnswerPart[],
  isNumbered: (id: string) => boolean = () => true,
): string[] {
  const shown = shownOn('screen', parts);
  return sectionsOf(
    screen,
    shown.map(({ id, title, told }) => [title, toldLines(screen, told), isNumbered(id)]),
  );
}

/** What a part says. */
export function toldLines(screen: Screen, told: Told): readonly string[] {
  switch (told.kind) {
    case 'remarks':
      return ledLines(screen, told.lead, told.remarks);
    case 'confirm':
      return ledLines(screen, confirmLead, told.remarks);
    case 'paragraph':
      return told.text === null ? [] : block([{ text: told.text }], screen.width, indent);
    case 'to mind':
      return bullets(screen, told.texts, screen.paints.caution);
    case 'to tick':
      return bullets(screen, told.texts);
    case 'left out':
      return bullets(
        screen,
        told.pedals.map(({ name, why }) => `${name}: ${why}`),
        screen.paints.caution,
      );
    case 'broken':
      return findingLines(screen, told.check);
    case 'loads':
      return checkedLines(screen, told.check);
    case 'left':
      return leftLines(screen, told.wiring);
    case 'purchase':
      return shoppingLines(screen, told.plan);
    case 'outputs':
      return pluggingLines(screen, unitUses(screen.board, screen.inventory, told.plan.wiring));
    case 'changes':
      return changeLines(screen, told.changes);
    case 'entries':
      return told.entries === null ? [] : entryLines(screen, told.entries);
    case 'steps':
      return stepLines(screen, told.plan);
    case 'options':
      return optionTable(screen, told.of);
    case 'standings':
      return told.standings.flatMap(({ text, tone }) =>
        bullets(screen, [text], tone === 'plain' ? undefined : screen.paints[tone]),
      );
    case 'unbeaten':
      return told.unbeaten === null ? [] : unbeatenLines(screen, told.unbeaten);
    case 'reach':
    case 'drawing':
    case 'feeds':
    case 'chart':
      return [];
  }
}

/** One below the other, what asks for care in its colour; nothing where there is none. */
function ledLines(screen: Screen, lead: string | undefined, remarks: Extract<Told, { kind: 'remarks' }>['remarks']) {
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
