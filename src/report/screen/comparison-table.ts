import type { Option } from '../../planning/compare/comparison.js';
import { beside, block, type Cell, type Piece } from './layout.js';
import { legendText, optionFigures, optionWords } from '../words/option-words.js';
import type { Screen } from './screen.js';

const indent = 2;
const gap = 2;
/** A narrower column of purchases breaks names that are read at a glance. */
const leastPurchase = 16;

/** One row an option, or one block an option where the screen is too narrow for rows. */
export function optionTable(screen: Screen, options: readonly Option[]): string[] {
  if (options.length === 0) return [];
  const rows = options.map((option) => rowOf(screen, option));
  const widths = widthsOf(screen, rows);
  const lines =
    widths.purchase < leastPurchase
      ? rows.flatMap((row) => stackedLines(screen, row))
      : [...headerLines(screen, widths), ...rows.flatMap((row) => rowLines(row, widths))];
  return [...lines, '', ...block([{ text: legendText(options), paint: screen.paints.faint }], screen.width, indent)];
}

type Row = {
  readonly mark: string;
  readonly purchase: readonly Piece[];
  readonly price: string;
  /** Null where there is no plan. */
  readonly figures: readonly string[] | null;
  readonly paint: ((text: string) => string) | undefined;
};

function rowOf(screen: Screen, option: Option): Row {
  const { paints } = screen;
  const { purchase, notes, isBest, ...words } = optionWords(screen, option);
  return {
    ...words,
    purchase: [...purchase.map((text) => ({ text, hang: 4 })), ...notes.map((text) => ({ text, paint: paints.faint }))],
    paint: isBest ? paints.good : undefined,
  };
}

type Widths = { readonly mark: number; readonly purchase: number; readonly price: number };

function widthsOf({ width }: Screen, rows: readonly Row[]): Widths {
  const mark = Math.max(1, ...rows.map((row) => row.mark.length));
  const price = Math.max('Price'.length, ...rows.map((row) => row.price.length));
  const taken = optionFigures.reduce((sum, figure) => sum + gap + figure.width, indent + mark + gap + gap + price);
  return { mark, purchase: width - taken, price };
}

const right = (text: string, width: number): Piece => ({ text, indent: Math.max(0, width - text.length) });

function headerLines({ paints }: Screen, widths: Widths): string[] {
  const faint = (piece: Piece): Piece => ({ ...piece, paint: paints.faint });
  const cells: readonly Cell[] = [
    { pieces: [faint({ text: '' })], width: widths.mark },
    { pieces: [faint({ text: 'Buy' })], width: widths.purchase },
    { pieces: [faint(right('Price', widths.price))], width: widths.price },
    ...optionFigures.map(({ title, width }) => ({ pieces: [faint(right(title, width))], width })),
  ];
  return beside(cells, indent, gap);
}

function rowLines({ mark, purchase, price, figures: texts, paint }: Row, widths: Widths): string[] {
  const painted = (piece: Piece): Piece => (paint === undefined ? piece : { ...piece, paint });
  const cells: readonly Cell[] = [
    { pieces: [painted(right(mark, widths.mark))], width: widths.mark },
    { pieces: purchase, width: widths.purchase },
    { pieces: [painted(right(price, widths.price))], width: widths.price },
    ...optionFigures.map(({ width }, at) => ({ pieces: [right(texts?.[at] ?? '-', width)], width })),
  ];
  return beside(cells, indent, gap);
}

/** The same in lines: "1  2 × Quay 6", and below it the price and all figures. */
function stackedLines(screen: Screen, { mark, purchase, price, figures: texts, paint }: Row): string[] {
  const said = optionFigures.map(({ title }, at) => `${title.toLowerCase()} ${texts?.[at] ?? '-'}`);
  const pieces: readonly Piece[] = [
    ...purchase,
    { text: [price, ...(texts === null ? [] : said)].join(', '), ...(paint === undefined ? {} : { paint }) },
  ];
  const width = screen.width - indent - mark.length - gap;
  return beside(
    [
      { pieces: [{ text: mark }], width: mark.length },
      { pieces, width },
    ],
    indent,
    gap,
  );
}
