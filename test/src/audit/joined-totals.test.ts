import { describe, expect, it } from 'vitest';

import type { JoinMode } from '../../../src/domain/supply.js';
import { currentTotal as mA, powerTotal as watts } from '../../support/builders.js';
import { draws, faults, feed, joinLead, listed, milliamps, pedal, quayWith, type Case, type Totals } from './cases.js';

type Row = readonly [what: string, mode: JoinMode, other: 2 | 3, enough: Totals, short: readonly Totals[]];

const bank = (total: Totals['supply'] = mA(500), other: Totals['supply'] = total): Totals => ({
  banks: [total, other],
});

/** A join of output 1 and another one, of the same bank or of the next: what is just enough for it, and what is too little. */
const rows: readonly Row[] = [
  ['in series on both outputs', 'series', 3, { supply: mA(1000) }, [{ supply: mA(999.999) }]],
  ['in series once in each bank', 'series', 3, bank(), [bank(mA(499.999), mA(500)), bank(mA(500), mA(499.999))]],
  ['in series twice in one bank', 'series', 2, bank(mA(1000)), [bank(mA(999.999))]],
  // 9 V × 500 mA and 12 V × 500 mA.
  ['in series at the volts of each', 'series', 3, { supply: watts(10.5) }, [{ supply: watts(10.499) }]],
  [
    'in series at the volts of its own bank',
    'series',
    3,
    bank(watts(4.5), watts(6)),
    [bank(watts(4.499), watts(6)), bank(watts(4.5), watts(5.999))],
  ],
  ['in series at both volts in one bank', 'series', 2, bank(watts(10.5)), [bank(watts(10.499))]],
  ['in parallel once in the supply', 'parallel', 3, { supply: mA(500) }, [{ supply: mA(499.999) }]],
  ['in parallel whole in each bank', 'parallel', 3, bank(), [bank(mA(499.999), mA(500)), bank(mA(500), mA(499.999))]],
  ['in parallel once in watts', 'parallel', 3, { supply: watts(4.5) }, [{ supply: watts(4.499) }]],
  ['in parallel once in one bank', 'parallel', 2, bank(), [bank(mA(499.999))]],
  ['in parallel once in the watts of one bank', 'parallel', 2, bank(watts(4.5)), [bank(watts(4.499))]],
];

describe.each([
  ['total', draws(500)],
  ['startup', { ...draws(10), startup: milliamps(500) }],
] as const)('%s counts 500 mA', (rule, load) => {
  const joined = (mode: JoinMode, other: number, totals: Totals): Case => ({
    pedals: [pedal('echo', { ...load, accepts: listed(9, 21) })],
    supplies: [quayWith(mode, totals)],
    parts: [joinLead('stack', mode)],
    feeds: [feed('echo', [1, other], { join: [mode, 'stack'], volts: mode === 'series' ? [9, 12] : [9, 9] })],
  });

  it.each(rows)('%s', (_, mode, other, enough, short) => {
    expect(faults(joined(mode, other, enough))).toEqual([]);
    for (const totals of short) expect(faults(joined(mode, other, totals))).toEqual([rule]);
  });
});
