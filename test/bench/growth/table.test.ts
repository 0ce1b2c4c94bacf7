import { expect, it } from 'vitest';

import { growthPanels } from '../../../bench/growth/lines.js';
import { growthTable } from '../../../bench/growth/table.js';
import { growthOptions, growthSolves } from './growth-solves.js';

it('lists the medians by size and says what the fits come to', () => {
  const text = growthPanels(growthSolves, growthOptions).map(growthTable).join('\n');
  expect(text.replaceAll(/ +/g, ' ').split('\n')).toEqual([
    'Growth with pedals, with 100 supply models; no chains:',
    ' size search proven by tags median ms least ms worst ms',
    expect.stringMatching(/^[- ]+$/) as string,
    ' 5×100 loadouts 3/3 3 5.0 5.0 5.0',
    ' 5×100 HiGHS 3/3 0 25 25 25',
    '10×100 loadouts 3/3 3 10 10 10',
    '10×100 HiGHS 3/3 0 100 100 100',
    '20×100 loadouts 3/3 3 20 20 20',
    '20×100 HiGHS 1/3 0 >1000 400 >1000',
    'loadouts: time grows with pedals ^ 1.00: twice as many take 2.0 times as long',
    // (ln 1000 − ln 25) ÷ (2 · ln 2), for the middle one of three even steps has no say; 2 to that power is √40.
    'HiGHS: time grows with pedals ^ 2.66 or more: twice as many take 6.3 times as long; medians that were cut off count with the cap',
  ]);
});
