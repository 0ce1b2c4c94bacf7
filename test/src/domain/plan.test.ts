import { describe, expect, it } from 'vitest';

import { feedMillivolts, type Feed } from '../../../src/domain/plan.js';
import { partId, pedalId, supplyId } from '../../../src/domain/quantities.js';
import { volts } from '../../support/builders.js';

const feedOf = (settings: readonly number[], mode: 'series' | 'parallel' | null = null): Feed => ({
  pedal: pedalId('echo'),
  supply: supplyId('quay'),
  unit: 1,
  outputs: settings.map((_, index) => index + 1),
  settings: settings.map(volts),
  polarity: 'centre-negative',
  join: mode === null ? null : { mode, part: partId('stack') },
  chain: null,
  adapters: [],
});

describe('the volts that reach a pedal', () => {
  it('are what its output is set to', () => {
    expect(feedMillivolts(feedOf([9]))).toBe(9000);
  });

  it('are the sum of both outputs in series, at the same volts or not', () => {
    expect(feedMillivolts(feedOf([9, 9], 'series'))).toBe(18_000);
    expect(feedMillivolts(feedOf([9, 12.5], 'series'))).toBe(21_500);
  });

  it('are those of either output in parallel', () => {
    expect(feedMillivolts(feedOf([9, 9], 'parallel'))).toBe(9000);
  });

  it('are not known without a setting', () => {
    expect(() => feedMillivolts(feedOf([]))).toThrow('the feed of echo has no setting');
  });
});
