import { expect, test } from 'vitest';

import { readClaim } from '../../../solver/engines/read-claim.js';

test.each([
  { kind: 'optimal', point: [1, 0] },
  { kind: 'infeasible' },
  { kind: 'stopped', point: null },
  { kind: 'stopped', point: [2] },
  { kind: 'failed', reason: 'no memory' },
])('the claim %o is read as it is', (claim) => {
  expect(readClaim(claim)).toEqual(claim);
});

test.each([
  undefined,
  null,
  'optimal',
  {},
  { kind: 'best' },
  { kind: 'optimal' },
  { kind: 'optimal', point: null },
  { kind: 'optimal', point: ['1'] },
  { kind: 'stopped' },
])('%o is no claim', (value) => {
  expect(readClaim(value)).toMatchObject({ kind: 'failed' });
});
