import type { Excerpt } from './input-fault.js';

/** How much of a long line is kept on each side of what is meant, in UTF-16 units. */
const mostBeside = 200;

/** The line of a position in a text, both from 1; `ends` are the signs behind which nothing belongs to what is meant. */
export function excerptAt(text: string, line: number, column: number, ends: string): Excerpt | undefined {
  const whole = text.split(/\r\n?|\n/, line)[line - 1];
  if (whole === undefined || whole.trim() === '') return undefined;
  const start = Math.min(column - 1, whole.length);
  const end = start + lengthOfToken(whole.slice(start), ends);
  const before = whole.slice(0, start);
  const after = whole.slice(end);
  return {
    before: before.length > mostBeside ? `…${before.slice(-mostBeside)}` : before,
    marked: whole.slice(start, end),
    after: after.length > mostBeside ? `${after.slice(0, mostBeside)}…` : after,
  };
}

/** Longer values are marked at their beginning. */
const mostMarked = 60;

/** A quoted text to its closing quote; of a list or map its bracket; else up to one of the ends. */
function lengthOfToken(rest: string, ends: string): number {
  const first = rest.charAt(0);
  const close = first === '"' || first === "'" ? rest.indexOf(first, 1) : -1;
  if (close > 0) return Math.min(close + 1, mostMarked);
  if (first === '[' || first === '{') return 1;
  const end = Math.min(rest.length, ...Array.from(ends, (sign) => rest.indexOf(sign)).filter((at) => at >= 0));
  return Math.min(rest.slice(0, end).trimEnd().length, mostMarked);
}

/** What ends a value or a key in YAML and JSON. */
export const endsInYaml = ',:]}#';
