import { expect, test } from 'vitest';

import type { HookupStep } from '../../../../src/report/words/steps.js';
import { begunWith, changedTo, undone } from '../../../../src/web/document/history.js';
import { emptyDocument, type PageDocument } from '../../../../src/web/document/page-document.js';
import { isBegunOtherwise, planning, pluggedAs, standingOf, ticking } from '../../../../src/web/document/plugging.js';

const step = (title: string, ...items: readonly string[]): HookupStep => ({ title, text: title, items, checks: null });
const check = { range: 'DC volts', probes: null, reads: '9 V', note: null, mark: '1', pedal: 'Wren' } as const;
const steps: readonly HookupStep[] = [
  step('Mains off'),
  step('Pull the plugs', 'Wren', 'Dunlin'),
  // The second plug reads one way or the other, as a label says that nobody has read.
  {
    ...step('Measure'),
    checks: [check, { ...check, mark: '2', pedal: 'Gull, if –' }, { ...check, mark: '2', pedal: 'Gull, if +' }],
  },
];
const isDone = (document: PageDocument, of = steps): readonly boolean[] =>
  standingOf(of, document).map((one) => one.isDone);

test('a step is done when each of its boxes is ticked: one a thing to do, one a plug to measure, else one', () => {
  expect(standingOf(steps, emptyDocument).map(({ boxes }) => boxes.length)).toEqual([1, 2, 2]);
  const begun = ticking(steps, 1, 0)(ticking(steps, 0, 0)(emptyDocument));
  expect(isDone(begun)).toEqual([true, false, false]);
  expect(isDone(ticking(steps, 1, 1)(begun))).toEqual([true, true, false]);
  expect(isDone(ticking(steps, 0, 0)(begun))).toEqual([false, false, false]);
});

test('what is ticked of one plan never counts for another, and is there again with its plan', () => {
  const begun = ticking(steps, 0, 0)(emptyDocument);
  const others = [...steps.slice(0, 2), step('Measure', 'Plover')];
  expect(isDone(begun, others)).toEqual([false, false, false]);
  expect([isBegunOtherwise(steps, begun), isBegunOtherwise(others, begun)]).toEqual([false, true]);
  expect(isBegunOtherwise(others, ticking(steps, 0, 0)(begun))).toBe(false);
  expect(isDone(ticking(others, 1, 0)(begun))).toEqual([false, false, false]);
  const typed = changedTo(begunWith(begun), { ...begun, board: { file: 'a.yaml', text: 'other' } });
  const back = undone(changedTo(typed, ticking(others, 1, 0)(typed.present))).present;
  expect(isDone(back)).toEqual([true, false, false]);
});

test('to tick a box is no step to take back', () => {
  expect(changedTo(begunWith(emptyDocument), ticking(steps, 0, 0)(emptyDocument)).past).toEqual([]);
});

test('what is plugged now is one step, with the pedal that stood on the line, and begins anew', () => {
  const pin = { pedal: 'wren', supply: 's', unit: 1, outputs: [1], millivolts: 9000 } as never;
  const asked = planning('from nothing')({ ...emptyDocument, pins: [pin], chosen: 'a' });
  expect(asked).toMatchObject({ approach: 'from nothing', pins: [], chosen: null });
  const before = ticking(steps, 0, 0)({ ...asked, line: 'Wren delay 9v 100 neg', pins: [pin], chosen: 'a' });
  const after = changedTo(begunWith(before), pluggedAs('wiring: []')(before));
  expect(after.past).toEqual([before]);
  expect(after.present).toEqual({ ...emptyDocument, board: { file: 'my-board.yaml', text: 'wiring: []' } });
});
