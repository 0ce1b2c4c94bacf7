import type { AnswerPart, Told } from '../words/answer-parts.js';
import { findingLines } from './check-findings.js';
import { block } from './layout.js';
import { section, sectionsOf, type Screen } from './screen.js';
import { bullets, confirmLines, remarkLines } from './sections.js';
import { checkedLines, leftLines } from './unit-lines.js';

const indent = 2;

/** The parts of an answer that are shown on a screen and say something, each under its heading. */
export function partLines(screen: Screen, parts: readonly AnswerPart[], numbered: boolean): string[] {
  const shown = parts.flatMap(([, title, told]) => {
    const heading = typeof title === 'string' ? title : title.screen;
    return heading === null ? [] : [[heading, toldLines(screen, told)] as const];
  });
  return numbered ? sectionsOf(screen, shown) : shown.flatMap(([title, lines]) => section(screen, title, lines));
}

function toldLines(screen: Screen, told: Told): readonly string[] {
  switch (told.kind) {
    case 'remarks':
      return remarkLines(screen, told.remarks);
    case 'paragraph':
      return told.text === null ? [] : block([{ text: told.text }], screen.width, indent);
    case 'to mind':
      return bullets(screen, told.texts, screen.paints.caution);
    case 'to tick':
      return bullets(screen, told.texts);
    case 'confirm':
      return confirmLines(screen, told.wiring);
    case 'broken':
      return findingLines(screen, told.check);
    case 'loads':
      return checkedLines(screen, told.check);
    case 'left':
      return leftLines(screen, told.wiring);
    case 'reach':
      return [];
  }
}
