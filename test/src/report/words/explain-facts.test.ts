import { expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { factText } from '../../../../src/report/words/explain-facts.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { boardOf, pedalOf, policyOf } from '../../../support/builders.js';

it.each([
  [0, 'There is no mains socket'],
  [1, 'There is 1 mains socket'],
  [2, 'There are 2 mains sockets'],
])('%s mains sockets are counted in words', (sockets, words) => {
  const pedals = [pedalOf('echo', 10)];
  const speech = speechOf(kitOf(boardOf(pedals, { policy: policyOf({ sockets }) }), null));
  expect(factText(speech, { kind: 'sockets' }, pedals)).toBe(`${words}, and every supply on the mains takes one.`);
});
