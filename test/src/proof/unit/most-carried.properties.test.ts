import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { stockOf } from '../../../../src/proof/stock.js';
import { itemsOf } from '../../../../src/proof/unit/items.js';
import { mostCarriedBy } from '../../../../src/proof/unit/most-carried.js';
import { classesOf } from '../../../../src/proof/unit/pedal-class.js';
import { routesOver } from '../../../../src/proof/unit/routes.js';
import { unitShape } from '../../../../src/proof/unit/unit-shape.js';
import { routeCosts } from '../../../../src/proof/unit/values.js';
import type { Case } from '../../../support/arbitraries.js';
import { tinyCase } from '../../../support/arbitraries.js';
import { mostByTrial } from './contents.js';

const runs = 600;

/** Some tags in common, so that equal pedals are worth the same now and then. */
const tags = fc.array(fc.oneof(fc.integer({ min: -20, max: 100 }), fc.constantFrom(0, 50, 60)), {
  minLength: 4,
  maxLength: 4,
});
const worths = fc.record({
  tags,
  leads: fc.array(fc.oneof(fc.integer({ min: 0, max: 40 }), fc.constant(0)), { minLength: 30, maxLength: 30 }),
  exposed: fc.constantFrom(0, 5, 20, 45),
  off: fc.constantFrom(0, 1, 30),
});
type Drawn = typeof worths extends fc.Arbitrary<infer Value> ? Value : never;

/** For every supply of the case: a way to ask for the most it carries, and one that tries everything. */
function carriersOf({ board, catalogue }: Case) {
  const { kinds } = stockOf(board, catalogue);
  const classes = classesOf(board.pedals);
  const routes = routesOver(kinds);
  const leadPrices = ({ leads }: Drawn) =>
    kinds.map(({ offers }, kind) => (offers.length === 0 ? Infinity : (leads[kind] ?? 0)));
  const parts = kinds.flatMap(({ parts: [part], offers }) => (part === undefined || offers.length === 0 ? [] : [part]));
  return [...board.gear.supplies, ...catalogue.supplies].map((supply) => {
    const shape = unitShape(supply, { policy: board.policy, classes, kinds, routes });
    const carried = shape === null ? null : mostCarriedBy(shape, classes);
    return {
      expected: (drawn: Drawn) => {
        const leads = leadPrices(drawn);
        return mostByTrial(supply, board, parts, {
          tag: (pedal) => drawn.tags[board.pedals.indexOf(pedal)] ?? 0,
          lead: (part) => leads[kinds.findIndex((kind) => kind.parts.includes(part))] ?? 0,
          exposed: drawn.exposed,
          off: drawn.off,
        });
      },
      most: (drawn: Drawn, enough: number) => {
        const leads = leadPrices(drawn);
        const items = itemsOf(
          classes,
          board.pedals.map((_, index) => drawn.tags[index] ?? 0),
        );
        const prices = { leads, routes: routeCosts(routes.sets, leads), exposed: drawn.exposed, off: drawn.off };
        return carried === null ? Math.max(0, enough) : carried(items, prices, enough);
      },
    };
  });
}

describe('the most that a unit can carry', () => {
  it('is what trying every content finds, or nothing where all is worth nothing', () => {
    let positive = 0;
    fc.assert(
      fc.property(tinyCase, worths, (of, drawn) => {
        for (const { expected, most } of carriersOf(of)) {
          const value = expected(drawn) ?? 0;
          if (value > 0) positive += 1;
          expect(most(drawn, 0)).toBe(Math.max(0, value));
        }
      }),
      { numRuns: runs },
    );
    expect(positive).toBeGreaterThan(runs / 2);
  });

  it('is the same whatever was asked before, and is told apart from nothing that is enough', () => {
    const seen = { above: 0, enough: 0 };
    const questions = fc.array(fc.tuple(worths, fc.integer({ min: 0, max: 150 })), { minLength: 3, maxLength: 6 });
    fc.assert(
      fc.property(tinyCase, questions, (of, asked) => {
        for (const { expected, most } of carriersOf(of))
          for (const [drawn, enough] of asked) {
            const value = expected(drawn) ?? 0;
            seen[value > enough ? 'above' : 'enough'] += 1;
            expect(most(drawn, enough)).toBe(Math.max(enough, value));
          }
      }),
      { numRuns: runs / 2 },
    );
    expect(Math.min(seen.above, seen.enough)).toBeGreaterThan(runs / 4);
  });
});
