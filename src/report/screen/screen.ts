import type { Kit } from '../../domain/kit.js';
import picocolors from 'picocolors';

import type { Board } from '../../domain/board.js';
import { inventoryOf, type Inventory } from '../words/inventory.js';
import { block, type Paint, type Piece } from './layout.js';
import { safeText } from '../words/safe-text.js';
import { percentOf, type Meter } from '../words/words.js';

export type ScreenOptions = {
  /** Columns of the screen; below 60 the text is laid out for 60 all the same. */
  readonly width: number;
  /** Colour is an accent only: the text says everything without it. */
  readonly colour: boolean;
  /** False for a screen that shows nothing but ASCII; names keep their own letters. Default true. */
  readonly unicode?: boolean;
};

/** Signs that have an ASCII stand-in of the same meaning. */
export type Marks = {
  readonly arrow: string;
  readonly times: string;
  readonly dash: string;
  readonly bullet: string;
  readonly rule: string;
  readonly full: string;
  readonly empty: string;
};

/** What is spoken of, and with which signs; all that a sentence needs, wherever it is shown. */
export type Speech = {
  readonly kit: Kit;
  readonly board: Board;
  /** What may be bought from: its name is safe to print; null when nothing is for sale. */
  readonly shop: string | null;
  readonly inventory: Inventory;
  readonly marks: Marks;
};

/** The screen to draw on, with what it speaks of. */
export type Screen = Speech & {
  readonly width: number;
  readonly paints: {
    readonly title: Paint;
    readonly strong: Paint;
    readonly faint: Paint;
    readonly good: Paint;
    readonly caution: Paint;
    readonly bad: Paint;
  };
};

const leastWidth = 60;
/** Longer lines are hard to read. */
const mostWidth = 132;
const barCells = 10;

const unicodeMarks: Marks = { arrow: '→', times: '×', dash: '–', bullet: '•', rule: '─', full: '█', empty: '░' };
const asciiMarks: Marks = { arrow: '->', times: 'x', dash: '-', bullet: '*', rule: '-', full: '#', empty: '.' };

export function screenFor(kit: Kit, options: ScreenOptions): Screen {
  const colours = picocolors.createColors(options.colour);
  return {
    ...speechOf(kit, options.unicode),
    width: Math.min(mostWidth, Math.max(leastWidth, Math.floor(options.width))),
    paints: {
      title: colours.bold,
      strong: colours.bold,
      faint: colours.dim,
      good: colours.green,
      caution: colours.yellow,
      bad: colours.red,
    },
  };
}

/** Speech with signs beyond ASCII, unless they are not wanted. */
export const speechOf = (kit: Kit, unicode = true): Speech => ({
  kit,
  board: kit.board,
  shop: shopOf(kit),
  inventory: inventoryOf(kit),
  marks: unicode ? unicodeMarks : asciiMarks,
});

const shopOf = ({ catalogue }: Kit): string | null =>
  catalogue === null || catalogue.supplies.length + catalogue.parts.length === 0 ? null : safeText(catalogue.name);

/** A heading with its lines below; nothing at all when there are no lines. */
export function section(screen: Screen, title: string, lines: readonly string[]): string[] {
  if (lines.length === 0) return [];
  const { marks, paints, width } = screen;
  const heading = block([{ text: title, paint: paints.title }], width);
  return ['', ...heading, paints.faint(marks.rule.repeat(Math.min(width, title.length))), ...lines];
}

/** One bulleted line, wrapped under its own text. */
export const bullet = (screen: Screen, text: string, paint?: Paint): Piece => ({
  text: `${screen.marks.bullet} ${text}`,
  hang: 2,
  ...(paint === undefined ? {} : { paint }),
});

/** A sentence of the planner's, safe to print and with the screen's own signs. */
export function sentence({ marks }: Speech, text: string): string {
  const signs = { '×': marks.times, '–': marks.dash, '→': marks.arrow };
  return Object.entries(signs).reduce((spelled, [sign, mark]) => spelled.replaceAll(sign, mark), safeText(text));
}

/** A bar in the colour of how full it is; without colour it reads the same. */
export const barPiece = (screen: Screen, meter: Meter): Piece => ({
  text: barText(screen, meter),
  paint: percentOf(meter) > 90 ? screen.paints.caution : screen.paints.good,
});

/** "[###.......]  30 %"; the least load shows one mark, and only a full output shows all of them. */
function barText({ marks }: Screen, meter: Meter): string {
  const percent = percentOf(meter);
  const filled = Math.min(barCells, Math.ceil((percent * barCells) / 100));
  const bar = marks.full.repeat(filled) + marks.empty.repeat(barCells - filled);
  return `[${bar}] ${String(percent).padStart(3)} %`;
}
