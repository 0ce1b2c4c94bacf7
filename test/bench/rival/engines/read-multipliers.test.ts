import { expect, test } from 'vitest';

import { readMultipliers } from '../../../../bench/rival/engines/read-multipliers.js';

test('multipliers are a list of numbers', () => {
  expect(readMultipliers([1, Number.NaN])).toEqual([1, Number.NaN]);
  expect(readMultipliers(null)).toBeNull();
  expect(readMultipliers(['1'])).toBeNull();
});
