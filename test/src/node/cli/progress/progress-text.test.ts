import { describe, expect, test } from 'vitest';

import { progressText } from '../../../../../src/node/cli/progress/progress-text.js';
import { euros, policyOf } from '../../../../support/builders.js';

const euro = { currency: { code: 'EUR', decimals: 2 }, policy: policyOf() };
const yen = { currency: { code: 'JPY', decimals: 0 }, policy: policyOf() };
const fewer = { ...euro, policy: policyOf({ supplyPrice: euros(8) }) };

describe('how far a search has come', () => {
  test.each([
    [{ tier: null, value: null, bound: null }, euro, 'Searching, 12 s. Ctrl-C ends the search early.'],
    [
      { tier: 'cost', value: 4700, bound: 3650 },
      euro,
      'Searching, 12 s. Cost, noise included: 47.00 EUR so far; no plan can be below 36.50 EUR. Ctrl-C ends the search early.',
    ],
    [
      { tier: 'cost', value: null, bound: 3650 },
      yen,
      'Searching, 12 s. Cost, noise included: nothing found so far; no plan can be below 3650 JPY. Ctrl-C ends the search early.',
    ],
    [
      { tier: 'cost', value: 4700, bound: null },
      fewer,
      'Searching, 12 s. Cost, noise and supplies in use included: 47.00 EUR so far. Ctrl-C ends the search early.',
    ],
    [
      { tier: 'outlay', value: 4700, bound: null },
      fewer,
      'Searching, 12 s. Cost, supplies in use included: 47.00 EUR so far. Ctrl-C ends the search early.',
    ],
    [
      { tier: 'money', value: 5, bound: null },
      euro,
      'Searching, 12 s. Cost: 0.05 EUR so far. Ctrl-C ends the search early.',
    ],
    [
      { tier: 'unpowered', value: 2, bound: 0 },
      euro,
      'Searching, 12 s. Pedals left out: 2 so far. Ctrl-C ends the search early.',
    ],
    [
      { tier: 'bricks', value: 4, bound: 3 },
      euro,
      'Searching, 12 s. Supplies in use: 4 so far; no plan can be below 3. Ctrl-C ends the search early.',
    ],
  ] as const)('%j', (progress, board, text) => {
    expect(progressText(progress, 12, board, 200)).toBe(text);
  });

  test('only whole sentences that fit are shown', () => {
    const shown = (width: number): string => progressText({ tier: 'bricks', value: 4, bound: null }, 7, euro, width);
    expect(shown(71)).toBe('Searching, 7 s. Supplies in use: 4 so far. Ctrl-C ends the search early.'.slice(0, 42));
    expect(shown(72)).toBe('Searching, 7 s. Supplies in use: 4 so far. Ctrl-C ends the search early.');
    expect(shown(42)).toBe('Searching, 7 s. Supplies in use: 4 so far.');
    expect(shown(41)).toBe('Searching, 7 s.');
    expect(shown(9)).toBe('Searching');
    expect(shown(0)).toBe('');
  });
});
