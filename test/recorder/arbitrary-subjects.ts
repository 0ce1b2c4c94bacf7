import fc from 'fast-check';

import { caseOf, tinyCase, type Case } from '../support/arbitraries.js';
import { weighted } from '../support/arbitrary-choices.js';
import { noisyCase, shoppingCase } from '../support/arbitrary-shops.js';
import { wiredCase } from '../support/arbitrary-wirings.js';

/** What becomes of a board once there is a plan for as many of its pedals as can be powered. */
export type Plugging =
  /** It stays as it is. */
  | 'none'
  /** Pedals that cannot be powered go. */
  | 'powered only'
  /** And the others are plugged as planned. */
  | 'as planned'
  /** And then two pedals change places. */
  | 'two swapped'
  /** Or one is pulled. */
  | 'one pulled';

export type Subject = { readonly case: Case; readonly plugging: Plugging };

const asDrawn = (cases: fc.Arbitrary<Case>): fc.Arbitrary<Subject> =>
  cases.map((drawn) => ({ case: drawn, plugging: 'none' }));

/** Larger boards drawn at random can mostly not be powered, and brute force is too slow to plug them. */
const larger: fc.Arbitrary<Subject> = fc.record({
  case: caseOf({ min: 4, max: 7 }, { min: 1, max: 3 }, 4),
  plugging: weighted<Plugging>(
    [2, 'none'],
    [2, 'powered only'],
    [2, 'as planned'],
    [2, 'two swapped'],
    [2, 'one pulled'],
  ),
});

/** Boards of one to seven pedals with what they are powered from: some plugged, some that nothing can power. */
export const subjects: fc.Arbitrary<Subject> = fc.oneof(
  { weight: 4, arbitrary: asDrawn(wiredCase) },
  { weight: 3, arbitrary: larger },
  { weight: 2, arbitrary: asDrawn(tinyCase) },
  { weight: 1, arbitrary: asDrawn(shoppingCase) },
  { weight: 1, arbitrary: asDrawn(noisyCase) },
);
