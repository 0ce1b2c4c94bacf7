import type { Kit } from '../../domain/kit.js';
import type { Comparison } from '../../planning/compare/comparison.js';
import { noiseLines, standingLines, unbeatenLines } from './comparison-notes.js';
import { optionTable } from './comparison-table.js';
import { noiseWords } from '../words/comparison-handout.js';
import { comparisonHead, nextText } from '../words/comparison-words.js';
import { unbeatenWords } from '../words/unbeaten-words.js';
import { impossibleText } from './impossible.js';
import { block } from './layout.js';
import { screenFor, section, type Screen, type ScreenOptions } from './screen.js';

const indent = 2;

/** Purchases side by side as text for a screen, with a line break at its end. */
export function comparisonText(kit: Kit, comparison: Comparison, options: ScreenOptions): string {
  const screen = screenFor(kit, options);
  return `${comparisonLines(screen, comparison).join('\n')}\n`;
}

function comparisonLines(screen: Screen, comparison: Comparison): readonly string[] {
  const impossible = comparison.reasons.length === 0 ? [] : impossibleText(screen, comparison.reasons);
  if (comparison.options.length === 0 && impossible.length > 0) return impossible;
  const noise = noiseWords(screen, comparison);
  const unbeaten = unbeatenWords(screen, comparison);
  return [
    ...headLines(screen, comparison),
    ...section(screen, 'Side by side', optionTable(screen, comparison.options)),
    ...(noise === null ? [] : section(screen, 'Who may hum', noiseLines(screen, noise))),
    ...section(screen, 'What it would take to be the best', standingLines(screen, comparison)),
    ...(unbeaten === null ? [] : section(screen, unbeaten.title, unbeatenLines(screen, unbeaten))),
    ...section(screen, 'Before you plug anything in', nextLines(screen, comparison)),
    ...(impossible.length === 0 ? [] : ['', ...impossible]),
  ];
}

function headLines(screen: Screen, comparison: Comparison): string[] {
  const { paints, width } = screen;
  const { title, lead, standing, tone } = comparisonHead(screen, comparison);
  return block([{ text: title, paint: paints.title }, { text: lead }, { text: standing, paint: paints[tone] }], width);
}

function nextLines(screen: Screen, comparison: Comparison): string[] {
  const text = nextText(screen, comparison);
  return text === null ? [] : block([{ text }], screen.width, indent);
}
