import type { Markup } from '../page/markup.js';
import type { PlanHandout } from '../words/handout.js';
import { listText } from '../words/words.js';
import { boardScene } from './board-scene.js';
import { drawnBoard } from './contents.js';
import { boardDescription } from './describe.js';
import type { DrawnBoard } from './drawn-board.js';
import type { DrawingSize } from './measures.js';
import { partsOf } from './parts.js';
import { svgOf } from './svg.js';

export type { DrawingSize } from './measures.js';

/**
 * The whole board as one SVG element of the class `size`, as wide as it is given room; `drawingStyle` gives it its colours,
 * light and dark. `id` differs for each drawing of a page.
 */
export const boardDrawing = (plan: PlanHandout, size: DrawingSize, id: string): Markup =>
  sizedDrawing(plan, size, id).markup;

/** The same with how large it is, in units of about one pixel. */
export function sizedDrawing(plan: PlanHandout, size: DrawingSize, id: string): Sized {
  return drawing(plan, drawnBoard(plan), size, { id, title: `Wiring of ${plan.speech.board.name}` });
}

/** A drawing with how large it is, in units of about one pixel. */
export type Sized = { readonly markup: Markup; readonly width: number; readonly height: number };

/** How many pedals fit on a sheet of paper, and how many on a small screen before one has to scroll far along a lead. */
const mostPedals: Readonly<Record<DrawingSize, number>> = {
  wide: 18,
  narrow: 12,
  sheet: Infinity,
  dense: Infinity,
  small: Infinity,
};

/** The board in as many drawings as it takes for each to stay legible: one for most boards. */
export function boardDrawings(plan: PlanHandout, size: DrawingSize, id: string): readonly Markup[] {
  const parts = partsOf(drawnBoard(plan), mostPedals[size]);
  if (parts.length === 1) return [boardDrawing(plan, size, id)];
  return parts.map(
    (part, at) =>
      drawing(plan, part, size, {
        id: `${id}-${at + 1}`,
        title: `Wiring of ${listText(part.strips.map(({ name }) => name))}`,
      }).markup,
  );
}

function drawing(
  plan: PlanHandout,
  board: DrawnBoard,
  size: DrawingSize,
  words: { readonly id: string; readonly title: string },
): Sized {
  const scene = boardScene(board, size);
  const { width, height } = scene;
  return { markup: svgOf(scene, { ...words, description: boardDescription(plan, board) }, size), width, height };
}
