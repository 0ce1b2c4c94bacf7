import { textWidth } from './text-size.js';
import type { Box, Point } from './scene.js';

const size = 9;
const height = 15;
const sides = 4;

/** How wide the widest of these marks is as a label on a wire. */
export const marksWidth = (marks: readonly string[]): number =>
  Math.max(height, ...marks.map((mark) => Math.ceil(textWidth(mark, { size, strong: true })) + 2 * sides));

/** The number of a lead as a label on its wire, around a point. */
export function markAt({ x, y }: Point, mark: string): Box {
  const width = marksWidth([mark]);
  const taken = textWidth(mark, { size, strong: true });
  const text = { text: mark, size, strong: true, width: taken, full: null };
  return {
    kind: 'mark',
    x: x - width / 2,
    y: y - height / 2,
    width,
    height,
    lines: [{ ...text, x: x - taken / 2, y: y + size * 0.36 }],
    bars: [],
    partings: [],
  };
}
