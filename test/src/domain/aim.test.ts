import { describe, expect, it } from 'vitest';

import {
  choosingAims,
  choosingTiersOf,
  compareScores,
  isChoosingTier,
  isMoney,
  tiersOf,
  tierValue,
  type Aim,
  type Tier,
} from '../../../src/domain/aim.js';
import type { Score } from '../../../src/domain/plan.js';
import { euros, policyOf, scoreWith } from '../../support/builders.js';

const policy = policyOf({ noisePrice: euros(20) });

/** What the aims rank, the most important first. */
const orders: readonly (readonly [Aim, readonly Tier[]])[] = [
  ['cost', ['unpowered', 'cost', 'bricks', 'parts', 'offPreferred']],
  ['bricks', ['unpowered', 'bricks', 'cost', 'parts', 'offPreferred']],
  ['quiet', ['unpowered', 'exposed', 'money', 'bricks', 'parts', 'offPreferred']],
  ['moves', ['unpowered', 'newCost', 'moved', 'exposed', 'parts']],
];

describe('the order of an aim', () => {
  it.each(orders)('%s', (aim, tiers) => {
    expect(tiersOf(aim)).toEqual(tiers);
  });

  it('is the same for those who choose, who know nothing of today', () => {
    for (const aim of choosingAims) {
      expect(choosingTiersOf(aim)).toEqual(tiersOf(aim));
      expect(tiersOf(aim).every(isChoosingTier)).toBe(true);
    }
    expect(tiersOf('moves').filter((tier) => !isChoosingTier(tier))).toEqual(['newCost', 'moved']);
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

  it('takes every exposed pedal for a new one where it is not known who is exposed today, and nobody for moved', () => {
    const unknown = scoreWith({ money: euros(119.5), exposed: 3 });
    expect(tierValue('newCost', unknown, policy)).toBe(11_950 + 3 * 2000);
    expect(tierValue('moved', unknown, policy)).toBe(0);
  });

  it('takes nobody for newly exposed where all who are exposed are so today', () => {
    expect(tierValue('newCost', scoreWith({ exposed: 3, newlyExposed: 0 }), policy)).toBe(0);
  });

  it('is money where it has a currency', () => {
    const tiers = [...new Set(orders.flatMap(([, order]) => order))];
    expect(tiers.filter(isMoney).sort()).toEqual(['cost', 'money', 'newCost']);
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

  it('under moves is not the worse one for a pedal that is exposed today, too, until all else ties', () => {
    const today = { exposed: 1, newlyExposed: 0 };
    expect(compareScores(scoreWith({ ...today, moved: 1 }), scoreWith({ moved: 2 }), 'moves', policy)).toBeLessThan(0);
    expect(compareScores(scoreWith({ ...today, moved: 1 }), scoreWith({ moved: 1 }), 'moves', policy)).toBeGreaterThan(
      0,
    );
  });
});
