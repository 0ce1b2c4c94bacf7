import { expect, test } from 'vitest';

import { kindByName } from '../../../../src/reading/typed/kind-by-name.js';

test.each<[string, boolean | undefined, string | null]>([
  ['gorse drive', undefined, 'drive'],
  ['Gorse Overdrive', undefined, 'drive'],
  ['Heath fuzz', undefined, 'fuzz'],
  ['Ruff tuner', undefined, 'tuner'],
  ['Plover reverb', undefined, 'digital-delay'],
  ['Ouzel delay', undefined, 'digital-delay'],
  ['Ouzel delay', false, 'analogue-delay'],
  ['Analog delay', undefined, 'analogue-delay'],
  // Chorus may be either: nobody knows before it is said.
  ['Linnet chorus', undefined, null],
  ['Linnet chorus', true, 'digital-modulation'],
  ['Linnet chorus', false, 'analogue-modulation'],
  ['Linnet', undefined, null],
  // A word within another one tells nothing.
  ['Driveway', undefined, null],
  ['Drive delay', undefined, 'digital-delay'],
])('%s, said to be digital: %s', (name, digital, key) => {
  expect(kindByName(name, digital)?.key ?? null).toBe(key);
});
