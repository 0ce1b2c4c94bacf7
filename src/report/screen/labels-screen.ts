import type { Kit } from '../../domain/kit.js';
import type { DecisiveLabels } from '../../planning/ask/decisive-labels.js';
import { unsettledText } from '../words/answer-parts.js';
import { askedText, labelParts, labelsAsking } from '../words/label-words.js';
import { partLines } from './answer-parts.js';
import { headLines, screenFor, type ScreenOptions } from './screen.js';
import { noBasisText } from './spare-screen.js';

/** Which labels decide, as text for a screen with a line break at its end. */
export function labelsText(kit: Kit, found: DecisiveLabels, options: ScreenOptions): string {
  if (found.kind !== 'labels') return noBasisText(kit, found, options, labelsAsking);
  const screen = screenFor(kit, options);
  const head = headLines(
    screen,
    labelsAsking.title,
    { text: askedText(screen, found) },
    ...(found.whole ? [] : [{ text: unsettledText, paint: screen.paints.caution }]),
  );
  return `${[...head, ...partLines(screen, labelParts(screen, found), () => false)].join('\n')}\n`;
}
