import type { ComparisonHandout } from '../words/comparison-handout.js';
import { comparisonParts } from '../words/comparison-parts.js';
import { chartedSections } from './charted-parts.js';
import { markup } from './markup.js';
import { passageSection } from './passages.js';
import { standingMarkup, wholePage } from './whole-page.js';

/** Purchases side by side as one HTML page that needs nothing else. */
export function comparisonPage(handout: ComparisonHandout): string {
  const { head, speech, impossible } = handout;
  return wholePage(head.title, {
    head: markup`<p>${head.lead}</p>\n${standingMarkup(head.standing, head.tone === 'good')}`,
    sections: [
      ...chartedSections(speech, comparisonParts(handout)),
      ...(impossible?.passages ?? []).map(passageSection),
    ],
    foot: `Made by boardfeed with what ${speech.shop ?? 'the shop'} sells. A comparison is only as good as the figures it was made from.`,
  });
}
