import type { PedalToken } from './pedal-tokens.js';

/**
 * Parts the name at the beginning of a line from what is said of the pedal. The name ends with the last word before the first
 * figure with a unit that says nothing else: "digital delay 9v digital" is a digital delay. A number belongs to it where a word
 * or a comma follows: "moth 2, 9v".
 */
export function splitName(
  text: string,
  tokens: readonly PedalToken[],
): { readonly name: string; readonly tokens: readonly PedalToken[] } {
  const firstFigure = tokens.findIndex(isFigure);
  const before = firstFigure < 0 ? tokens : tokens.slice(0, firstFigure);
  const lastWord = before.findLastIndex(({ kind }) => kind === 'word');
  const numbered = before[lastWord + 1];
  const isOfName =
    numbered !== undefined && isBeforeComma(text, numbered) && (lastWord < 0 || numbered.kind === 'number');
  const length = lastWord + (isOfName ? 2 : 1);
  return { name: text.slice(0, tokens[length - 1]?.end ?? 0), tokens: tokens.slice(length) };
}

/** ".5A" is meant as a figure, though not understood. What may be a word of a name as well is none. */
const isFigure = ({ kind, text }: PedalToken): boolean =>
  kind === 'word' ? /^[.+-]\d/.test(text) : !['said', 'number', 'adapter', 'battery'].includes(kind);

const isBeforeComma = (text: string, { end }: PedalToken): boolean => /^\s*,/.test(text.slice(end));

/** Where another pedal, supply or lead has the same. */
export const nameIsTaken = 'That name is there already: add a word that tells them apart.';
