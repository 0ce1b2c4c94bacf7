import { describe, expect, it } from 'vitest';

import { darkColours, lightColours } from '../../../../src/report/page/colours.js';

/** Relative luminance and contrast as the Web Content Accessibility Guidelines define them. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((first, second) => second - first);
  return (light + 0.05) / (dark + 0.05);
}

it('measures contrast as it is defined', () => {
  expect(contrast('#ffffff', '#000000')).toBeCloseTo(21);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

describe.each([
  ['light', lightColours],
  ['dark', darkColours],
])('the %s colours', (_, { ink, soft, care, paper, panel, line, full }) => {
  it.each([
    ['ink', ink],
    ['soft', soft],
    ['care', care],
  ])('%s is read on paper and on a panel', (__, text) => {
    expect(contrast(text, paper)).toBeGreaterThanOrEqual(7);
    expect(contrast(text, panel)).toBeGreaterThanOrEqual(7);
  });

  it('tell the full part of a bar from the empty one', () => {
    expect(contrast(full, line)).toBeGreaterThanOrEqual(3);
  });
});
