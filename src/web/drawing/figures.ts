import { boardDrawings } from '../../report/drawing/drawings.js';
import type { PlanHandout } from '../../report/words/handout.js';

/** The board, or a part of a big one, drawn for a wide place or for a narrow one: SVG that is escaped already. */
export type Figure = { readonly size: 'wide' | 'narrow'; readonly markup: string };

/** The drawings of a plan for either place. */
export const figuresOf = (plan: PlanHandout): readonly Figure[] =>
  (['wide', 'narrow'] as const).flatMap((size) =>
    boardDrawings(plan, size, size).map(({ markup }) => ({ size, markup })),
  );
