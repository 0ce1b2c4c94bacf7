import type { Kit } from '../../domain/kit.js';
import type { Comparison } from '../../planning/compare/comparison.js';
import { comparisonWords } from '../words/comparison-handout.js';
import { comparisonParts } from '../words/comparison-parts.js';
import { partLines } from './answer-parts.js';
import { impossibleText } from './impossible.js';
import { block } from './layout.js';
import { printed, type Screen, type ScreenOptions } from './screen.js';

/** Purchases side by side as text for a screen, with a line break at its end. */
export const comparisonText = (kit: Kit, comparison: Comparison, options: ScreenOptions): string =>
  printed(kit, options, (screen) => comparisonLines(screen, comparison));

function comparisonLines(screen: Screen, comparison: Comparison): readonly string[] {
  const impossible = comparison.reasons.length === 0 ? [] : impossibleText(screen, comparison.reasons);
  if (comparison.options.length === 0 && impossible.length > 0) return impossible;
  const { paints, width } = screen;
  const handout = comparisonWords(screen, comparison);
  const { title, lead, standing, tone } = handout.head;
  return [
    ...block([{ text: title, paint: paints.title }, { text: lead }, { text: standing, paint: paints[tone] }], width),
    ...partLines(screen, comparisonParts(handout), () => false),
    ...(impossible.length === 0 ? [] : ['', ...impossible]),
  ];
}
