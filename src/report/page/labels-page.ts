import type { Kit } from '../../domain/kit.js';
import type { DecisiveLabels } from '../../planning/ask/decisive-labels.js';
import { unsettledText } from '../words/answer-parts.js';
import { askedText, labelParts, labelsAsking } from '../words/label-words.js';
import { speechOf } from '../words/speech.js';
import { chartedSections } from './charted-parts.js';
import { paragraph } from './elements.js';
import { markup } from './markup.js';
import { noBasisPage } from './spare-page.js';
import { answerPage } from './whole-page.js';

/** What a report of labels is made from. */
export type LabelsInput = { readonly kit: Kit; readonly answer: DecisiveLabels };

/** Which labels decide, as one HTML page that needs nothing else: boxes to tick, and how far each guess may go. */
export function labelsPage({ kit, answer }: LabelsInput): string {
  if (answer.kind !== 'labels') return noBasisPage(kit, answer, labelsAsking);
  const speech = speechOf(kit);
  return answerPage(kit, labelsAsking.title, {
    head: markup`${paragraph(askedText(speech, answer))}${answer.whole ? null : paragraph(unsettledText)}`,
    sections: chartedSections(speech, labelParts(speech, answer)),
  });
}
