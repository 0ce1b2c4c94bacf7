import { expect, test } from 'vitest';

import { charactersOf, textWidth } from '../../../../src/report/drawing/text-size.js';

const between = (first: number, last: number): readonly string[] =>
  Array.from({ length: last - first + 1 }, (_, at) => String.fromCodePoint(first + at));
const latin = [...between(0x20, 0x7e), ...between(0xa0, 0x17f), ...Array.from('→−–—…×•')];
const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

test('characters are those of a segmenter, whatever stands beside what', () => {
  // A text for each, which has it before and after every other: a segmenter takes long over a long text.
  const pairs = latin.map((one) => latin.map((other) => one + other).join(''));
  const others = ['e\u0301', 'y\u030a\u030a', '👩‍🔧', '🇩🇪', '日本', '\r\n', 'क्षि', '\u0000'];
  for (const text of [...pairs, ...others, ...others.map((other) => `a${other}b`)])
    expect(charactersOf(text)).toEqual(Array.from(segmenter.segment(text), ({ segment }) => segment));
});

test('an accent makes no letter wider, a double-width character is wider than a letter, and strong is wider than plain', () => {
  const width = (text: string, strong = false): number => textWidth(text, { size: 10, strong });
  expect(width('é')).toBe(width('e'));
  expect(width('e\u0301')).toBe(width('e'));
  expect(width('日')).toBeGreaterThan(width('A'));
  expect(width('Wide', true)).toBeGreaterThan(width('Wide'));
});
