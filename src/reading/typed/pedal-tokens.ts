import { connectorShape } from './connectors.js';
import { adapterShape, batteryShape } from './source-words.js';
import { startShape } from './start-words.js';
import { wordsAt, type SaidByWord } from './pedal-words.js';

/** A piece of a line about a pedal. */
export type PedalToken = { readonly text: string; readonly end: number } & (
  | { readonly kind: 'volts' | 'prefers' | 'draw' | 'startup' | 'inlet' }
  /** What the pedal has of its own to stand on. */
  | { readonly kind: 'adapter' | 'battery' }
  /** Without a unit. */
  | { readonly kind: 'number' }
  | { readonly kind: 'said'; readonly said: SaidByWord }
  /** A dash by itself. */
  | { readonly kind: 'dash' }
  /** Nothing of the above. */
  | { readonly kind: 'word' }
);

const number = String.raw`\d+(?:[.,]\d+)?`;
const oneVoltage = String.raw`${number}(?:\s*V(?:DC|AC|olts?)?)?`;
const between = String.raw`\s*(?:-|–|—|\.\.\.?|…|\bto\b|\/|\||\bor\b|\band\b|&)\s*`;
const unit = String.raw`\s*(?:mA|A|W|VA|milliamps?|amps?|watts?)`;
const whole = String.raw`${number}\s*V(?:DC|AC|olts?)?(?=[\s,;]|$)`;
const preferring = String.raw`(?:prefer(?:s|red)?|likes|best\s+(?:at|on|with))`;
const figure = `${number}${unit}`;

/** The last of several volts has the unit. */
const shapes = [
  ['startup', startShape(number, figure)],
  ['prefers', String.raw`${preferring}(?:\s*[:=]\s*|\s+)(?:${whole}|\d[^\s,;]*)|${whole}\s+preferred(?=[\s,;]|$)`],
  ['inlet', String.raw`inlet\s+(?:${connectorShape}|[^\s,;]+)|${connectorShape}|(?:barrel|jack)-[^\s,;]+`],
  ['adapter', adapterShape],
  // A nine-volt block begins as volts do.
  ['battery', batteryShape],
  ['volts', String.raw`(?:${oneVoltage}${between})*${number}\s*V(?:DC|AC|olts?)?(?![\p{L}\p{N}])`],
  ['draw', String.raw`(?:${number}(?:${unit})?\s*(?:-|–|—|to)\s*)?${figure}(?![\p{L}\p{N}])`],
  // Between slashes stand volts, whether they have their unit or not.
  ['volts', String.raw`${number}(?:/${number})+(?=[\s,;]|$)(?!\s*(?:mA|A|W|VA)\b)`],
  ['number', String.raw`${number}(?=[\s,;]|$)`],
] as const;
const patterns = shapes.map(([kind, source]) => [kind, new RegExp(source, 'iuy')] as const);
/** A sign between two figures says nothing: "9 V / 300 mA". */
const gap = new RegExp(String.raw`[\s,;]*(?:[/=|]\s*(?=${number}\s*(?:mA|A|W|VA|V)(?!\p{L})))?`, 'iuy');
const word = /[^\s,;]+/y;

/** The pieces of a line, each read as the first of the shapes that fits where it begins. */
export const tokensOf = (text: string): readonly PedalToken[] => piecesOf(opened(text));

/**
 * The line, as long as it was, without brackets about figures, "(9 V DC, 300 mA)", and behind figures about words that say something,
 * "9 V (DC)"; those of names stay.
 */
function opened(text: string): string {
  return text.replaceAll(/[([]([^()[\]]*)[)\]]/g, (whole, inside: string, at: number) => {
    const pieces = piecesOf(inside);
    const isSaid = pieces.every(({ kind }) => ['said', 'inlet', ...figures].includes(kind));
    const hasFigure = [...pieces, ...piecesOf(text.slice(0, at))].some(({ kind }) => figures.includes(kind));
    // What stands behind it is no part of it.
    return isSaid && hasFigure ? ` ${inside},` : whole;
  });
}

const figures: readonly PedalToken['kind'][] = ['volts', 'prefers', 'draw', 'startup'];

function piecesOf(text: string): readonly PedalToken[] {
  const tokens: PedalToken[] = [];
  for (let at = pastGap(text, 0); at < text.length;) {
    const token = tokenAt(text, at);
    tokens.push(token);
    at = pastGap(text, token.end);
  }
  return tokens;
}

function pastGap(text: string, at: number): number {
  gap.lastIndex = at;
  gap.exec(text);
  return gap.lastIndex;
}

function tokenAt(text: string, at: number): PedalToken {
  for (const [kind, pattern] of patterns) {
    const found = matchAt(pattern, text, at);
    if (found !== null) return { kind, text: found, end: at + found.length };
  }
  const said = wordsAt(text, at);
  if (said !== null) return { kind: 'said', said: said.said, text: said.text, end: at + said.text.length };
  // Whatever is no gap begins a word.
  const other = matchAt(word, text, at) ?? text.slice(at);
  return { kind: /^[-–—]$/.test(other) ? 'dash' : 'word', text: other, end: at + other.length };
}

function matchAt(pattern: RegExp, text: string, at: number): string | null {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? null;
}
