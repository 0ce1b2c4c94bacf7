/** Boards small enough that a proof for them can be worked out by hand, with that proof. */
import type { Board, Catalogue } from '../../../src/domain/board.js';
import type { Score } from '../../../src/domain/plan.js';
import {
  proofFormat,
  type Proof,
  type ProofBranch,
  type ProofStep,
  type ProofTags,
  type ProofTier,
} from '../../../src/domain/proof.js';
import { partId, supplyId } from '../../../src/domain/quantities.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  partOf,
  pedalOf,
  policyOf,
  scoreWith,
  settingOf,
  supplyOf,
} from '../../support/builders.js';

export type HandMade = {
  readonly board: Board;
  readonly catalogue: Catalogue;
  readonly proof: Proof;
  readonly score: Score;
};

const nine = settingOf(9, 100);
const noScore = scoreWith();
const noNoise = policyOf({ noisePrice: euros(0) });

const proofOf = (steps: readonly ProofStep[], more: Partial<Proof> = {}): Proof => ({
  format: proofFormat,
  board: 'Test board',
  aim: 'cost',
  partial: false,
  steps,
  ...more,
});

const cost = (unit: number, weight: number): ProofTier => ({ tier: 'cost', unit, weight });
const counts = (bricks: number, parts: number, offPreferred: number): readonly ProofTier[] => [
  { tier: 'bricks', unit: 1, weight: bricks },
  { tier: 'parts', unit: 1, weight: parts },
  { tier: 'offPreferred', unit: 1, weight: offPreferred },
];

/**
 * Two pedals, adapters of one output for 10 euros, a chain lead for 5. One adapter and the lead come to 15 euros, two
 * adapters to 20. In fives an adapter costs 2 and the lead 1, so that each pedal may be tagged 1.5: both on a chain are
 * worth 3, less the lead 2. In one step money weighs 6, bricks 2, parts 1: an adapter is 14, the lead 7, a pedal 10.5. The
 * scale of 2 makes all that whole.
 */
const pair = {
  board: boardOf([pedalOf('a', 10), pedalOf('b', 20)], { policy: noNoise }),
  catalogue: catalogueOf(
    [supplyOf('single', 10, [bankOf(1, [nine])]), supplyOf('twin', 20, [bankOf(2, [nine])])],
    [partOf('fan', 5, { kind: 'chain', tails: 2 })],
  ),
  score: { ...noScore, money: euros(15), bricks: 1, parts: 1 },
};

export const pairInOneStep: HandMade = {
  ...pair,
  proof: proofOf([
    { tiers: [cost(500, 6), ...counts(2, 1, 1)], value: 21, scale: 2, tree: { tags: { pedals: tags(21, 'a', 'b') } } },
  ]),
};

/** The same in two steps: two outputs for 20 euros would do without a lead, but the first step rules them out. */
export const pairInTwoSteps: HandMade = {
  ...pair,
  proof: proofOf([
    { tiers: [cost(500, 1)], value: 3, scale: 2, tree: { tags: { pedals: tags(3, 'a', 'b') } } },
    {
      tiers: counts(2, 1, 1),
      value: 3,
      scale: 2,
      tree: { tags: { pedals: tags(3, 'a', 'b'), earlier: [0], conditions: [] } },
    },
  ]),
};

/**
 * Four pedals, adapters for 10 euros and two outputs for 25: four adapters cost 40 euros, 8 in fives, so that a pedal may be
 * tagged 2. One supply of two outputs would save a brick, and costs 9 with two adapters. With 1 added for every five euros an
 * adapter is 3 and the other supply 6, so that a pedal may be tagged 3 and all of them 12: less the 8 that is 4 bricks.
 */
export const four: HandMade = {
  board: boardOf([pedalOf('a', 10), pedalOf('b', 20), pedalOf('c', 30), pedalOf('d', 40)], { policy: noNoise }),
  catalogue: catalogueOf([supplyOf('single', 10, [bankOf(1, [nine])]), supplyOf('twin', 25, [bankOf(2, [nine])])]),
  score: { ...noScore, money: euros(40), bricks: 4 },
  proof: proofOf([
    { tiers: [cost(500, 1)], value: 8, scale: 1, tree: { tags: { pedals: tags(2, 'a', 'b', 'c', 'd') } } },
    {
      tiers: counts(1, 1, 1),
      value: 4,
      scale: 1,
      tree: { tags: { pedals: tags(3, 'a', 'b', 'c', 'd'), earlier: [-1] } },
    },
  ]),
};

/**
 * Three pedals, supplies of two outputs for 10 euros: it takes two of them. In fives a supply costs 2, so that a pedal may be
 * tagged 1 and all of them 3, one less than 4. Either there is at most one supply: then a brick may be dearer by 1 and a
 * pedal by half of that, 4.5 less 1 in all. Or there are two at least: then a brick is cheaper by 1 and a pedal by half of
 * that, 1.5 and 2 in all. Both exceed 3.
 */
export const triple: HandMade = {
  board: boardOf([pedalOf('a', 10), pedalOf('b', 20), pedalOf('c', 30)], { policy: noNoise }),
  catalogue: catalogueOf([supplyOf('twin', 10, [bankOf(2, [nine])]), supplyOf('late', 15, [bankOf(1, [nine])])]),
  score: { ...noScore, money: euros(20), bricks: 2 },
  proof: proofOf([
    {
      tiers: [cost(500, 1)],
      value: 4,
      scale: 2,
      tree: {
        tags: { pedals: tags(2, 'a', 'b', 'c') },
        branch: {
          count: 'units',
          supply: supplyId('twin'),
          source: 'bought',
          most: 1,
          // The other supply, at 3, is cheap enough for what is left here: its own tags must be borne as well.
          fewer: { tags: { pedals: tags(3, 'a', 'b', 'c'), conditions: [-2] } },
          more: { tags: { pedals: tags(1, 'a', 'b', 'c'), conditions: [2] } },
        },
      },
    },
    // With the money proven, the bricks follow from what each unit costs at least.
    {
      tiers: counts(1, 1, 1),
      value: 2,
      scale: 2,
      tree: { tags: { pedals: tags(1, 'a', 'b', 'c'), earlier: [0] } },
    },
  ]),
};

/**
 * Three pedals, adapters for 30 euros and a chain lead for 5: two adapters and a lead, 65 euros. In fives an adapter costs 6,
 * and a chain of two 7, so that tags alone show no more than 10.5 of 13. With one lead at the most, it may be dearer by 5 and
 * each pedal tagged 6, 18 less 5 in all. Two leads at least take two chains, worth 7 a lead without any pedal.
 */
export const trio: HandMade = {
  board: boardOf([pedalOf('a', 10), pedalOf('b', 20), pedalOf('c', 30)], { policy: noNoise }),
  catalogue: catalogueOf(
    [supplyOf('single', 30, [bankOf(1, [nine])]), supplyOf('late', 35, [bankOf(1, [nine])])],
    [partOf('fan', 5, { kind: 'chain', tails: 2 })],
  ),
  score: { ...noScore, money: euros(65), bricks: 2, parts: 1 },
  proof: proofOf([
    {
      tiers: [cost(500, 1)],
      value: 13,
      scale: 1,
      tree: {
        branch: {
          ...{ count: 'leads', supply: null, source: null, of: [partId('fan')], most: 1 },
          fewer: { tags: { pedals: tags(6, 'a', 'b', 'c'), conditions: [-5] } },
          more: { tags: { pedals: {}, conditions: [7] } },
        },
      },
    },
    // A brick weighs 2 and a lead 1: both on a chain 3, so that a pedal is tagged 1.5.
    { tiers: counts(2, 1, 1), value: 5, scale: 2, tree: { tags: { pedals: tags(3, 'a', 'b', 'c'), earlier: [0] } } },
  ]),
};

/**
 * Three pedals, and nothing but supplies of two outputs for 10 euros: fewer than two are at most 10 euros, and two are 20.
 * With 4 for a supply and 1 for 10 euros that is 5 or 10 and nothing in between, so that 7.5, a pedal tagged 2.5, is enough.
 */
export const priceTimesNumber: HandMade = {
  board: triple.board,
  catalogue: catalogueOf([supplyOf('twin', 10, [bankOf(2, [nine])])]),
  score: triple.score,
  proof: proofOf(
    [
      {
        tiers: [
          { tier: 'bricks', unit: 1, weight: 4 },
          cost(1000, 1),
          { tier: 'parts', unit: 1, weight: 1 },
          { tier: 'offPreferred', unit: 1, weight: 1 },
        ],
        value: 10,
        scale: 2,
        tree: { tags: { pedals: tags(5, 'a', 'b', 'c') } },
      },
    ],
    { aim: 'bricks' },
  ),
};

/** The same with two such supplies: how many units there are of both together. */
export const tripleOfTwo: HandMade = {
  ...triple,
  catalogue: {
    ...triple.catalogue,
    supplies: [...triple.catalogue.supplies, supplyOf('pair', 10, [bankOf(2, [nine])])],
  },
  proof: {
    ...triple.proof,
    steps: triple.proof.steps.map((step) =>
      step.tree.branch === undefined ? step : { ...step, tree: { branch: ofBoth(step.tree.branch) } },
    ),
  },
};

function ofBoth(branch: ProofBranch): ProofBranch {
  return { ...branch, supply: null, source: null, among: [supplyId('twin'), supplyId('pair')] };
}

/** Three pedals and a single supply of two outputs: whoever gets them, one pedal has none. */
export const short: Omit<HandMade, 'score'> = {
  board: boardOf([pedalOf('a', 10), pedalOf('b', 20), pedalOf('c', 30)], { policy: noNoise }),
  catalogue: catalogueOf([supplyOf('twin', 10, [bankOf(2, [nine])], { stock: 1 })]),
  proof: proofOf(
    [
      {
        tiers: [{ tier: 'unpowered', unit: 1, weight: 1 }],
        value: 1,
        scale: 1,
        tree: { tags: { pedals: tags(1, 'a', 'b', 'c') } },
      },
    ],
    { impossible: true, partial: true },
  ),
};

/**
 * Three pedals, two supplies of two outputs, of which only one unit may be in use, or has a socket: a unit is charged 2 for
 * that, as much as its two pedals are worth.
 */
export const limitedTo = (limit: 'bricks' | 'sockets', most: number): Omit<HandMade, 'score'> => ({
  board: boardOf(short.board.pedals, { policy: policyOf({ noisePrice: euros(0), [limit]: most }) }),
  catalogue: catalogueOf(['twin', 'pair'].map((id) => supplyOf(id, 10, [bankOf(2, [nine])]))),
  proof: withTags(short.proof, { [limit]: -2 }),
});

/** A proof of one step and one case with more tags. */
export const withTags = (proof: Proof, more: Partial<ProofTags>): Proof => ({
  ...proof,
  steps: proof.steps.map((step) => ({ ...step, tree: { tags: { pedals: {}, ...step.tree.tags, ...more } } })),
});

/**
 * Two pedals, two free chain leads or one for money: `fan` is owned once, and `spare` alike can be bought for 5 euros. Four
 * pedals on two adapters need both. A lead is tagged 1 in fives: the owned piece is then lost to the bound by 1.
 */
export const quartet: HandMade = {
  board: boardOf([pedalOf('a', 10), pedalOf('b', 10), pedalOf('c', 10), pedalOf('d', 10)], {
    policy: policyOf({ noisePrice: euros(0), bricks: 2 }),
    owned: { supplies: new Map(), parts: new Map([[partId('fan'), 1]]) },
  }),
  catalogue: catalogueOf(
    [supplyOf('single', 10, [bankOf(1, [nine])])],
    [partOf('fan', 20, { kind: 'chain', tails: 2 }, { stock: 0 }), partOf('spare', 5, { kind: 'chain', tails: 2 })],
  ),
  score: { ...noScore, money: euros(25), bricks: 2, parts: 2 },
  proof: proofOf([
    {
      // Two adapters, at 2 each, and a lead, at 1: 5. A pedal is tagged 1.5; all are 6, less 1 for the owned lead.
      tiers: [cost(500, 1)],
      value: 5,
      scale: 2,
      tree: {
        tags: { pedals: tags(3, 'a', 'b', 'c', 'd'), leads: [{ parts: [partId('fan'), partId('spare')], tag: 2 }] },
      },
    },
    {
      // A brick weighs 3 and a lead 1: a pedal is tagged 2, both on a chain 4 less 1.
      tiers: counts(3, 1, 1),
      value: 8,
      scale: 1,
      tree: { tags: { pedals: tags(2, 'a', 'b', 'c', 'd'), earlier: [0] } },
    },
  ]),
};

function tags(tag: number, ...pedals: readonly string[]): Record<string, number> {
  return Object.fromEntries(pedals.map((id) => [id, tag]));
}
