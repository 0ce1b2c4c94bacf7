import type { Purchase } from '../domain/plan.js';
import type { SupplyId } from '../domain/quantities.js';
import type { Option, PlannedOption } from '../planning/comparison.js';
import { beside, block, type Cell, type Piece } from './layout.js';
import type { Screen } from './screen.js';
import { meterOf, percentOf, priceText } from './words.js';

const indent = 2;
const gap = 2;
/** A narrower column of purchases breaks names that are read at a glance. */
const leastPurchase = 16;

/** A figure of each option. */
type Figure = {
  readonly title: string;
  readonly width: number;
  readonly textOf: (option: PlannedOption) => string;
};

const figures: readonly Figure[] = [
  { title: 'Exposed', width: 7, textOf: ({ score, unbeaten }) => marked(score.exposed, unbeaten.exposed) },
  { title: 'Supplies', width: 8, textOf: ({ score, unbeaten }) => marked(score.bricks, unbeaten.bricks) },
  { title: 'Leads', width: 5, textOf: ({ score }) => String(score.parts) },
  { title: 'Spare', width: 5, textOf: (option) => String(option.figures.spareOutputs) },
  { title: 'Fullest', width: 7, textOf: (option) => `${percentOf(meterOf(option.figures.tightest.numbers))} %` },
];

/** The mark stands in front, where it moves no digit. */
const marked = (amount: number, unbeaten: boolean | null): string => `${unbeaten === true ? '*' : ''}${amount}`;

const legend =
  'Exposed: high-gain pedals that share a ground with a digital one. Supplies: in use, owned ones too; each takes a mains ' +
  'socket. Leads: chain leads, join leads and adapters in use. Spare: outputs that stay free. Fullest: the output nearest ' +
  'to its limit, reserve included.';

const markLegend = ' *: nothing that could be bought has less of it for the same money, or as little for less.';

const isMarked = (option: Option): boolean =>
  option.kind === 'plan' && (option.unbeaten.exposed === true || option.unbeaten.bricks === true);

/** One row an option, or one block an option where the screen is too narrow for rows. */
export function optionTable(screen: Screen, options: readonly Option[]): string[] {
  if (options.length === 0) return [];
  const rows = options.map((option) => rowOf(screen, option));
  const widths = widthsOf(screen, rows);
  const lines =
    widths.purchase < leastPurchase
      ? rows.flatMap((row) => stackedLines(screen, row))
      : [...headerLines(screen, widths), ...rows.flatMap((row) => rowLines(row, widths))];
  const text = options.some(isMarked) ? `${legend}${markLegend}` : legend;
  return [...lines, '', ...block([{ text, paint: screen.paints.faint }], screen.width, indent)];
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
  const { board, paints, marks } = screen;
  const notes = notesOn(screen, option);
  return {
    mark: option.rank === null ? marks.dash : String(option.rank),
    purchase: [
      ...purchaseTexts(screen, option.supplies).map((text) => ({ text, hang: 4 })),
      ...notes.map((text) => ({ text, paint: paints.faint })),
    ],
    price: priceText(option.kind === 'plan' ? option.score.money : option.price, board),
    figures: option.kind === 'plan' ? figures.map(({ textOf }) => textOf(option)) : null,
    paint: option.kind === 'plan' && option.preference.kind === 'best' ? paints.good : undefined,
  };
}

/** "2 × Quay 6" for each supply. */
export function purchaseTexts(
  { inventory, marks }: Screen,
  supplies: readonly Purchase<SupplyId>[],
): readonly string[] {
  if (supplies.length === 0) return ['no supply'];
  return supplies.map(({ id, units }) => `${units} ${marks.times} ${inventory.supplyName(id)}`);
}

function notesOn(screen: Screen, option: Option): readonly string[] {
  const asked = option.asked ? ['(asked for)'] : [];
  if (option.kind === 'fails') return [...asked, option.reasons.length === 0 ? '(not known yet)' : '(fails)'];
  const idle = option.idle.length === 0 ? [] : [`(not needed: ${purchaseTexts(screen, option.idle).join(', ')})`];
  return [...asked, ...idle, ...(option.gap === null ? [] : ['(best found)'])];
}

type Widths = { readonly mark: number; readonly purchase: number; readonly price: number };

function widthsOf({ width }: Screen, rows: readonly Row[]): Widths {
  const mark = Math.max(1, ...rows.map((row) => row.mark.length));
  const price = Math.max('Price'.length, ...rows.map((row) => row.price.length));
  const taken = figures.reduce((sum, figure) => sum + gap + figure.width, indent + mark + gap + gap + price);
  return { mark, purchase: width - taken, price };
}

const right = (text: string, width: number): Piece => ({ text, indent: Math.max(0, width - text.length) });

function headerLines({ paints }: Screen, widths: Widths): string[] {
  const faint = (piece: Piece): Piece => ({ ...piece, paint: paints.faint });
  const cells: readonly Cell[] = [
    { pieces: [faint({ text: '' })], width: widths.mark },
    { pieces: [faint({ text: 'Buy' })], width: widths.purchase },
    { pieces: [faint(right('Price', widths.price))], width: widths.price },
    ...figures.map(({ title, width }) => ({ pieces: [faint(right(title, width))], width })),
  ];
  return beside(cells, indent, gap);
}

function rowLines({ mark, purchase, price, figures: texts, paint }: Row, widths: Widths): string[] {
  const painted = (piece: Piece): Piece => (paint === undefined ? piece : { ...piece, paint });
  const cells: readonly Cell[] = [
    { pieces: [painted(right(mark, widths.mark))], width: widths.mark },
    { pieces: purchase, width: widths.purchase },
    { pieces: [painted(right(price, widths.price))], width: widths.price },
    ...figures.map(({ width }, at) => ({ pieces: [right(texts?.[at] ?? '-', width)], width })),
  ];
  return beside(cells, indent, gap);
}

/** The same in lines: "1  2 × Quay 6", and below it the price and all figures. */
function stackedLines(screen: Screen, { mark, purchase, price, figures: texts, paint }: Row): string[] {
  const said = figures.map(({ title }, at) => `${title.toLowerCase()} ${texts?.[at] ?? '-'}`);
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
