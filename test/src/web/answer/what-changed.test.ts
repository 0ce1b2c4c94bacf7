import { expect, test } from 'vitest';

import { changedText, whatChanged } from '../../../../src/web/answer/what-changed.js';

type Told = Parameters<typeof whatChanged>[1];
type Row = Told['rows'][number];

/** A pedal on an output of a unit: "delay box 1 3" with its setting and its lead. */
function row(place: string, setting = '9 V', way = 'own lead'): Row {
  const [pedal = '', supply = '', unit = '', outputs = ''] = place.split(' ');
  const feed = { pedal, supply, unit: Number(unit), outputs: [Number(outputs)] };
  return { feed, pedal, unit: `${supply} ${unit}`, outputs, setting, way } as unknown as Row;
}
const told = (rows: readonly Row[], bought: Readonly<Record<string, number>> = {}): Told => ({
  rows,
  bill: { lines: Object.entries(bought).map(([name, units]) => ({ units, name, price: '' })), total: '' },
});
const marks = (before: Told, now: Told) =>
  Object.fromEntries([...whatChanged(before, now).pedals].map(([pedal, { change }]) => [pedal, change]));

test('nothing has changed since no plan, nor since the same plan', () => {
  const plan = told([row('delay box 1 3')], { Box: 1 });
  for (const before of [null, plan]) {
    const changed = whatChanged(before, plan);
    expect([changed.pedals.size, changed.gone, changed.bill.size, changed.billGone]).toEqual([0, [], 0, []]);
    expect(changedText(changed)).toBeNull();
  }
});

test('pedals are new, moved, altered where they are, or gone', () => {
  const before = told([row('delay box 1 3'), row('drive box 1 1'), row('fuzz box 1 2'), row('wah box 1 4')]);
  const now = told([row('delay box 1 3'), row('drive box 1 5'), row('fuzz box 1 2', '12 V'), row('looper box 1 1')]);
  expect(marks(before, now)).toEqual({ drive: 'moved', fuzz: 'altered', looper: 'new' });
  const changed = whatChanged(before, now);
  expect(changed.pedals.get('drive' as Row['feed']['pedal'])?.was).toBe('box 1, output 1, 9 V');
  expect(changedText(changed)).toBe('Since the last answer: 1 new, 1 moved, 1 altered, 1 gone (wah).');
  expect(changed.pedals.get('fuzz' as Row['feed']['pedal'])?.was).toBe('box 1, output 2, 9 V');
  const turned = whatChanged(told([row('wah box 1 4')]), told([row('wah box 1 4', '9 V', 'Reversing lead')]));
  expect([...turned.pedals]).toEqual([['wah', { change: 'altered', was: 'own lead' }]]);
});

test('units of a kind that are numbered otherwise have not changed places', () => {
  const before = told([row('delay box 1 1'), row('drive box 1 2'), row('wah box 2 1')]);
  const renumbered = told([row('delay box 2 1'), row('drive box 2 2'), row('wah box 1 1')]);
  expect(marks(before, renumbered)).toEqual({});
  // The unit that most stay on is the same one; who leaves it has moved.
  const parted = told([row('delay box 2 1'), row('drive box 1 2'), row('wah box 1 1'), row('fuzz box 2 2')]);
  expect(marks(before, parted)).toEqual({ drive: 'moved', fuzz: 'new' });
  expect(marks(told([row('wah box 1 1')]), told([row('wah other 1 1')]))).toEqual({ wah: 'moved' });
});

test('what is bought is new, there in another number, or gone', () => {
  const { bill, billGone } = whatChanged(told([], { Box: 2, Lead: 1, Old: 1 }), told([], { Box: 1, Lead: 1, New: 3 }));
  expect([...bill]).toEqual([
    ['Box', { change: 'altered', was: 2 }],
    ['New', { change: 'new', was: 0 }],
  ]);
  expect(billGone.map(({ name }) => name)).toEqual(['Old']);
});
