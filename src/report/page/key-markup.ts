import type { KeyEntry } from '../drawing/key.js';
import { hazardIcon, signIcon } from '../signs/icons.js';
import { hazardWords } from '../words/hazards.js';
import { capital } from '../words/words.js';
import { markup, type Markup } from './markup.js';

/** What a sign in the drawing means, with the sign itself. */
export function keyMarkup(entry: KeyEntry): Markup {
  switch (entry.kind) {
    case 'hazard':
      return markup`${hazardIcon(entry.hazard)} <b>${capital(hazardWords[entry.hazard])}:</b> ${entry.text}.`;
    case 'sign':
      return markup`${signIcon(entry.sign)} ${capital(entry.text)}.`;
    case 'text':
      return markup`${entry.text}`;
  }
}
