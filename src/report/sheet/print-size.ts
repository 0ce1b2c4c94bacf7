import type { Markup } from '../page/markup.js';
import type { Block, Side } from './paper.js';

/**
 * How large the print is on paper, as a class of the style: the largest with which every side holds what is to be on it, by a
 * guess that errs on the large side, since no paper can be asked. The smallest where even that may not do.
 */
export function printSize(sides: readonly Side[]): (typeof sizes)[number]['name'] {
  const fits = sizes.find(({ points }) => sides.every((side) => heightOf(side, points) <= leastHeight));
  return (fits ?? smallest).name;
}

const smallest = { name: 'least', points: 5.75 } as const;
const sizes = [
  { name: 'usual', points: 8.25 },
  { name: 'small', points: 7.5 },
  { name: 'smaller', points: 6.5 },
  smallest,
] as const;

/** Between the margins, in millimetres: as wide as A4, as high as Letter. */
const leastWidth = 190;
const leastHeight = 261;
const millimetres = 25.4 / 72;
/** From one line to the next, and between what begins lines, for each unit of size; and the width of a usual character. */
const leading = 1.2;
const spacing = 0.2;
const characterWidth = 0.53;

function heightOf(side: Side, points: number): number {
  const size = points * millimetres;
  const high = (body: Markup, width: number): number => linesIn(body, width / (size * characterWidth)) * size;
  const heights = side.map((block: Block): number => {
    switch (block.kind) {
      case 'whole':
        return high(block.body, leastWidth);
      case 'pair':
        return Math.max(high(block.left, leastWidth / 2), high(block.right, leastWidth / 2));
      case 'picture':
        return block.least;
    }
  });
  return heights.reduce((sum, height) => sum + height, 0);
}

/** A line for each element that begins one, and another for each so many characters in it, in units of the size. */
function linesIn({ markup }: Markup, characters: number): number {
  const elements = markup.split(/(?=<(?:h[123]|p|li|tr|caption|footer)\b)/);
  return elements.reduce((sum, element) => {
    const text = element
      .replace(/<[^>]*>/g, '')
      .replace(/&[^;]*;/g, '_')
      .trim();
    return text === '' ? sum : sum + leading * (1 + Math.floor(text.length / characters)) + spacing;
  }, 0);
}
