import fc from 'fast-check';
import { expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { compare } from '../../../../src/planning/compare/compare.js';
import { comparisonHandout } from '../../../../src/report/words/comparison-handout.js';
import { caseOf } from '../../../support/arbitraries.js';
import { share, trying } from '../../../support/runs.js';

const cents = (price: string): number => Number(price.replace(/[^\d]/g, ''));

it('lists of all that is bought add up to the price, and no two choices have the same words at different prices', async () => {
  let [several, lines] = [0, 0];
  await fc.assert(
    fc.asyncProperty(caseOf({ min: 2, max: 4 }, { min: 2, max: 4 }, 3), async ({ board, catalogue }) => {
      const kit = kitOf(board, catalogue);
      const comparison = await compare(kit, { remainingMs: () => Infinity });
      const { options } = comparisonHandout({ kit, comparison });
      if (options.length > 1) several += 1;
      const prices = new Map<string, string>();
      for (const { bill, price, figures } of options) {
        lines += bill.length;
        expect(bill.reduce((sum, line) => sum + cents(line.price), 0)).toBe(cents(price));
        const words = bill.map(({ text }) => text).join(', ');
        expect(prices.get(words) ?? price, `${words} ${figures?.join(' ')}`).toBe(price);
        prices.set(words, price);
      }
    }),
    trying(60),
  );
  expect(several).toBeGreaterThan(share(5));
  expect(lines).toBeGreaterThan(share(40));
});
