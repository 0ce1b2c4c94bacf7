import fc from 'fast-check';

import type { Policy } from '../../src/domain/board.js';
import { euros, factor, volts } from './builders.js';
import { weighted } from './arbitrary-choices.js';

/** Policies whose limits suit about so many pedals. The headroom of one pedal may be above that of several. */
export function policies(pedals: number): fc.Arbitrary<Policy> {
  const share = Math.max(1, Math.round(pedals / 3));
  const count = weighted<number | null>([94, null], [6, 2 * share], [3, share], [3, 3 * share]);
  return fc.record({
    headroom: fc.record({
      alone: weighted([3, 1], [3, 1.2], [1, 1.5]).map(factor),
      chained: weighted([2, 1], [2, 1.2], [1, 1.5], [1, 2]).map(factor),
      supply: weighted([2, 1], [2, 1.2], [2, 1.5]).map(factor),
    }),
    guess: weighted([3, 1.5], [2, 1.25], [1, 1]).map(factor),
    chains: weighted<'allow' | 'never'>([8, 'allow'], [2, 'never']),
    noisePrice: weighted([4, 20], [2, 5], [1, 0], [1, 12.5]).map(euros),
    supplyPrice: weighted([5, 0], [2, 8], [1, 25], [1, 12.5]).map(euros),
    mains: weighted<readonly number[]>([88, []], [7, [230]], [2, [120]], [3, [120, 230]]).map((venues) =>
      venues.map(volts),
    ),
    runtime: weighted<Policy['runtime']>(
      [1, null],
      [3, { hours: factor(4), usable: factor(0.85) }],
      [3, { hours: factor(2.5), usable: factor(1) }],
    ),
    batteries: weighted<Policy['batteries']>(
      [1, null],
      [3, { change: factor(8), pay: factor(20) }],
      [2, { change: factor(2.5), pay: factor(12) }],
    ),
    sockets: count,
    bricks: count,
    budget: weighted([94, null], [2, 30], [5, 45], [5, 60]).map((value) =>
      value === null ? null : euros(value * share),
    ),
  });
}
