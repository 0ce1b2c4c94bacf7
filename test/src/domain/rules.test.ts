import { expect, it } from 'vitest';

import { rules, rulesBySeverity, type Rule } from '../../../src/domain/rules.js';

it('every rule has a rank, and one only', () => {
  expect([...rulesBySeverity].sort()).toEqual([...rules].sort());
});

it.each([
  ['mains, which is a danger to whoever switches it on', 'mains', 'power'],
  ['what destroys a pedal at once', 'voltage', 'ground'],
  ['the wrong polarity', 'polarity', 'ground'],
  ['a short circuit through the audio leads', 'ground', 'current'],
  ['a supply that is overloaded as a whole', 'total', 'current'],
  ['an output that is overloaded', 'current', 'startup'],
  ['what does not start', 'startup', 'plug'],
  ['what cannot be plugged', 'plug', 'stock'],
  ['what is not there', 'stock', 'limit'],
] satisfies readonly (readonly [string, Rule, Rule])[])('%s comes before what is less bad', (_what, worse, lesser) => {
  expect(rulesBySeverity.indexOf(worse)).toBeLessThan(rulesBySeverity.indexOf(lesser));
});
