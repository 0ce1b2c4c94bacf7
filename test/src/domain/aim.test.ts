import { describe, expect, it } from 'vitest';

import {
  choosingAims,
  choosingTiersOf,
  compareScores,
  isMoney,
  rankedTiersOf,
  tiersOf,
  tierValue,
  type Aim,
  type Tier,
} from '../../../src/domain/aim.js';
import type { Score } from '../../../src/domain/plan.js';
import { euros, policyOf, scoreWith } from '../../support/builders.js';

const policy = policyOf({ noisePrice: euros(20) });
/** Where a supply in use counts for money, too. */
const counting = policyOf({ noisePrice: euros(20), supplyPrice: euros(8) });

/** What the aims rank, the most important first. */
const orders: readonly (readonly [Aim, readonly Tier[]])[] = [
  ['cost', ['unpowered', 'cost', 'bricks', 'parts', 'offPreferred']],
  ['bricks', ['unpowered', 'bricks', 'cost', 'parts', 'offPreferred']],
  ['quiet', ['unpowered', 'exposed', 'money', 'bricks', 'parts', 'offPreferred']],
  ['moves', ['unpowered', 'newCost', 'moved', 'exposed', 'parts']],
];

/** The same where supplies in use count for money. */
const countingOrders = orders.map(
  ([aim, tiers]) => [aim, tiers.map((tier): Tier => (tier === 'money' ? 'outlay' : tier))] as const,
);

describe('the order of an aim', () => {
  it.each(orders)('%s', (aim, tiers) => {
    expect(tiersOf(aim, policy)).toEqual(tiers);
  });

  it.each(countingOrders)('%s, with a price of supplies in use', (aim, tiers) => {
    expect(tiersOf(aim, counting)).toEqual(tiers);
  });

  it('is the same for those who choose, who know nothing of today', () => {
    for (const aim of choosingAims) {
      for (const each of [policy, counting]) {
        expect(choosingTiersOf(aim, each)).toEqual(tiersOf(aim, each));
        expect(rankedTiersOf(aim, each)).toEqual(tiersOf(aim, each).slice(1));
      }
    }
  });
});

describe('what an aim counts', () => {
  const score = scoreWith({
    unpowered: 1,
    money: euros(119.5),
    exposed: 3,
    newlyExposed: 1,
    bricks: 4,
    parts: 5,
    offPreferred: 6,
    moved: 7,
  });

  it.each([
    ['unpowered', 1],
    ['cost', 11_950 + 3 * 2000],
    ['newCost', 11_950 + 2000],
    ['money', 11_950],
    ['exposed', 3],
    ['bricks', 4],
    ['parts', 5],
    ['offPreferred', 6],
    ['moved', 7],
  ] as const)('%s', (tier, value) => {
    expect(tierValue(tier, score, policy)).toBe(value);
  });

  it.each([
    ['cost', 11_950 + 3 * 2000 + 4 * 800],
    ['newCost', 11_950 + 2000 + 4 * 800],
    ['outlay', 11_950 + 4 * 800],
    ['money', 11_950],
    ['bricks', 4],
  ] as const)('%s, with a price of supplies in use', (tier, value) => {
    expect(tierValue(tier, score, counting)).toBe(value);
  });

  it('takes every exposed pedal for a new one where it is not known who is exposed today, and nobody for moved', () => {
    const unknown = scoreWith({ money: euros(119.5), exposed: 3 });
    expect(tierValue('newCost', unknown, policy)).toBe(11_950 + 3 * 2000);
    expect(tierValue('moved', unknown, policy)).toBe(0);
  });

  it('takes nobody for newly exposed where all who are exposed are so today', () => {
    expect(tierValue('newCost', scoreWith({ exposed: 3, newlyExposed: 0 }), policy)).toBe(0);
  });

  it('is money where it has a currency', () => {
    const tiers = [...new Set([...orders, ...countingOrders].flatMap(([, order]) => order))];
    expect(tiers.filter(isMoney).sort()).toEqual(['cost', 'money', 'newCost', 'outlay']);
  });
});

describe('the better score', () => {
  /** A score that is worse by one in each of these. */
  const worseIn = (tiers: readonly Tier[]): Score => {
    const by = (tier: Tier) => (tiers.includes(tier) ? 1 : 0);
    return scoreWith({
      unpowered: by('unpowered'),
      money: euros((by('cost') + by('money') + by('newCost')) / 100),
      exposed: by('exposed'),
      newlyExposed: 0,
      bricks: by('bricks'),
      parts: by('parts'),
      offPreferred: by('offPreferred'),
      moved: by('moved'),
    });
  };

  it.each(orders)(
    'under %s is the one that is better in an earlier entry, whatever the later ones say',
    (aim, tiers) => {
      for (const [index, tier] of tiers.entries()) {
        const better = worseIn(tiers.slice(index + 1));
        const worse = worseIn([tier]);
        expect(compareScores(better, worse, aim, policy)).toBeLessThan(0);
        expect(compareScores(worse, better, aim, policy)).toBeGreaterThan(0);
      }
    },
  );

  it.each(orders)('under %s is neither where they tie in every entry', (aim, tiers) => {
    const score = worseIn(tiers);
    expect(compareScores(score, { ...score }, aim, policy)).toBe(0);
  });

  it('is the quieter one where silence costs less than its price', () => {
    const quiet = scoreWith({ money: euros(19.99) });
    const noisy = scoreWith({ exposed: 1 });
    expect(compareScores(quiet, noisy, 'cost', policy)).toBeLessThan(0);
    expect(compareScores(scoreWith({ money: euros(20) }), noisy, 'cost', policy)).toBe(0);
    expect(compareScores(scoreWith({ money: euros(20.01) }), noisy, 'cost', policy)).toBeGreaterThan(0);
    expect(compareScores(scoreWith({ money: euros(500) }), noisy, 'quiet', policy)).toBeLessThan(0);
  });

  it('is the one with fewer supplies where that costs less than their price', () => {
    const few = scoreWith({ money: euros(7.99), bricks: 1 });
    const many = scoreWith({ bricks: 2 });
    for (const aim of ['cost', 'quiet', 'moves'] as const) {
      const compared = (money: number): number =>
        compareScores(scoreWith({ money: euros(money), bricks: 1 }), many, aim, counting);
      expect(compareScores(few, many, aim, policy)).toBeGreaterThan(0);
      expect(compared(7.99)).toBeLessThan(0);
      expect(compared(8.01)).toBeGreaterThan(0);
      // Cost and quiet rank supplies in use next; moves does not.
      expect(Math.sign(compared(8))).toBe(aim === 'moves' ? 0 : -1);
    }
  });

  it('under moves is not the worse one for a pedal that is exposed today, too, until all else ties', () => {
    const today = { exposed: 1, newlyExposed: 0 };
    expect(compareScores(scoreWith({ ...today, moved: 1 }), scoreWith({ moved: 2 }), 'moves', policy)).toBeLessThan(0);
    expect(compareScores(scoreWith({ ...today, moved: 1 }), scoreWith({ moved: 1 }), 'moves', policy)).toBeGreaterThan(
      0,
    );
  });
});
