import { expect, it } from 'vitest';

import { factor, pedalOf } from '../../../support/builders.js';
import { bankHolding, fourHours } from '../../../support/impossible-sources.js';
import type { Given } from '../given.js';
import { offered } from './explained.js';

/** 9 V × 100 mA × 4 h take 3.6 Wh, of which the bank has half of 1.8 Wh. */
const looper = (policy: Given['policy']): Given => ({
  pedals: [pedalOf('looper', 100)],
  supplies: [bankHolding(1.8)],
  policy: { ...fourHours, ...policy },
});

it('is one on mains where there is a socket', async () => {
  const { texts } = await offered('supply', looper({}));
  expect(texts).toEqual([
    'Find one more supply for looper: an isolated output of 9 V DC with 100 mA or more, centre-negative, plug 2.1 mm barrel. ' +
      'Then there is a plan that buys nothing besides.',
  ]);
});

it('is a power bank that holds enough where there is none', async () => {
  const { ways, texts } = await offered('supply', looper({ sockets: 0 }));
  expect(ways.map(({ change }) => change.supply.source)).toEqual([{ kind: 'charge', milliwattHours: 7200 }]);
  expect(texts[0]).toMatch(/plug 2\.1 mm barrel, of a power bank of 7\.2 Wh or more\. Then /);
});

it('holds tenths of a watt-hour, rounded up', async () => {
  const usable = { hours: factor(4), usable: factor(0.7) };
  const { ways } = await offered('supply', looper({ sockets: 0, runtime: usable }));
  // 3.6 ÷ 0.7 is 5.14…
  expect(ways.map(({ change }) => change.supply.source)).toEqual([{ kind: 'charge', milliwattHours: 5200 }]);
});

it('is none where nothing may be in use that has no socket, nor how long a power bank has to last', async () => {
  const { ways } = await offered('supply', looper({ sockets: 0, runtime: null }));
  expect(ways).toEqual([]);
});
