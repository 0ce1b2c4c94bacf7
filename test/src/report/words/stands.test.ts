import { expect, it } from 'vitest';

import { onBatteries, type Sources } from '../mixed-stage.js';

/** All that is said of cutting the power off, in the steps and the cautions. */
const said = (sources: Sources): string => {
  const { steps, cautions } = onBatteries(sources);
  return [...steps.map(({ text }) => text), ...cautions.map(({ text }) => text)].join('\n');
};

it.each([
  { sources: {}, mains: false, banks: false },
  { sources: { bank: true }, mains: false, banks: true },
  { sources: { mains: true }, mains: true, banks: false },
  { sources: { adapter: true }, mains: true, banks: false },
  { sources: { mains: true, bank: true }, mains: true, banks: true },
])('speaks of the mains and of power banks where the board stands on them: $sources', ({ sources, mains, banks }) => {
  expect(/from the mains|into the mains/.test(said(sources))).toBe(mains);
  expect(/power banks? (off|on)|power banks on/.test(said(sources))).toBe(banks);
});
