import { expect, test } from 'vitest';

import { faceOf, type Piece } from '../../../../src/report/drawing/face.js';
import { textWidth } from '../../../../src/report/drawing/text-size.js';

const sizes = { name: 10, plain: 10, mark: 10 };
const rest: readonly Piece[] = ['9 V, 120 mA', 'digital'].map((text) => ({ kind: 'text', text }));

test('a name is not cut that a line has room for: what stands behind it goes on below', () => {
  const text = 'Sluice-house speaker box';
  const width = textWidth(text, { size: 10, strong: true }) + 70;
  const { face, height } = faceOf([{ kind: 'line', text, rest, isLow: false }], width, sizes);
  expect(face.texts.map((line) => line.text)).toEqual([text, '9 V, 120 mA', 'digital']);
  expect(face.texts.every(({ full }) => full === null)).toBe(true);
  expect(height).toBe(25);
});

test.each([
  ['The longest name that anybody has thought of yet', false],
  ['Sluice-house speaker box', true],
])('%j is cut where no line has room for it, or for as little height as can be: low %j', (text, isLow) => {
  const { face, height } = faceOf([{ kind: 'line', text, rest, isLow }], 250, sizes);
  expect(face.texts[0]).toMatchObject({ full: text });
  expect(face.texts[0]?.text).toMatch(/…$/);
  expect(height).toBe(12.5);
});
