import { expect, test } from 'vitest';

import * as core from '../../src/core.js';
import * as library from '../../src/index.js';

test('the core offers all of the library but files and threads', () => {
  const missing = Object.keys(library).filter((name) => !(name in core));
  expect(missing.sort()).toEqual(['readInputs', 'startEngine']);
  expect(Object.keys(core).filter((name) => !(name in library))).toEqual([]);
});
