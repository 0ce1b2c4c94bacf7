import { expect, it } from 'vitest';

import { memoryTable } from '../../../bench/memory/table.js';
import type { Weighing } from '../../../bench/memory/weigh.js';
import { proven, unproven } from '../fake-solves.js';

const weighing = (seed: number, changes: Partial<Weighing> = {}): Weighing => ({
  shape: { pedals: 12, supplies: 40, chains: 'all', seed },
  set: 'loadouts',
  peakBytes: 90e6,
  elapsedMs: 100,
  verdict: proven,
  ...changes,
});

it('shows the median and the most of each size, profile and set', () => {
  const options = {
    sizes: [{ pedals: 12, supplies: 40, seeds: [1, 2, 3], capMs: 60_000 }],
    chains: ['none', 'all'],
    engines: ['loadouts', 'HiGHS'],
  } as const;
  const weighings = [
    weighing(1),
    weighing(2, { peakBytes: 95e6, elapsedMs: 300 }),
    weighing(3, { peakBytes: 180.4e6, elapsedMs: 200, verdict: unproven }),
  ];
  expect(memoryTable(weighings, options).replaceAll(/ +/g, ' ').split('\n')).toEqual([
    ' size chains search proven median MB most MB median ms',
    expect.stringMatching(/^[- ]+$/) as string,
    '12×40 all loadouts 2/3 95 180 200',
  ]);
});
