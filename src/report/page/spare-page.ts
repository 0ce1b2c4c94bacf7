import type { Kit } from '../../domain/kit.js';
import type { NoBasis, Spare } from '../../planning/spare/spare.js';
import { unsettledText, type Asking } from '../words/answer-parts.js';
import { sentence, speechOf } from '../words/speech.js';
import { spareAsking, spareBasis, spareParts } from '../words/spare-words.js';
import { capital, fullStop } from '../words/words.js';
import { ruleMarkup } from './answer-parts.js';
import { chartedSections } from './charted-parts.js';
import { list } from './elements.js';
import { markup } from './markup.js';
import { answerPage, standingMarkup } from './whole-page.js';

/** What a report of what there is to spare is made from. */
export type SpareInput = { readonly kit: Kit; readonly answer: Spare | NoBasis };

/** What more fits on a board, as one HTML page that needs nothing else: how many more pedals, loads as bars, what is left. */
export function sparePage({ kit, answer }: SpareInput): string {
  if (answer.kind !== 'spare') return noBasisPage(kit, answer, spareAsking);
  const speech = speechOf(answer.installed.kit);
  const standing = `${spareBasis(answer)}${answer.whole ? '' : ` ${unsettledText}`}`;
  return answerPage(kit, spareAsking.title, {
    head: standingMarkup(standing, answer.whole),
    sections: chartedSections(speech, spareParts(speech, answer)),
  });
}

/** Why what is asked is not known: there is no wiring to speak of. */
export function noBasisPage(kit: Kit, found: NoBasis, asking: Asking): string {
  const speech = speechOf(kit);
  const body = list(
    (found.kind === 'unsafe' ? found.findings : []).map(
      (finding) => markup`${ruleMarkup(finding)} ${fullStop(capital(sentence(speech, finding.message)))}`,
    ),
  );
  return answerPage(kit, asking.title, {
    head: standingMarkup(`Not known: ${noBasisText(found, asking)}`, false),
    sections: body === null ? [] : [{ id: 'broken', title: 'Broken rules, the worst first', body }],
  });
}

function noBasisText({ kind }: NoBasis, { impossible }: Asking): string {
  switch (kind) {
    case 'unsafe':
      return 'the wiring breaks hard rules. Pull the supplies from the mains before anything else.';
    case 'impossible':
      return `${impossible}.`;
    case 'stopped':
      return 'the time was over before there was a plan.';
  }
}
