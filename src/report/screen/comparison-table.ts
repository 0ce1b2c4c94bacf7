import type { ComparisonHandout } from '../words/comparison-handout.js';
import { beside, block, gap, indent, widthOf, type Cell, type Piece } from './layout.js';
import { optionFigures, type OptionWords } from '../words/option-words.js';
import type { UnbeatenWords } from '../words/unbeaten-words.js';
import type { Screen } from './screen.js';

/** A narrower column breaks names that are read at a glance. */
const leastLabel = 16;

/** A row an option with its figures and its bill below, or the same in lines where the screen is too narrow for columns. */
export function optionTable(screen: Screen, { options: rows, legend }: ComparisonHandout): string[] {
  if (rows.length === 0) return [];
  const widths = widthsOf(screen, rows);
  const isNarrow = widths.label < leastLabel;
  const lines = isNarrow
    ? rows.flatMap((row) => stackedLines(screen, row))
    : [...headerLines(screen, widths), ...rows.flatMap((row) => rowLines(screen, row, widths))];
  return [...lines, '', ...block([{ text: legend, paint: screen.paints.faint }], screen.width, indent)];
}

type Widths = { readonly mark: number; readonly label: number; readonly price: number };

function widthsOf({ width }: Screen, rows: readonly OptionWords[]): Widths {
  const mark = Math.max(1, ...rows.map((row) => row.mark.length));
  const price = Math.max(...rows.flatMap((row) => [row.price, ...row.bill.map((line) => line.price)]).map(widthOf));
  const taken = optionFigures.reduce((sum, figure) => sum + gap + figure.width, indent + mark + gap + gap + price);
  return { mark, label: width - taken, price };
}

const right = (text: string, width: number): Piece => ({ text, indent: Math.max(0, width - widthOf(text)) });

function headerLines({ paints }: Screen, widths: Widths): string[] {
  const faint = (piece: Piece): Piece => ({ ...piece, paint: paints.faint });
  const cells: readonly Cell[] = [
    { pieces: [faint({ text: '' })], width: widths.mark },
    { pieces: [faint({ text: 'Choice' })], width: widths.label },
    { pieces: [faint(right('Price', widths.price))], width: widths.price },
    ...optionFigures.map(({ title, width }) => ({ pieces: [faint(right(title, width))], width })),
  ];
  return beside(cells, indent, gap);
}

function rowLines({ paints }: Screen, row: OptionWords, { mark, label, price }: Widths): string[] {
  const paint = row.isBest ? { paint: paints.good } : {};
  const cells: readonly Cell[] = [
    { pieces: [{ ...right(row.mark, mark), ...paint }], width: mark },
    { pieces: [{ text: row.label, ...paint }], width: label },
    { pieces: [{ ...right(row.price, price), ...paint }], width: price },
    ...optionFigures.map(({ width }, at) => ({ pieces: [right(row.figures?.[at] ?? '-', width)], width })),
  ];
  const below = indent + mark + gap;
  const bill = row.bill.flatMap((line) =>
    beside(
      [
        { pieces: [{ text: line.text, indent: 2, hang: 2 }], width: label },
        { pieces: [right(line.price, price)], width: price },
      ],
      below,
      gap,
    ),
  );
  const notes = row.notes.map((text) => ({ text, indent: 2, paint: paints.faint }));
  return [
    ...beside(cells, indent, gap),
    ...bill,
    ...beside([{ pieces: notes, width: label + gap + price }], below, gap),
  ];
}

/** "1  Best", and below it the bill, the price and all figures. */
function stackedLines(screen: Screen, row: OptionWords): string[] {
  const { paints } = screen;
  const said = optionFigures.map(({ title }, at) => `${title.toLowerCase()} ${row.figures?.[at] ?? '-'}`);
  const isBill = row.bill.length > 1;
  const total = `${isBill ? 'in all ' : ''}${row.price}`;
  const pieces: readonly Piece[] = [
    { text: row.label, ...(row.isBest ? { paint: paints.good } : {}) },
    ...row.bill.map(({ text, price }) => ({ text: isBill ? `${text}, ${price}` : text, indent: 2, hang: 2 })),
    { text: [total, ...(row.figures === null ? [] : said)].join(', ') },
    ...row.notes.map((text) => ({ text, paint: paints.faint })),
  ];
  const width = screen.width - indent - row.mark.length - gap;
  return beside(
    [
      { pieces: [{ text: row.mark }], width: row.mark.length },
      { pieces, width },
    ],
    indent,
    gap,
  );
}

/** What else nothing beats: one line each, with all that is bought. */
export function unbeatenLines(screen: Screen, { lead, rows }: UnbeatenWords): string[] {
  const { paints, width } = screen;
  const columns = (['price', 'exposed', 'supplies'] as const).map((key) => ({
    key,
    width: Math.max(...rows.map((row) => row[key].length)),
  }));
  const taken = columns.reduce((sum, column) => sum + column.width + gap, indent);
  const lines = rows.flatMap((row) =>
    beside(
      [
        ...columns.map((column) => ({
          pieces: [{ text: row[column.key], indent: column.key === 'price' ? column.width - row.price.length : 0 }],
          width: column.width,
        })),
        { pieces: [{ text: row.purchase }], width: width - taken },
      ],
      indent,
      gap,
    ),
  );
  return [...block([{ text: lead, paint: paints.faint }], width, indent), ...lines];
}
