import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { drawnBoard } from '../../../../src/report/drawing/contents.js';
import { leadsFrom } from '../../../../src/report/drawing/drawn-leads.js';
import { partsOf } from '../../../../src/report/drawing/parts.js';
import { share, trying } from '../../../support/runs.js';
import { anyPlan } from './any-plan.js';

describe('the parts of a board', () => {
  it('have everything once, each supply with all that hangs on it, pedals in the order of the board', () => {
    let split = 0;
    fc.assert(
      fc.property(anyPlan, fc.integer({ min: 2, max: 12 }), (plan, most) => {
        const board = drawnBoard(plan);
        const parts = partsOf(board, most);
        if (parts.length > 1) split += 1;
        const order = board.pedals.map(({ id }) => id);
        expect(parts.flatMap(({ strips }) => strips.map(({ name }) => name)).sort()).toEqual(
          board.strips.map(({ name }) => name).sort(),
        );
        expect(parts.flatMap(({ pedals }) => pedals.map(({ id }) => id)).sort()).toEqual([...order].sort());
        expect(parts.flatMap(({ leads }) => leads)).toHaveLength(board.leads.length);
        for (const part of parts) {
          const places = part.pedals.map(({ id }) => order.indexOf(id));
          expect(places).toEqual([...places].sort((one, other) => one - other));
          for (const strip of part.strips) expect(leadsFrom(part, strip.id)).toEqual(leadsFrom(board, strip.id));
        }
      }),
      trying(60),
    );
    expect(split).toBeGreaterThan(share(20));
  });

  it('are one where all pedals fit, and none is empty', () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const board = drawnBoard(plan);
        expect(partsOf(board, board.pedals.length)).toEqual([board]);
        for (const part of partsOf(board, 4)) expect(part.strips.length).toBeGreaterThan(0);
      }),
      trying(20),
    );
  });
});
