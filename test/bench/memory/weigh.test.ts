import { expect, it } from 'vitest';

import { emptyBytes, weigh } from '../../../bench/memory/weigh.js';

it('weighs a process of its own and not the one that asks for it', async () => {
  const ballast = Buffer.alloc(400e6, 1);
  const empty = await emptyBytes();
  const { peakBytes, verdict } = await weigh({ pedals: 6, supplies: 6, chains: 'all', seed: 1 }, 'loadouts', 1_000_000);
  expect(verdict.kind).toBe('proven');
  // A bare Node takes more than 20 MB, and a board of six pedals less than 400.
  expect(empty).toBeGreaterThan(20e6);
  expect(peakBytes).toBeGreaterThan(empty / 2);
  expect(peakBytes).toBeLessThan(ballast.length);
});
