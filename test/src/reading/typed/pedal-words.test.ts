import { expect, it, test } from 'vitest';

import { wordsAt } from '../../../../src/reading/typed/pedal-words.js';

test.each<[string, string, object]>([
  ['Centre-Negative, digital', 'Centre-Negative', { polarity: 'centre-negative' }],
  ['center negative', 'center negative', { polarity: 'centre-negative' }],
  ['negative ground', 'negative ground', { ground: 'negative' }],
  ['negative', 'negative', { polarity: 'centre-negative' }],
  ['high-gain', 'high-gain', { highGain: true }],
  ['c+;', 'c+', { polarity: 'centre-positive' }],
  ['max. 40', 'max.', {}],
  ['⎓300mA', '⎓', { power: 'DC' }],
])('%s', (text, words, said) => {
  expect(wordsAt(text, 0)).toEqual({ text: words, said });
});

it.each(['negatively', 'dcx', 'purple', '-', ''])('%j says nothing', (text) => {
  expect(wordsAt(text, 0)).toBeNull();
});
