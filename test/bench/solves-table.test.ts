import { expect, it } from 'vitest';

import { solvesTable } from '../../bench/solves-table.js';
import { proven, solveOf, unproven } from './fake-solves.js';

const options = {
  sizes: [{ pedals: 12, supplies: 40, seeds: [1, 2], capMs: 2000 }],
  chains: ['none', 'all'],
  engines: ['HiGHS', 'loadouts'],
} as const;

it('compares the rivals in a row each and leaves out what was not measured', () => {
  const rival = { set: 'HiGHS', proofBy: 'agreement', capMs: 2000, questions: 3 } as const;
  const solves = [
    solveOf({ elapsedMs: 100 }),
    solveOf({ elapsedMs: 200, shape: { seed: 2 }, enginesMs: 100, questions: 1, proofBy: 'agreement' }),
    solveOf({ ...rival, elapsedMs: 600, enginesMs: 600 }),
    solveOf({ ...rival, elapsedMs: 2010, enginesMs: 2010, shape: { seed: 2 }, verdict: unproven, proofBy: null }),
  ];
  const shape = { pedals: 12, supplies: 40, chains: 'all', seed: 1 } as const;
  const weighings = [{ shape, set: 'loadouts', peakBytes: 101_400_000, elapsedMs: 9, verdict: proven }] as const;
  expect(solvesTable(solves, weighings, options).replaceAll(/ +/g, ' ').split('\n')).toEqual([
    ' size chains search proven by tags median ms least ms worst ms × loadouts in engines questions peak MB',
    expect.stringMatching(/^[- ]+$/) as string,
    // The mean of 600 ms and the cap of 2000, over the mean of 100 and 200.
    '12×40 all HiGHS 1/2 0 >1300 600 >2000 >8.67 100 % 3 –',
    '12×40 all loadouts 2/2 1 150 100 200 1.00 25 % 0.5 101',
  ]);
});
