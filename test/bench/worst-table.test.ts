import { expect, it } from 'vitest';

import { unprovenText, worstTable } from '../../bench/worst-table.js';
import { solveOf, unproven, wrong } from './fake-solves.js';

const options = {
  sizes: [{ pedals: 12, supplies: 40, seeds: [1, 2, 3], capMs: 60_000 }],
  chains: ['all'],
  engines: ['loadouts', 'HiGHS'],
} as const;

const solves = [
  solveOf({ elapsedMs: 100, shape: { seed: 1 } }),
  solveOf({ elapsedMs: 500, shape: { seed: 2 } }),
  solveOf({ elapsedMs: 50, shape: { seed: 3 } }),
  solveOf({ set: 'HiGHS', proofBy: 'agreement', elapsedMs: 1000, shape: { seed: 1 } }),
  solveOf({ set: 'HiGHS', proofBy: 'agreement', elapsedMs: 2000, shape: { seed: 2 } }),
  solveOf({ set: 'HiGHS', proofBy: null, elapsedMs: 60_020, shape: { seed: 3 }, verdict: unproven }),
];

it('shows the slowest solve, its seed, and how many times as long it takes as the slowest of loadouts', () => {
  expect(worstTable(solves, options).replaceAll(/ +/g, ' ').split('\n')).toEqual([
    ' size chains search proven by tags median ms worst ms at seed worst × loadouts',
    expect.stringMatching(/^[- ]+$/) as string,
    '12×40 all loadouts 3/3 3 100 500 2 1.00',
    '12×40 all HiGHS 2/3 0 2000 >60000 3 >120',
  ]);
});

it('counts for each set what was not proven, wrong answers included', () => {
  expect(unprovenText(solves)).toBe('not proven in time: loadouts 0 of 3, HiGHS 1 of 3');
  expect(unprovenText([solveOf({ verdict: wrong })])).toBe('not proven in time: loadouts 1 of 1');
});
