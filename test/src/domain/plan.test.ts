import { describe, expect, it } from 'vitest';

import { feedMillivolts, leadsOf, type Feed } from '../../../src/domain/plan.js';
import { partId } from '../../../src/domain/quantities.js';
import { feedOf, volts } from '../../support/builders.js';

const feed = (settings: readonly number[], mode: 'series' | 'parallel' | null = null): Feed =>
  feedOf('echo', 'quay', 1, {
    outputs: settings.map((_, index) => index + 1),
    settings: settings.map(volts),
    join: mode === null ? null : { mode, part: partId('stack') },
  });

describe('the volts that reach a pedal', () => {
  it('are what its output is set to', () => {
    expect(feedMillivolts(feed([9]))).toBe(9000);
  });

  it('are the sum of both outputs in series, at the same volts or not', () => {
    expect(feedMillivolts(feed([9, 9], 'series'))).toBe(18_000);
    expect(feedMillivolts(feed([9, 12.5], 'series'))).toBe(21_500);
  });

  it('are those of either output in parallel', () => {
    expect(feedMillivolts(feed([9, 9], 'parallel'))).toBe(9000);
  });

  it('are not known without a setting', () => {
    expect(() => feedMillivolts(feed([]))).toThrow('the feed of echo has no setting');
  });
});

describe('the leads of a feed', () => {
  it('are the join lead, the chain lead and the adapters, from the supply on', () => {
    const adapters = [partId('flip'), partId('jack')];
    const joined = feedOf('echo', 'quay', 1, { join: { mode: 'series', part: partId('stack') }, adapters });
    expect(leadsOf(joined)).toEqual(['stack', 'flip', 'jack']);
    expect(leadsOf({ ...joined, join: null, chain: partId('daisy') })).toEqual(['daisy', 'flip', 'jack']);
  });

  it("are none where only the output's own lead is used", () => {
    expect(leadsOf(feedOf('echo', 'quay', 1))).toEqual([]);
  });
});
