import { expect, it } from 'vitest';

import { instance } from '../../../bench/instances.js';
import { kitOf } from '../../../src/domain/kit.js';
import { choose } from '../../../src/planning/choose/choose.js';

it('where the most fractional numbers tell little all others are tried, which saves cases', async () => {
  const { board, catalogue } = instance({ pedals: 20, supplies: 100, chains: 'adapters', seed: 3 });
  const answer = await choose(kitOf(board, catalogue), { aim: 'cost' });
  if (answer.kind !== 'plan') throw new Error(`it is ${answer.kind}`);
  expect(answer.gap).toBeNull();
  // Twenty; thirty-five with the most fractional alone.
  expect(answer.evidence?.cases).toBeLessThan(28);
});
