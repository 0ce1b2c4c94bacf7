import type { Bar, Box, BoxKind, TextLine } from './scene.js';
import { fitText } from './wrap-text.js';

/** What stands in a box, from top to bottom. */
export type BoxContent =
  | {
      readonly kind: 'text';
      readonly text: string;
      readonly strong?: boolean;
      readonly mostLines?: number;
      /** In the drawing's units; as is usual for it when left out. */
      readonly size?: number;
    }
  | { readonly kind: 'bar'; readonly percent: number }
  | { readonly kind: 'parting' };

export const padding = 6;
const sizes = { strong: 12, plain: 10.5 } as const;
/** Between two base lines, for each unit of size. */
const leading = 1.25;
/** How far a base line is below the top of its line, for each unit of size. */
const ascent = 0.95;
const barHeight = 4;
const barSpace = 3;
const partingSpace = 5;
/** A text that does not say how many lines it may take. */
const usualLines = 3;

/** A box at the origin, as high as what stands in it. */
export function boxOf(kind: BoxKind, contents: readonly BoxContent[], width: number): Box {
  const lines: TextLine[] = [];
  const bars: Bar[] = [];
  const partings: number[] = [];
  let y = padding;
  for (const content of contents) {
    switch (content.kind) {
      case 'text': {
        const placed = linesOf(content, { x: padding, y, width: width - 2 * padding });
        lines.push(...placed);
        y += placed.length * (placed[0]?.size ?? 0) * leading;
        break;
      }
      case 'bar':
        bars.push({
          x: padding,
          y: y + barSpace,
          width: width - 2 * padding,
          height: barHeight,
          percent: content.percent,
        });
        y += barHeight + 2 * barSpace;
        break;
      case 'parting':
        partings.push(y + partingSpace);
        y += 2 * partingSpace;
        break;
    }
  }
  return { kind, x: 0, y: 0, width, height: Math.ceil(y + padding), lines, bars, partings };
}

type Column = { readonly x: number; readonly y: number; readonly width: number };

/** A text broken into lines, whose first begins at the top of the column. */
export function linesOf(
  content: Omit<Extract<BoxContent, { kind: 'text' }>, 'kind'>,
  column: Column,
): readonly TextLine[] {
  const { text, strong = false, mostLines = usualLines } = content;
  const size = content.size ?? (strong ? sizes.strong : sizes.plain);
  const { lines, cut } = fitText(text, column.width, { size, strong }, mostLines);
  return lines.map((line, at) => ({
    x: column.x,
    y: column.y + (at * leading + ascent) * size,
    text: line.text,
    size,
    strong,
    width: line.width,
    full: cut && at === lines.length - 1 ? text : null,
  }));
}

/** The height of so many lines. */
export const linesHeight = (lines: readonly TextLine[]): number =>
  lines.reduce((height, { size }) => height + size * leading, 0);
