import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { choosingAims, compareScores } from '../../../../src/domain/aim.js';
import type { Score } from '../../../../src/domain/plan.js';
import { minorUnits } from '../../../../src/domain/quantities.js';
import { preferenceOf } from '../../../../src/planning/compare/preference.js';
import { euros, policyOf, scoreWith } from '../../../support/builders.js';
import { share, trying } from '../../../support/runs.js';

const count = fc.integer({ min: 0, max: 1 });
const scores: fc.Arbitrary<Score> = fc
  .record({
    money: fc.integer({ min: 0, max: 5 }).map((value) => euros(value * 5)),
    exposed: count,
    bricks: count,
    parts: count,
    offPreferred: count,
  })
  .map(scoreWith);

const scoreOf = (money: number, more: Partial<Score> = {}): Score =>
  scoreWith({ money: euros(money), bricks: 1, ...more });

describe('what it takes to prefer an option', () => {
  const policy = policyOf({ noisePrice: euros(20) });

  it.each(choosingAims)('is the highest price at which nothing is better, under the aim of %s', (aim) => {
    const seen = { 'as good': 0, price: 0, never: 0 };
    fc.assert(
      fc.property(scores, scores, (one, other) => {
        const [best, option] = compareScores(one, other, aim, policy) <= 0 ? [one, other] : [other, one];
        const preference = preferenceOf(option, best, aim, policy);
        const at = (money: number): number => compareScores({ ...option, money: minorUnits(money) }, best, aim, policy);
        if (preference.kind === 'best' || preference.kind === 'unknown') throw new Error('it is neither');
        seen[preference.kind] += 1;
        if (preference.kind === 'as good') expect(at(option.money)).toBe(0);
        if (preference.kind === 'never') expect(at(0)).toBeGreaterThan(0);
        if (preference.kind !== 'price') return;
        expect(preference.at + preference.below).toBe(option.money);
        expect(at(preference.at)).toBeLessThanOrEqual(0);
        expect(at(preference.at + 1)).toBeGreaterThan(0);
      }),
      trying(3000),
    );
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(share(10));
  });

  it('counts noise as money under the aim of cost', () => {
    const quiet = scoreOf(119);
    const noisy = scoreOf(109, { exposed: 1 });
    expect(preferenceOf(noisy, quiet, 'cost', policy)).toEqual({ kind: 'price', at: euros(99), below: euros(10) });
  });

  it('takes one minor unit more where later tiers speak against the option', () => {
    const one = scoreOf(119);
    const two = scoreOf(124, { bricks: 2 });
    expect(preferenceOf(two, one, 'cost', policy)).toEqual({ kind: 'price', at: 11899, below: 501 });
  });

  it('is no price where an earlier tier or the noise alone stands in the way', () => {
    const quiet = scoreOf(15);
    const noisy = scoreOf(5, { exposed: 1 });
    expect(preferenceOf(noisy, quiet, 'quiet', policy)).toEqual({ kind: 'never', tier: 'exposed', behind: 1 });
    expect(preferenceOf(noisy, quiet, 'cost', policy)).toEqual({ kind: 'never', tier: 'cost', behind: euros(10) });
  });
});
