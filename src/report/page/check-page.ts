import type { Kit } from '../../domain/kit.js';
import type { Check } from '../../planning/check/check.js';
import { checkAsked, checkedText, checkParts, verdictText } from '../words/check-words.js';
import { speechOf } from '../words/speech.js';
import { chartedSections } from './charted-parts.js';
import { paragraph } from './elements.js';
import { markup } from './markup.js';
import { answerPage, standingMarkup } from './whole-page.js';

/** What a report of a check is made from. */
export type CheckInput = { readonly kit: Kit; readonly answer: Check };

/** What came of checking a wiring, as one HTML page that needs nothing else: the verdict, what is broken, loads as bars. */
export function checkPage({ kit, answer }: CheckInput): string {
  const speech = speechOf(kit);
  const standing = standingMarkup(verdictText(speech, answer, 'home'), answer.status === 'safe');
  return answerPage(kit, checkAsked, {
    head: markup`${standing}${paragraph(checkedText(speech, answer))}`,
    sections: chartedSections(speech, checkParts(speech, answer)),
  });
}
