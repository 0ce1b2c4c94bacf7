import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { choosingAims, choosingTiersOf, isMoney, tierValue } from '../../../src/domain/aim.js';
import type { ProofTier } from '../../../src/domain/proof.js';
import { supplyId } from '../../../src/domain/quantities.js';
import { groundOf } from '../../../src/proof/claim.js';
import { greatestBelow } from '../../../src/proof/greatest-below.js';
import { numberOf } from '../../../src/proof/measure.js';
import { tinyCase } from '../../support/arbitraries.js';
import { bruteForce } from '../../support/brute-force.js';
import { bankOf, catalogueOf, settingOf, supplyOf } from '../../support/builders.js';
import { share, trying } from '../../support/runs.js';
import { priceTimesNumber } from './hand-made.js';
import { test, verdictOn, withStep } from './tampering.js';

describe('the greatest number below a value', () => {
  it('passes over no plan, whatever earlier steps have settled of it', () => {
    const seen = { numbers: 0, passedOver: 0, settled: 0 };
    const aims = fc.constantFrom(...choosingAims);
    fc.assert(
      fc.property(tinyCase, aims, aims, fc.nat(2), fc.nat(30), ({ board, catalogue }, best, aim, settled, above) => {
        const plan = bruteForce(board, catalogue, { aim: best, partial: true });
        if (plan.kind === 'impossible') return;
        // Weights that rank whatever the tiers come to.
        const all = choosingTiersOf(aim, board.policy).map((tier, place, { length }): ProofTier => ({
          ...{ tier, weight: 1000 ** (length - 1 - place) },
          unit: isMoney(tier) ? 50 : 1,
        }));
        const known = new Map(
          all.slice(0, settled).map(({ tier }) => [tier, tierValue(tier, plan.score, board.policy)]),
        );
        const tiers = all.slice(settled);
        const number = numberOf(tiers, plan.score, board.policy);
        const below = (value: bigint): bigint =>
          greatestBelow(value, tiers, known, groundOf(board, catalogue, true, null));
        expect(below(number + 1n)).toBe(number);
        expect(below(number + 1n + BigInt(above))).toBeGreaterThanOrEqual(number);
        expect(below(number)).toBeLessThan(number);
        seen.numbers += 1;
        if (below(number) < number - 1n) seen.passedOver += 1;
        if (settled > 0) seen.settled += 1;
      }),
      trying(400),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(50)]).toEqual([what, true]);
  });
});

it('is any number where it would take too long to tell', () => {
  const tiers: readonly ProofTier[] = [
    { tier: 'money', unit: 1, weight: 100 },
    { tier: 'bricks', unit: 1, weight: 1 },
  ];
  const below = (value: bigint, euros: number): bigint => {
    const shop = catalogueOf([supplyOf('twin', euros, [bankOf(2, [settingOf(9, 100)])])]);
    return greatestBelow(value, tiers, new Map(), groundOf(priceTimesNumber.board, shop, false, null));
  };
  // What lies between the prices of one supply and of two is no price at all.
  expect(below(199_900n, 10)).toBe(100_001n);
  expect(below(19_999_999_900n, 1_000_000)).toBe(19_999_999_899n);
});

describe('a proof of which the tags show less than it claims', () => {
  it('holds where no plan can have what lies between', () => {
    expect(verdictOn(priceTimesNumber)).toMatchObject({ kind: 'holds', cases: 1 });
  });

  const open = 'a case is left open';
  const tagged = (tag: number) =>
    withStep(priceTimesNumber, 0, {
      tree: { tags: { pedals: Object.fromEntries(['a', 'b', 'c'].map((id) => [id, tag])) } },
    });
  test('does not hold where they show no more than a plan could have', tagged(3), open);
  const board = { ...priceTimesNumber.board, owned: { supplies: new Map([[supplyId('twin'), 2]]), parts: new Map() } };
  test('does not hold where some supplies cost nothing', { ...priceTimesNumber, board }, open);
});
