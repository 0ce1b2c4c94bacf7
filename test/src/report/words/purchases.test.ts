import { expect, it } from 'vitest';

import { onBatteries } from '../mixed-stage.js';

it('buys batteries for the hours of playing, beyond those that are owned, and lists these', () => {
  // 10 mA for 100 h are 1000 mAh: two blocks of 550 mAh, both owned; one set of six cells.
  const { shopping, owned, wiring } = onBatteries({ mains: true });
  expect(shopping.map((item) => `${item.units} × ${item.text}: ${item.kind}`)).toEqual([
    '1 × Quay: supply',
    '6 × Cell for 100 h of playing: battery',
  ]);
  expect(owned).toEqual([{ name: 'Block', units: 2 }]);
  const spent = shopping.reduce((sum, { units, price }) => sum + units * price, 0);
  expect(spent).toBe(wiring.score.money);
});
