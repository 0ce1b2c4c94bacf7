import fc from 'fast-check';

import type { Case } from './arbitraries.js';
import { bankOf, boardOf, catalogueOf, listed, partOf, pedalOf, policyOf, settingOf, supplyOf } from './builders.js';

/**
 * Boards on which units of one supply stand for one another: of either voltage some pedals of which about two fill an output, so
 * that fewer units than it takes could carry all of them by halves.
 */
export const standIns: fc.Arbitrary<Case> = fc
  .record({
    draws: fc.tuple(...[9, 12].map(() => fc.array(fc.integer({ min: 40, max: 50 }), { minLength: 3, maxLength: 3 }))),
    outputs: fc.constantFrom(1, 1, 1, 2),
    prices: fc.record({
      box: fc.integer({ min: 5, max: 15 }),
      lead: fc.nat(3),
      single: fc.integer({ min: 9, max: 20 }),
    }),
    tails: fc.constantFrom(2, 3),
    stock: fc.option(fc.integer({ min: 2, max: 5 })),
  })
  .map(({ draws, outputs, prices, tails, stock }) => {
    const pedals = [9, 12].flatMap((at, index) =>
      (draws[index] ?? []).map((draw, number) => pedalOf(`at-${at}-${number}`, draw, { accepts: listed(at) })),
    );
    const supplies = [
      { ...supplyOf('box', prices.box, [bankOf(outputs, [settingOf(9, 100), settingOf(12, 100)])]), stock },
      supplyOf('single', prices.single, [bankOf(1, [settingOf(9, 100)])]),
    ];
    const lead = partOf('lead', prices.lead, { kind: 'chain', tails });
    return { board: boardOf(pedals, { policy: policyOf() }), catalogue: catalogueOf(supplies, [lead]) };
  });
