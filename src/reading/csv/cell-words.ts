import { isUnknown } from '../typed/typed.js';
import type { PlacedCell } from './rows.js';

// Words as people write them in cells, and what they mean. What is none of these stays as it is, for its schema to refuse.

/** What a flag says; null when it says neither. */
export function flagSaid(text: string): boolean | null {
  const word = text.toLowerCase();
  if (['true', 'yes', 'y', 'ja', 'j', 'x', '✓', '1', 'wahr'].includes(word)) return true;
  return ['false', 'no', 'n', 'nein', '0', 'falsch'].includes(word) ? false : null;
}

/** A word of a fixed few, as files have it: "Negative" is `negative`, "dc" is `DC`. */
export function plainWord(text: string): string {
  const word = text.toLowerCase().replace(/[\s_]+/g, '-');
  return word === 'dc' || word === 'ac' ? word.toUpperCase() : word;
}

const centres: ReadonlyMap<string, string> = new Map([
  ...['centre-negative', 'negative-centre', 'centre-minus', 'tip-negative', 'negative-tip'].map(
    (word) => [word, 'centre-negative'] as const,
  ),
  ...['centre-positive', 'positive-centre', 'centre-plus', 'tip-positive', 'positive-tip'].map(
    (word) => [word, 'centre-positive'] as const,
  ),
]);

/** A polarity in other words: "Center negative", "tip negative". */
export function polarityWord(text: string): string {
  const word = plainWord(text).replace(/\bcenter\b/, 'centre');
  return centres.get(word) ?? (word === 'either' || word === 'unknown' ? word : text);
}

/** Whether a cell says that something is not known. An empty one says nothing, and a dash may be a minus. */
export const saysUnknown = (text: string): boolean => !/^-*$/.test(text) && isUnknown(text);

/** Volts without the power that people write beside them: "9 V DC", "9V ⎓". */
export function voltsAndPower(cell: PlacedCell): {
  readonly cell: PlacedCell;
  readonly power: 'DC' | 'AC' | 'both' | null;
} {
  const isDirect = /⎓|DC\b/i.test(cell.text);
  const isAlternating = /[~∼∿]|AC\b/i.test(cell.text);
  return {
    cell: without(cell, /⎓|[~∼∿]|\b(?:DC\s*\/\s*AC|AC\s*\/\s*DC)\b|(?<!\p{L})(?:DC|AC)\b|(?<=V)(?:DC|AC)\b/giu),
    power: isDirect && isAlternating ? 'both' : isDirect ? 'DC' : isAlternating ? 'AC' : null,
  };
}

/** Mains volts without the signs of AC and the hertz. */
export const mainsVolts = (cell: PlacedCell): PlacedCell =>
  without(cell, /[~∼∿]|\bAC\b|(?<=V)AC\b|[,;]?\s*\d+(?:\s*[/-]\s*\d+)?\s*Hz/gi);

/** A cell without some signs; itself where nothing else is in it. What is left stands where it stood. */
function without({ text, offset }: PlacedCell, signs: RegExp): PlacedCell {
  const blanked = text.replace(signs, (sign) => ' '.repeat(sign.length));
  const rest = blanked.trimStart();
  return rest === '' ? { text, offset } : { text: rest.trimEnd(), offset: offset + blanked.length - rest.length };
}
