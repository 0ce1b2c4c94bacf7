import { expect, it } from 'vitest';

import { everySource } from '../../../bench/sources/every-source.js';
import { chooseAlone } from '../../../bench/loadouts-alone.js';

it('has five power banks and five batteries, which pedals of a board take and plans use', async () => {
  let onBatteries = 0;
  for (const seed of [1, 2, 3, 4]) {
    const { board, catalogue } = everySource({ pedals: 6, supplies: 20 }, seed);
    expect(catalogue.supplies).toHaveLength(20);
    expect(catalogue.supplies.filter(({ source }) => source.kind === 'charge')).toHaveLength(5);
    expect(catalogue.parts.filter(({ role }) => role.kind === 'battery')).toHaveLength(5);
    const answer = await chooseAlone(board, catalogue, { remainingMs: () => Infinity });
    if (answer.kind !== 'plan') throw new Error(`seed ${seed}: ${answer.kind}`);
    onBatteries += answer.wiring.batteries.length;
  }
  expect(onBatteries).toBeGreaterThan(0);
});
