import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { audit } from '../../src/audit/audit.js';
import { choosingAims, type ChoosingAim } from '../../src/domain/aim.js';
import { tinyCase, type Case } from './arbitraries.js';
import { sourceCase } from './arbitrary-fed.js';
import { bruteForce } from './brute-force.js';
import { catalogueOf } from './builders.js';
import { tierFigures } from './tier-figures.js';
import { share, trying } from './runs.js';

/** Half of them with every source. */
const cases = fc.oneof(tinyCase, sourceCase(3, 3));
const aims = fc.constantFrom(...choosingAims);

function figuresOf({ board, catalogue }: Case, aim: ChoosingAim, partial: boolean): readonly number[] | null {
  const answer = bruteForce(board, catalogue, { aim, partial });
  return answer.kind === 'plan' ? tierFigures(answer.score, aim, board.policy) : null;
}

describe('brute force', () => {
  it('finds an equally good plan in whatever order things are listed', () => {
    const property = fc.property(cases, aims, (given, aim) => {
      const { supplies, parts } = given.catalogue;
      const turned = {
        board: { ...given.board, pedals: given.board.pedals.toReversed() },
        catalogue: catalogueOf(supplies.toReversed(), parts.toReversed()),
      };
      expect(figuresOf(turned, aim, false)).toEqual(figuresOf(given, aim, false));
    });
    fc.assert(property, trying(300));
  });

  it('leaves no pedal out when all of them can be powered, and always some when not', () => {
    let whole = 0;
    const property = fc.property(cases, aims, (given, aim) => {
      // Unpowered pedals come first in every aim.
      const full = figuresOf(given, aim, false);
      const partial = figuresOf(given, aim, true);
      if (full === null) expect(partial?.[0]).toBeGreaterThan(0);
      else expect(partial).toEqual(full);
      if (full !== null) whole += 1;
    });
    fc.assert(property, trying(300));
    expect(whole).toBeGreaterThan(share(100));
  });

  it('finds plans that the audit passes with the same score', () => {
    let powered = 0;
    const property = fc.property(cases, aims, ({ board, catalogue }, aim) => {
      const answer = bruteForce(board, catalogue, { aim, partial: true });
      if (answer.kind === 'impossible') throw new Error('a plan that may leave out every pedal always exists');
      const report = audit(board, catalogue, answer.feeds, { partial: true });
      expect([report.violations, report.malformed]).toEqual([[], []]);
      expect(report.wiring.score).toEqual(answer.score);
      powered += answer.feeds.length;
    });
    fc.assert(property, trying(300));
    expect(powered).toBeGreaterThan(share(300));
  });
});
