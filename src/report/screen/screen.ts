import { speechOf, type Speech } from '../words/speech.js';
import type { Kit } from '../../domain/kit.js';
import picocolors from 'picocolors';

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

/** Lines as the text that is printed, with a line break at its end. */
export const printed = (kit: Kit, options: ScreenOptions, linesOf: (screen: Screen) => readonly string[]): string =>
  `${linesOf(screenFor(kit, options)).join('\n')}\n`;

/** A heading with its lines below; nothing at all when there are no lines. */
export function section(screen: Screen, title: string, lines: readonly string[]): string[] {
  if (lines.length === 0) return [];
  const { marks, paints, width } = screen;
  const heading = block([{ text: title, paint: paints.title }], width);
  return ['', ...heading, paints.faint(marks.rule.repeat(Math.min(width, title.length))), ...lines];
}

/** Headings with their lines below, numbered unless they are not to be; those without lines are left out. */
export function sectionsOf(
  screen: Screen,
  parts: readonly (readonly [title: string, lines: readonly string[], isNumbered?: boolean])[],
): string[] {
  let number = 0;
  return parts
    .filter(([, lines]) => lines.length > 0)
    .flatMap(([title, lines, isNumbered = true]) =>
      section(screen, isNumbered ? `${(number += 1)}. ${title}` : title, lines),
    );
}

/** What an answer begins with: the board, what is asked of it, and what came of it. */
export const headLines = ({ board, paints, width }: Screen, title: string, ...pieces: readonly Piece[]): string[] =>
  block([{ text: `${safeText(board.name)}: ${title}`, paint: paints.title }, ...pieces], width);

/** One bulleted line, wrapped under its own text. */
export const bullet = (screen: Screen, text: string, paint?: Paint): Piece => ({
  text: `${screen.marks.bullet} ${text}`,
  hang: 2,
  ...(paint === undefined ? {} : { paint }),
});

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
