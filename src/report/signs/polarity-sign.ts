import type { Polarity } from '../../domain/pedal.js';
import { markup, type Markup } from '../page/markup.js';

/** How large the sign is drawn, in its own units. */
export const polaritySignSize = { width: 60, height: 20 } as const;

const strokePaths = { plus: 'M{x} 6V14M{left} 10H{right}', minus: 'M{left} 10H{right}' } as const;
const arm = 4;

/**
 * The sign of a round plug as labels of the trade have it: the ring with its gap is the sleeve, the dot in it the pin, and
 * each leads to its own plus or minus, the sleeve to the left one. The words stand beside it.
 */
export function polaritySign(polarity: Polarity): Markup {
  const [sleeve, pin] = polarity === 'centre-negative' ? (['plus', 'minus'] as const) : (['minus', 'plus'] as const);
  return markup`<path class="ring" d="M1.5 10A7.5 7.5 0 1 0 16.5 10A7.5 7.5 0 1 0 1.5 10${strokes(sleeve, 9)}M16.5 10H21.5\
M36.5 4.5A8.5 8.5 0 1 0 36.5 15.5M30 10H43.5M43.5 10A7.5 7.5 0 1 0 58.5 10A7.5 7.5 0 1 0 43.5 10${strokes(pin, 51)}"/>\
<circle class="pin" cx="30" cy="10" r="3.2"/>`;
}

const strokes = (which: keyof typeof strokePaths, x: number): string =>
  strokePaths[which]
    .replace('{x}', String(x))
    .replace('{left}', String(x - arm))
    .replace('{right}', String(x + arm));

/** The same sign in a line of text. */
export const polaritySignText = (polarity: Polarity, unicode: boolean): string =>
  texts[unicode ? 'unicode' : 'ascii'][polarity];

const texts = {
  unicode: { 'centre-negative': '(+)──C•──(−)', 'centre-positive': '(−)──C•──(+)' },
  ascii: { 'centre-negative': '(+)--C.--(-)', 'centre-positive': '(-)--C.--(+)' },
} as const;
