import { expect, it } from 'vitest';

import { factorText } from '../../../../src/domain/quantities.js';
import { pedalOf } from '../../../support/builders.js';
import { bankHolding, fourHours, onBlocks } from '../../../support/impossible-sources.js';
import { box } from '../given.js';
import { offered } from './explained.js';

it('lets a set of batteries last as long as it does: mAh ÷ load, rounded down to thousandths', async () => {
  const { ways, texts } = await offered('hours', onBlocks(3, 10));
  expect(ways.map(({ change: { of, to } }) => [of, factorText(to)])).toEqual([['battery', '3.333']]);
  expect(texts[0]).toMatch(
    /^Let a set of batteries last 3\.333 h instead of 8 h, the most with which there is a plan\. The hours are an estimate, from the milliamp-hours /,
  );
});

it('lets a power bank last as long as it does: usable × Wh ÷ (volts × load)', async () => {
  const given = { pedals: [pedalOf('looper', 100)], supplies: [bankHolding(1.8)], policy: fourHours };
  const { ways, texts } = await offered('hours', given);
  expect(ways.map(({ change: { of, to } }) => [of, factorText(to)])).toEqual([['bank', '1']]);
  expect(texts[0]).toMatch(/^Let power banks last 1 h instead of 4 h, .* an estimate, from the watt-hours /);
});

it('is not offered where hours are not to blame', async () => {
  const given = { pedals: [pedalOf('looper', 300)], supplies: [bankHolding(100), box(1)], policy: fourHours };
  expect((await offered('hours', given)).ways).toEqual([]);
});
