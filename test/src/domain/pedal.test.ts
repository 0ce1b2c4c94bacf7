import { expect, it } from 'vitest';

import { highestMillivolts, lowestMillivolts, type AcceptedVolts } from '../../../src/domain/pedal.js';
import { listed, volts } from '../../support/builders.js';

const range: AcceptedVolts = { kind: 'range', from: volts(9), to: volts(18) };

it('the least and the most volts of a range are its ends', () => {
  expect(lowestMillivolts(range)).toBe(9000);
  expect(highestMillivolts(range)).toBe(18_000);
});

it('the least and the most volts of a list may stand anywhere in it', () => {
  expect(lowestMillivolts(listed(12, 9, 18))).toBe(9000);
  expect(highestMillivolts(listed(12, 18, 9))).toBe(18_000);
});
