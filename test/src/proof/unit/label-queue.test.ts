import fc from 'fast-check';
import { expect, it } from 'vitest';

import { labelQueue } from '../../../../src/proof/unit/label-queue.js';

it('hands out the greatest number that waits, whatever came in between', () => {
  fc.assert(
    fc.property(fc.array(fc.option(fc.integer({ min: -9, max: 9 }))), (steps) => {
      const queue = labelQueue<number>();
      let waiting: number[] = [];
      for (const number of [...steps, ...steps.map(() => null)]) {
        if (number !== null) {
          queue.put(number, number);
          waiting = [...waiting, number].sort((one, other) => other - one);
        } else {
          expect(queue.take()).toBe(waiting.shift() ?? null);
        }
      }
      expect(queue.take()).toBeNull();
    }),
  );
});
