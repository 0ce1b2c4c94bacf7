import { expect, it } from 'vitest';

import { isMoney, tiers } from '../../../../src/domain/aim.js';
import { tierWords } from '../../../../src/report/words/tier-words.js';

it('money needs a currency, and what is counted does not', () => {
  for (const tier of tiers) expect(tierWords[tier].counted === null).toBe(isMoney(tier));
});

it.each([
  ['unpowered', '1 pedal without power', 'leaves fewer than 2 pedals without power', '2 pedals more without power'],
  [
    'exposed',
    '1 exposed pedal',
    'exposes fewer than 2 pedals to digital noise',
    '2 pedals more exposed to digital noise',
  ],
  ['bricks', '1 supply in use', 'uses fewer than 2 supplies', '2 supplies more'],
  ['parts', '1 lead', 'takes fewer than 2 extra leads', '2 leads more'],
  ['moved', '1 moved pedal', 'moves fewer than 2 pedals', '2 pedals more moved'],
  [
    'offPreferred',
    '1 pedal off its preferred volts',
    'has fewer than 2 pedals off the preferred volts',
    '2 pedals more off the preferred volts',
  ],
] as const)('%s is spoken of in one way', (tier, one, less, apart) => {
  const { counted } = tierWords[tier];
  expect([counted?.so(1), counted?.lessThan(2), counted?.apart(2, 'more')]).toEqual([one, less, apart]);
});
