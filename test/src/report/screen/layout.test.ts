import { describe, expect, it } from 'vitest';

import { beside, block } from '../../../../src/report/screen/layout.js';

describe('laying out text', () => {
  it('wraps under its own text', () => {
    expect(block([{ text: '* one two three four', hang: 2 }], 12, 1)).toEqual([' * one two', '   three', '   four']);
  });

  it('keeps a number with its unit or its sign', () => {
    expect(block([{ text: 'it needs 12 V here' }], 11)).toEqual(['it needs', '12 V here']);
    expect(block([{ text: 'guessed × 1.5 of it' }], 11)).toEqual(['guessed', '× 1.5 of it']);
  });

  it('puts cells side by side, as tall as the tallest, without spaces at the ends', () => {
    const cells = [
      { pieces: [{ text: 'left side' }], width: 5 },
      { pieces: [{ text: '日本' }, { text: '' }, { text: 'end' }], width: 4 },
      { pieces: [{ text: 'x' }], width: 2 },
    ];
    expect(beside(cells, 1, 2)).toEqual([' left   日本  x', ' side', '        end']);
  });

  it('splits what is longer than a line', () => {
    expect(block([{ text: 'abcdefgh' }], 3)).toEqual(['abc', 'def', 'gh']);
  });

  it('paints after it has measured', () => {
    const paint = (text: string): string => `<${text}>`;
    expect(
      beside(
        [
          { pieces: [{ text: 'a', paint }], width: 3 },
          { pieces: [{ text: 'b' }], width: 1 },
        ],
        0,
        1,
      ),
    ).toEqual(['<a>   b']);
  });
});
