import { textWidth } from '../drawing/text-size.js';
import type { Markup } from '../page/markup.js';
import type { Block, Side } from './paper.js';

/** Sides with the size of their print, a class of the style. */
export type Printed = { readonly sides: readonly Side[]; readonly size: (typeof printSizes)[number]['name'] };

/**
 * The first of these ways to lay out a sheet whose sides hold what is to be on them, in the largest print that does it, by a
 * guess that errs on the large side, since no paper can be asked. Where none does, the last one in the smallest.
 */
export function printed(layouts: readonly (readonly Side[])[]): Printed {
  for (const sides of layouts) {
    const fits = printSizes.find(({ points }) => sides.every((side) => heightOf(side, points) <= leastHeight));
    if (fits !== undefined) return { sides, size: fits.name };
  }
  return { sides: layouts.at(-1) ?? [], size: 'least' };
}

/** Nothing is printed smaller than 7 points, whatever the size of the rest. */
export const printSizes = [
  { name: 'usual', points: 8.5 },
  { name: 'small', points: 7.75 },
  { name: 'least', points: 7.1 },
] as const;

/** Between the margins, in millimetres: as wide as A4, as high as Letter. */
export const leastWidth = 190;
/** Of one of two columns. */
export const columnWidth = 92;
export const leastHeight = 261;
const millimetres = 25.4 / 72;
/** From one line to the next, and between what begins lines, for each unit of size. */
const leading = 1.17;
const spacing = 0.2;
/** What a heading has above and below it besides. */
const aroundHeading = 1;
/** How much of the most that a text may take the faces take that papers are printed in. */
const narrower = 0.88;

/** About how high what is on a side is in print of so many points, in millimetres; on the large side. */
export function heightOf(side: Side, points: number): number {
  const size = points * millimetres;
  const heights = side.map((block: Block): number => {
    switch (block.kind) {
      case 'whole':
        return heightOfWords(block.body, leastWidth, points);
      case 'columns':
        return columnsHeight(block.body, columnWidth / size) * size;
      case 'picture':
        return block.least(points);
    }
  });
  return heights.reduce((sum, height) => sum + height, 0);
}

/** Where two columns part so that the higher one is as low as can be, in units of the size. */
function columnsHeight({ markup }: Markup, width: number): number {
  const pieces = markup
    .split(/(?=<section)/)
    .flatMap((section) => (section.startsWith('<section id="buy"') ? [section] : section.split(unbrokenStart)));
  const lines = pieces.map((piece) => linesIn({ markup: piece }, width));
  const whole = sumOf(lines);
  const highest = lines.map((_, at) => {
    const left = sumOf(lines.slice(0, at + 1));
    return Math.max(left, whole - left);
  });
  return Math.min(whole, ...highest);
}

const sumOf = (figures: readonly number[]): number => figures.reduce((sum, figure) => sum + figure, 0);

/** A heading stays with what it is of, and a table in one piece. */
const unbrokenStart = /(?<!<\/h[23]>\s*(?:<ul[^>]*>\s*)?)(?=<(?:h[23]|p|li|table)\b)/;

/** About how high words are where they have so much width, in millimetres; on the large side. */
export function heightOfWords(body: Markup, width: number, points: number): number {
  const size = points * millimetres;
  return linesIn(body, width / size) * size;
}

/** A line for each element that begins one, and another for each time its text fills the width, in units of the size. */
function linesIn({ markup }: Markup, width: number): number {
  const elements = markup.split(/(?=<(?:h[123]|p|li|tr|caption|footer)\b)/);
  return elements.reduce((sum, element) => {
    const text = element
      .replace(/<input[^>]*>/g, '__')
      .replace(/<[^>]*>/g, '')
      .replace(/&[^;]*;/g, '_')
      .trim();
    const filled = textWidth(text, { size: narrower, strong: false }) / width;
    const around = element.startsWith('<h2') ? aroundHeading : spacing;
    return text === '' ? sum : sum + leading * (1 + Math.floor(filled)) + around;
  }, 0);
}
