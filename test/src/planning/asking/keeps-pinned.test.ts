import { describe, expect, it } from 'vitest';

import { isInletFeed, type Feed } from '../../../../src/domain/plan.js';
import { pedalId, supplyId } from '../../../../src/domain/quantities.js';
import type { Today } from '../../../../src/loadout/today.js';
import { keepsPinned } from '../../../../src/planning/asking/keeps-pinned.js';
import { feedOf, volts } from '../../../support/builders.js';

const berth = { supply: supplyId('quay'), unit: 1, outputs: [1], millivolts: volts(9) };
const today: Today = {
  berths: new Map([
    [pedalId('one'), berth],
    [pedalId('two'), { ...berth, outputs: [2] }],
  ]),
  exposed: new Set(),
  pinned: new Set([pedalId('one')]),
};

const keeps = (...feeds: readonly Feed[]): boolean =>
  keepsPinned({ feeds: feeds.filter((feed) => !isInletFeed(feed)), inlets: feeds.filter(isInletFeed) }, today);

describe('whether a plan keeps the pinned pedals', () => {
  it('is so where they are in place, whatever leads they get and whatever becomes of the others', () => {
    expect(keeps(feedOf('one', 'quay', 1), feedOf('two', 'quay', 3))).toBe(true);
    expect(keeps(feedOf('one', 'quay', 1, { polarity: 'centre-positive' }))).toBe(true);
  });

  it.each([
    ['another supply', feedOf('one', 'shore', 1)],
    ['another unit', feedOf('one', 'quay', 1, { unit: 2 })],
    ['another output', feedOf('one', 'quay', 2)],
    ['other volts', feedOf('one', 'quay', 1, { settings: [volts(12)] })],
  ])('is not so on %s', (_, feed) => {
    expect(keeps(feed)).toBe(false);
  });

  it('is not so where one is left without power', () => {
    expect(keeps(feedOf('two', 'quay', 2))).toBe(false);
  });
});
