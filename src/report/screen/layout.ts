import stringWidth from 'string-width';
import wrapAnsi from 'wrap-ansi';

import { glued, noBreak } from '../words/glue.js';

/** Puts an accent on a text; it must not change what the text says or how wide it is. */
export type Paint = (text: string) => string;

/** A text that is wrapped to its cell before it is painted. */
export type Piece = {
  readonly text: string;
  readonly paint?: Paint;
  /** Spaces before every line. */
  readonly indent?: number;
  /** More spaces before its second and later lines. */
  readonly hang?: number;
};

export type Cell = { readonly pieces: readonly Piece[]; readonly width: number };

/** Spaces before what stands below a heading, and between columns. */
export const [indent, gap] = [2, 2];

/** A narrow cell still takes the widest single character. */
const leastWidth = 2;

/** The pieces one under the other, indented, and none wider than `width` columns. */
export const block = (pieces: readonly Piece[], width: number, indent = 0): string[] =>
  beside([{ pieces, width: width - indent }], indent, 0);

/** Cells side by side with `gap` spaces between them; a cell takes as many lines as it needs. */
export function beside(cells: readonly Cell[], indent: number, gap: number): string[] {
  const columns = cells.map(({ pieces, width }) => ({
    width,
    lines: pieces.flatMap((piece) => linesOf(piece, width)),
  }));
  const height = Math.max(0, ...columns.map(({ lines }) => lines.length));
  return Array.from({ length: height }, (_, row) => {
    let line = '';
    let wanted = indent;
    let reached = 0;
    for (const { width, lines } of columns) {
      const { text, paint } = lines[row] ?? { text: '' };
      if (text !== '') {
        line += ' '.repeat(wanted - reached) + (paint?.(text) ?? text);
        reached = wanted + stringWidth(text);
      }
      wanted += width + gap;
    }
    return line;
  });
}

/** The columns that a text takes on a screen. */
export const widthOf = (text: string): number => stringWidth(text);

function linesOf(
  { text, paint, indent = 0, hang = 0 }: Piece,
  width: number,
): readonly Pick<Piece, 'text' | 'paint'>[] {
  const whole = wrapped(text, width - indent);
  const lines = whole.length > 1 && hang > 0 ? wrapped(text, width - indent - hang) : whole;
  return lines.map((line, at) => {
    const placed = ' '.repeat(at === 0 ? indent : indent + hang) + line;
    return paint === undefined ? { text: placed } : { text: placed, paint };
  });
}

/** Words are kept whole where they fit, and split where they do not; a number keeps its unit, its sign or what it counts. */
function wrapped(text: string, width: number): readonly string[] {
  const bound = glued(text)
    .replace(/(\d) ([×x]) (?=\S)/g, `$1${noBreak}$2${noBreak}`)
    .replace(/([×x]) (?=\d)/g, `$1${noBreak}`)
    .replace(/\b(units?|outputs?) (?=\d)/g, `$1${noBreak}`);
  return wrapAnsi(bound, Math.max(leastWidth, width), { hard: true })
    .split('\n')
    .map((line) => line.replaceAll(noBreak, ' ').trimEnd());
}
