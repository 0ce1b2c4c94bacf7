import type { ComparisonHandout } from '../words/comparison-handout.js';
import { comparisonParts } from '../words/comparison-parts.js';
import type { Handout } from '../words/handout.js';
import { planParts } from '../words/plan-parts.js';
import type { Passage } from '../words/reasons.js';
import { paragraph, passageLines, text, trimmed, type Lines } from './markdown-lines.js';
import { partLines } from './markdown-parts.js';

/** The handout as GitHub-flavoured Markdown, which ticket systems show; with boxes to tick. */
export function markdownText(handout: Handout): string {
  if (handout.kind === 'none') return documentText(handout.title, [handout.lead], [], handout.passages);
  const { cost, counts, standing } = handout.headline;
  return documentText(handout.title, [`${cost} ${counts}`, standing], partLines(planParts(handout)));
}

/** Purchases side by side as GitHub-flavoured Markdown. */
export function comparisonMarkdown(handout: ComparisonHandout): string {
  const { title, lead, standing } = handout.head;
  return documentText(title, [lead, standing], partLines(comparisonParts(handout)), handout.impossible?.passages);
}

function documentText(title: string, texts: readonly string[], parts: Lines, passages: readonly Passage[] = []) {
  const lines = [`# ${text(title)}`, '', ...texts.flatMap(paragraph), ...parts, ...passages.flatMap(passageLines)];
  return `${trimmed(lines).join('\n')}\n`;
}
