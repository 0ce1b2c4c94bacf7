import fc from 'fast-check';
import { expect, it } from 'vitest';

import { insertionOrder } from '../../../../src/report/drawing/insertion-order.js';

it('is an order of all things from which none can move to gain', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 6, maxLength: 6 }), {
        minLength: 6,
        maxLength: 6,
      }),
      (costs) => {
        const things = [0, 1, 2, 3, 4, 5];
        const cost = (one: number, other: number): number => costs[one]?.[other] ?? 0;
        const total = (order: readonly number[]): number =>
          order.reduce(
            (sum, one, at) => sum + order.slice(at + 1).reduce((more, other) => more + cost(one, other), 0),
            0,
          );
        const order = insertionOrder(things, cost);
        expect([...order].sort()).toEqual(things);
        for (const thing of things)
          for (let at = 0; at < things.length; at += 1) {
            const others = order.filter((other) => other !== thing);
            const moved = [...others.slice(0, at), thing, ...others.slice(at)];
            expect(total(moved)).toBeGreaterThanOrEqual(total(order));
          }
      },
    ),
  );
});

it('leaves things as they are where nothing is to gain', () => {
  expect(insertionOrder(['c', 'a', 'b'], () => 0)).toEqual(['c', 'a', 'b']);
});
