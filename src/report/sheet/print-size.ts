import { textWidth } from '../drawing/text-size.js';
import type { Markup } from '../page/markup.js';
import type { Block, Side } from './paper.js';

/** Sides with the size of their print, a class of the style. */
export type Printed = { readonly sides: readonly Side[]; readonly size: (typeof printSizes)[number]['name'] };

/** Ways to lay out a sheet that are as good as one another, in print of so many points. */
export type Arrangement = (points: number) => readonly (readonly Side[])[];

/**
 * The first of these arrangements of which some way has room for all, on the fewest sides and then in the largest print, by a
 * guess that errs on the large side, since no paper can be asked. Where none does, the lowest way in the smallest.
 */
export function printed(arrangements: readonly Arrangement[]): Printed {
  for (const arrangement of arrangements) {
    const [best] = printSizes
      .flatMap(({ name, points }) =>
        arrangement(points)
          .filter((sides) => highest(sides, points) <= leastHeight)
          .map((sides): Printed => ({ sides, size: name })),
      )
      .sort((one, other) => one.sides.length - other.sides.length);
    if (best !== undefined) return best;
  }
  const [lowest] = arrangements
    .flatMap((arrangement) => arrangement(least.points))
    .sort((one, other) => highest(one, least.points) - highest(other, least.points));
  return { sides: lowest ?? [], size: least.name };
}

const highest = (sides: readonly Side[], points: number): number =>
  Math.max(...sides.map((side) => heightOf(side, points)));

/** Nothing is printed smaller than 7 points, whatever the size of the rest. */
const least = { name: 'least', points: 7.1 } as const;
const printSizes = [
  { name: 'largest', points: 10.5 },
  { name: 'large', points: 9.5 },
  { name: 'usual', points: 8.5 },
  { name: 'small', points: 7.75 },
  least,
] as const;

/** Between the margins, in millimetres: as wide as A4, as high as Letter. */
export const leastWidth = 190;
/** Of one of two columns, and of what stands before an item of a list in it. */
export const columnWidth = 92;
const bulletRoom = 4;
export const leastHeight = 261;
const millimetres = 25.4 / 72;
/** From one line to the next, and between what begins lines, for each unit of size. */
const leading = 1.17;
const titleScale = 1.5;
/** Above and below the lines of an element, for each unit of size. */
const around = (element: string): number => {
  if (element.startsWith('<h2') || element.startsWith('<footer')) return 1;
  return element.startsWith('<tr') ? 0.32 : 0.2;
};
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
        return columnsHeight(block.body, (columnWidth - bulletRoom) / size) * size;
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
  const heights = elements.map((element) => {
    const scale = element.startsWith('<h1') ? titleScale : 1;
    const taken = scale * textTaken(element);
    return taken === 0 ? 0 : scale * leading * (1 + Math.floor(taken / width)) + around(element);
  });
  const tables = markup.match(/<table\b[^]*?<\/table>/g) ?? [];
  return sumOf(heights) + sumOf(tables.map((table) => linesForLack(table, width)));
}

/**
 * What the rows of a table take besides a line each, where the widest cells of all columns have no room beside one another:
 * columns of short cells keep their width, the others give way alike.
 */
function linesForLack(table: string, width: number): number {
  const rows = table.split(/(?=<tr\b)/).slice(1);
  const cells = rows.map((row) =>
    row
      .split(/(?=<t[hd]\b)/)
      .slice(1)
      .map((cell) => surely * textTaken(cell)),
  );
  const columns = Math.max(0, ...cells.map((row) => row.length));
  const widest = Array.from({ length: columns }, (_, at) => Math.max(...cells.map((row) => row[at] ?? 0)));
  const lack = sumOf(widest) + columns * betweenColumns - width;
  if (lack <= 0) return 0;
  const left = Math.max(leastShare, 1 - lack / sumOf(widest.filter((cell) => cell > shortCell)));
  const linesOf = (cell: number, at: number): number => {
    const most = widest[at] ?? 0;
    return most > shortCell ? Math.ceil(cell / (most * left)) : 1;
  };
  return leading * sumOf(cells.map((row) => Math.max(1, ...row.map(linesOf)) - 1));
}

/** Up to so wide, in units of the size, a cell stays on one line. */
const shortCell = 9;
/** How much of what a text is taken for it takes in a column of its own. */
const surely = 0.88;
/** Of its widest cell a column keeps so much at the least. */
const leastShare = 0.2;

/** From one column of a table to the next, in units of the size. */
const betweenColumns = 0.625;

/** How wide the text of an element is in one line, in units of its size. */
function textTaken(element: string): number {
  const text = element
    .replace(/<input[^>]*>/g, '__')
    .replace(/<[^>]*>/g, '')
    .replace(/&[^;]*;/g, '_')
    .trim();
  return textWidth(text, { size: narrower, strong: false });
}
