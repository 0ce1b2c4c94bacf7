import { expect, test } from 'vitest';

import { asked } from './ask.js';
import { adapter, apart, box, pedal } from './cases/case.js';

const many = (count: number) => Array.from({ length: count }, (_, index) => pedal(`P${index + 1}`, 9, 100));

test('units of one model are numbered from 1 without gaps', async () => {
  const { feeds } = await asked({ pedals: many(5), supplies: [box('s', 10, [apart(2, '9/100')])] });
  expect([...new Set(feeds.map(({ unit }) => unit))].sort()).toEqual([1, 2, 3]);
  expect(new Set(feeds.map(({ unit, outputs }) => `${unit} ${outputs.join('+')}`)).size).toBe(5);
});

test('each model is numbered by itself', async () => {
  const { feeds } = await asked({
    pedals: [pedal('A', 9, 100), pedal('B', 12, 100)],
    supplies: [adapter('s', 10, '9/100'), adapter('t', 10, '12/100')],
  });
  expect(feeds.map(({ supply, unit }) => `${supply} ${unit}`)).toEqual(['s 1', 't 1']);
});

test('owned units come first and bought ones after them', async () => {
  const { feeds, buy } = await asked({
    pedals: many(3),
    supplies: [adapter('s', 10, '9/100')],
    board: 'owned: {supplies: [s]}',
  });
  expect(buy.supplies).toEqual([{ id: 's', units: 2, price: '10.00' }]);
  expect(feeds.map(({ unit }) => unit).sort()).toEqual([1, 2, 3]);
});

test('the price in `buy` is that of one unit', async () => {
  const { buy, score } = await asked({ pedals: many(3), supplies: [adapter('s', 10.25, '9/100')] });
  expect(buy.supplies).toEqual([{ id: 's', units: 3, price: '10.25' }]);
  expect(score['money']).toBe('30.75');
});

test('feeds stand in the order of the pedals', async () => {
  const { feeds } = await asked({
    pedals: ['Zed', 'Ay', 'Em'].map((name) => pedal(name, 9, 100)),
    supplies: [box('s', 10, [apart(3, '9/100')])],
  });
  expect(feeds.map((feed) => feed.pedal)).toEqual(['zed', 'ay', 'em']);
});

test('a guessed figure is listed for confirmation though every field is stated', async () => {
  const all = 'power: DC, polarity: centre-negative, inlet: barrel-2.1, ground: negative, figure: guess';
  const { confirm } = await asked({ pedals: [pedal('A', 9, 60, all)], supplies: [adapter('s', 10, '9/100')] });
  expect(confirm[0]).toMatchObject({ pedal: 'a' });
});

test('what the catalogue assumes of a supply in use is listed for confirmation, and of no other', async () => {
  const { confirm } = await asked({
    pedals: [pedal('A', 9, 60)],
    supplies: [adapter('s', 10, '9/100'), adapter('t', 20, '9/100')],
  });
  expect(confirm.filter((entry) => 'supply' in entry)).toEqual([
    {
      supply: 's',
      assumed: { power: 'DC', plug: 'barrel-2.1', polarity: 'centre-negative', regulated: true },
    },
  ]);
});

test('an impossible case has the whole object', async () => {
  const found = await asked({ pedals: many(1), supplies: [adapter('s', 10, '12/100')] });
  expect(Object.keys(found)).toEqual(
    expect.arrayContaining([
      ...['format', 'board', 'aim', 'status', 'currency', 'score', 'buy', 'feeds'],
      ...['unpowered', 'exposed', 'moved', 'confirm', 'cautions'],
    ]),
  );
  expect(found).toMatchObject({ format: 'boardfeed/plan/1', status: 'impossible', feeds: [], moved: [] });
});

test('cautions are sentences', async () => {
  const { cautions } = await asked({
    pedals: [pedal('A', 9, 60, 'maxVolts: 14')],
    supplies: [adapter('s', 10, '9/100/14', 'regulated: false')],
  });
  expect(cautions.length).toBeGreaterThan(0);
  for (const caution of cautions) expect(caution).toMatch(/^.+\.$/);
});
