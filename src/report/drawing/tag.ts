import type { Area, Point, TagShape } from './scene.js';
import { textWidth, type TextSizes } from './text-size.js';

const sides = 3.5;
/** How high the number of a lead is, for each unit of its size. */
const high = 1.6;

const textSize = ({ mark }: TextSizes): number => mark - 0.5;

/** How large the largest of these marks is as a tag on its lead. */
export function tagSize(marks: readonly string[], sizes: TextSizes): Pick<Area, 'width' | 'height'> {
  const height = textSize(sizes) * high;
  const widths = marks.map((text) => Math.ceil(textWidth(text, { size: textSize(sizes), strong: true })) + 2 * sides);
  return { width: Math.max(height, ...widths), height };
}

/** The number of a lead around a point of it. */
export function tagAt({ x, y }: Point, text: string, sizes: TextSizes): TagShape {
  const size = textSize(sizes);
  const { width, height } = tagSize([text], sizes);
  const taken = textWidth(text, { size, strong: true });
  const style = { text, size, strong: true, soft: false, width: taken, full: null, anchor: 'middle' } as const;
  return { x: x - width / 2, y: y - height / 2, width, height, text: { ...style, x, y: y + size * 0.36 } };
}
