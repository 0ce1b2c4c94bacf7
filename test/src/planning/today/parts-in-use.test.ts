import { describe, expect, it } from 'vitest';

import { partId } from '../../../../src/domain/quantities.js';
import { partsInUse } from '../../../../src/planning/today/parts-in-use.js';
import { feedOf } from '../../../support/builders.js';

const stack = partId('stack');
const daisy = partId('daisy');
const flip = partId('flip');

const counted = (...feeds: Parameters<typeof partsInUse>[0]) => Object.fromEntries(partsInUse(feeds));

describe('the parts in use', () => {
  it('count a chain lead once for all pedals on its output', () => {
    const chained = ['one', 'two'].map((pedal) => feedOf(pedal, 'quay', 1, { chain: daisy }));
    expect(counted(...chained)).toEqual({ daisy: 1 });
    expect(counted(...chained, feedOf('three', 'quay', 2, { chain: daisy }))).toEqual({ daisy: 2 });
    expect(counted(...chained, feedOf('three', 'quay', 1, { chain: daisy, unit: 2 }))).toEqual({ daisy: 2 });
  });

  it('count every adapter, and the lead of each join', () => {
    const joined = feedOf('one', 'quay', 1, {
      outputs: [1, 2],
      join: { mode: 'series', part: stack },
      adapters: [flip, flip],
    });
    expect(counted(joined, feedOf('two', 'quay', 3, { adapters: [flip] }))).toEqual({ stack: 1, flip: 3 });
  });

  it('are none where nothing hangs through a lead', () => {
    expect(counted(feedOf('one', 'quay', 1))).toEqual({});
  });
});
