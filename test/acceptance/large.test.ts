import { expect, test } from 'vitest';

import { asked } from './ask.js';
import { adapter, apart, box, fan, pedal, shared } from './cases/case.js';

const pedals = (count: number, more: (index: number) => string, from = 10) =>
  Array.from({ length: count }, (_, index) => pedal(`P${index + 1}`, 9, from + index, more(index)));

test('28 pedals that are each alone: two boxes of ten and two of four', async () => {
  // An output costs 10.00 in a box of ten, 11.25 in one of four, else 12.00 or more; 28 are 20 + 8.
  const singles = Array.from({ length: 40 }, (_, index) => adapter(`single${index}`, 12 + index / 100, '9/100'));
  const found = await asked({
    pedals: pedals(28, () => 'alone: true'),
    supplies: [box('ten', 100, [apart(10, '9/100')]), box('four', 45, [apart(4, '9/100')]), ...singles],
    parts: [fan(8)],
  });
  expect(found).toMatchObject({ status: 'proven', score: { money: '290.00', bricks: 4, parts: 0, exposed: 0 } });
});

test('28 equal pedals on chains: three of eight and one of five', async () => {
  // With tails for eight 18.00, for five 15.00: 3 × 18 + 15 = 69 for 29 places; 4 × 18 = 72; 2 × 18 + 3 × 15 = 81.
  const found = await asked({
    pedals: Array.from({ length: 28 }, (_, index) => pedal(`P${index + 1}`, 9, 10)),
    supplies: [adapter('s', 10, '9/160'), box('eight', 60, [apart(8, '9/20')])],
    parts: [fan(8), '- {id: five, name: five, price: 5, fits: barrel-2.1, gives: barrel-2.1, tails: 5}'],
    policy: { headroom: '{alone: 1.2, chained: 2, supply: 1.2}' },
  });
  expect(found).toMatchObject({ status: 'proven', score: { money: '69.00', bricks: 4, parts: 4 } });
});

test('28 pedals, half of them digital: one common ground for each half', async () => {
  // Two boxes of fourteen, one all digital and one all high gain, are as quiet as isolated outputs at four times the price.
  const found = await asked({
    pedals: pedals(28, (index) => `alone: true, ${index % 2 === 0 ? 'digital' : 'highGain'}: true`),
    supplies: [box('common', 50, [shared(14, '9/100')]), box('isolated', 200, [apart(14, '9/100')])],
  });
  expect(found).toMatchObject({ status: 'proven', score: { money: '100.00', bricks: 2, exposed: 0 } });
});

test('28 pedals of three volts and both grounds among 60 supplies', async () => {
  // 20 at 9 V, 4 at 12 V and 4 at 18 V with a positive ground. The trio serves 5 + 1 + 1 for 30.00; four of them are 120.
  // Any other supply costs 5.00 an output or more, so 28 outputs at 30/7 each cannot be beaten.
  const voltsOf = (index: number) => (index % 7 === 5 ? 12 : index % 7 === 6 ? 18 : 9);
  const found = await asked({
    pedals: Array.from({ length: 28 }, (_, index) =>
      pedal(`P${index + 1}`, voltsOf(index), 10 + index, `alone: true${index % 7 === 6 ? ', ground: positive' : ''}`),
    ),
    supplies: [
      box('trio', 30, [apart(5, '9/100'), apart(1, '12/100'), apart(1, '18/100')]),
      ...Array.from({ length: 59 }, (_, index) =>
        box(`x${index}`, 5 * (1 + (index % 6)) + index / 100, [
          shared(1 + (index % 6), ['9/100', '12/100', '18/100'][index % 3] ?? '9/100'),
        ]),
      ),
    ],
  });
  expect(found).toMatchObject({ status: 'proven', score: { money: '120.00', bricks: 4 } });
});
