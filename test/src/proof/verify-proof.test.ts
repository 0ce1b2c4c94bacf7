import { describe, expect, it } from 'vitest';

import type { Board, Catalogue } from '../../../src/domain/board.js';
import type { ProofNode, ProofTags } from '../../../src/domain/proof.js';
import { partId, supplyId } from '../../../src/domain/quantities.js';
import { verifyImpossible, verifyProof } from '../../../src/proof/verify-proof.js';
import { bankOf, euros, partOf, policyOf, settingOf, supplyOf } from '../../support/builders.js';
import { four, pairInOneStep, pairInTwoSteps, quartet, short, triple, type HandMade } from './hand-made.js';
import { reasonOf, test, verdictOn, withBranch, withProof, withStep } from './tampering.js';

type Pedals = { readonly pedals?: Readonly<Record<string, number>> };

/** With other tags at the root of a step's tree. */
function withTags(made: HandMade, index: number, change: Partial<Omit<ProofTags, 'pedals'>> & Pedals): HandMade {
  const tree = made.proof.steps[index]?.tree ?? {};
  return withStep(made, index, { tree: { ...tree, tags: { pedals: {}, ...tree.tags, ...change } } });
}

function withPedalTag({ tags }: ProofNode, id: string, by: number): ProofNode {
  const pedals: Readonly<Record<string, number>> = tags?.pedals ?? {};
  return { tags: { ...tags, pedals: { ...pedals, [id]: (pedals[id] ?? 0) + by } } };
}

const shop = (made: HandMade, change: Partial<Catalogue>): HandMade => ({
  ...made,
  catalogue: { ...made.catalogue, ...change },
});
const board = (made: HandMade, change: Partial<Board>): HandMade => ({ ...made, board: { ...made.board, ...change } });
const tierNamed = (made: HandMade, index: number, tier: string, change: object): HandMade =>
  withStep(made, index, {
    tiers: (made.proof.steps[index]?.tiers ?? []).map((entry) =>
      entry.tier === tier ? { ...entry, ...change } : entry,
    ),
  });

describe('a proof worked out by hand holds', () => {
  it('in one step', () => {
    expect(verdictOn(pairInOneStep)).toEqual({
      kind: 'holds',
      tiers: [
        { tier: 'cost', value: 1500 },
        { tier: 'bricks', value: 1 },
        { tier: 'parts', value: 1 },
        { tier: 'offPreferred', value: 0 },
      ],
      cases: 1,
    });
  });

  it('in two steps, the second of which builds on the first', () => {
    expect(verdictOn(pairInTwoSteps)).toMatchObject({ kind: 'holds', cases: 2 });
    expect(verdictOn(four)).toMatchObject({ kind: 'holds', cases: 2 });
    expect(reasonOf(withTags(four, 1, { earlier: [0] }))).toContain('step 2: a case is left open');
  });

  it('with a branch', () => {
    expect(verdictOn(triple)).toMatchObject({ kind: 'holds', cases: 4 });
  });

  it('and is told case by case while it is looked at', () => {
    for (const { board, catalogue, proof, score } of [pairInTwoSteps, triple]) {
      const told: (readonly [number, number])[] = [];
      const verdict = verifyProof(board, catalogue, proof, score, (...counts) => told.push(counts));
      if (verdict.kind === 'fails') throw new Error(verdict.reason);
      const all = Array.from({ length: verdict.cases }, (_, at) => [at + 1, verdict.cases]);
      expect(told).toEqual(all);
    }
  });

  it('with leads of several prices', () => {
    expect(verdictOn(quartet)).toMatchObject({ kind: 'holds', cases: 2 });
  });
});

describe('a proof that was tampered with does not hold:', () => {
  const open = 'a case is left open: its tags show no more than';
  test('a tag raised', withTags(four, 0, { pedals: { a: 3, b: 2, c: 2, d: 2 } }), open);
  test('a tag lowered', withTags(pairInOneStep, 0, { pedals: { a: 20, b: 20 } }), open);
  test('a tag left out', withTags(pairInOneStep, 0, { pedals: { a: 21 } }), open);
  test('the value raised', withStep(pairInOneStep, 0, { value: 22 }), "its value is 22; the plan's is 21");
  test('the value lowered', withStep(pairInOneStep, 0, { value: 20 }), "its value is 20; the plan's is 21");
  test('the scale raised', withStep(pairInOneStep, 0, { scale: 3 }), open);
  test(
    'a half of a branch left empty',
    withBranch(triple, { fewer: {} }),
    'in the case fewer, a case is left open: it has neither tags nor a branch',
  );
  test(
    'the halves of a branch swapped',
    withBranch(triple, ({ fewer, more }) => ({ fewer: more, more: fewer })),
    'the wrong sign',
  );
  test('a branch at another number', withBranch(triple, { most: 2 }), 'in the case fewer, a case is left open');
  test('a branch about another supply', withBranch(triple, { supply: supplyId('late') }), open);
  test('a branch about owned units', withBranch(triple, { source: 'owned' }), open);
  test(
    'a tag in a branch lowered',
    withBranch(triple, ({ more }) => ({ more: withPedalTag(more, 'b', -1) })),
    'in the case more, a case is left open',
  );
  test(
    'a tag of a condition left out',
    withBranch(triple, ({ fewer }) => ({ fewer: { tags: { pedals: fewer.tags?.pedals ?? {}, conditions: [] } } })),
    'it has 0 tags for 1 conditions',
  );
  test('a tag too many for the earlier steps', withTags(four, 1, { earlier: [-1, 0] }), '2 tags for 1 earlier');
  test('a tag of an earlier step of the wrong sign', withTags(four, 1, { earlier: [1] }), 'the wrong sign');
  test(
    'a tag of a lead raised',
    withTags(quartet, 0, { leads: [{ parts: ids('fan', 'spare'), tag: 3 }] }),
    'any number',
  );
  test('a tag of a lead lowered', withTags(quartet, 0, { leads: [{ parts: ids('fan', 'spare'), tag: 0 }] }), open);
  test(
    'a lead named in part',
    withTags(quartet, 0, { leads: [{ parts: ids('fan'), tag: 2 }] }),
    'leaves out the part "spare"',
  );
  test(
    'a lead named twice',
    withTags(quartet, 0, { leads: [2, 0].map((tag) => ({ parts: ids('fan', 'spare'), tag })) }),
    'twice',
  );
  test('a tag of a limit that is not there', withTags(quartet, 0, { budget: -1 }), 'the board does not limit');
  test('an unknown pedal', withTags(pairInOneStep, 0, { pedals: { a: 21, b: 21, c: 21 } }), 'the pedal "c"');
  test('an unknown supply', withBranch(triple, { supply: supplyId('twim') }), 'the supply "twim"');
  test('an unknown part', withTags(quartet, 0, { leads: [{ parts: ids('span'), tag: 0 }] }), 'the part "span"');
});

describe('a proof does not hold for another aim or order:', () => {
  const ranks = 'the aim cost ranks cost, bricks, parts, offPreferred';
  test('steps in another order', withProof(pairInTwoSteps, { steps: pairInTwoSteps.proof.steps.toReversed() }), ranks);
  test('a step left out', withProof(pairInTwoSteps, { steps: pairInTwoSteps.proof.steps.slice(0, 1) }), ranks);
  test('another aim', withProof(pairInOneStep, { aim: 'bricks' }), 'the aim bricks ranks bricks, cost');
  test('plans that may be partial', withProof(pairInOneStep, { partial: true }), 'ranks unpowered, cost');
  test('weights that do not rank', tierNamed(pairInOneStep, 0, 'cost', { weight: 5 }), 'its weight of cost');
  test(
    'a weight of a count that does not rank',
    tierNamed(pairInOneStep, 0, 'bricks', { weight: 1 }),
    'its weight of bricks',
  );
  test(
    'a unit that does not divide a price',
    tierNamed(pairInOneStep, 0, 'cost', { unit: 1000 }),
    'does not divide 500',
  );
  test('a unit of what is counted', tierNamed(pairInOneStep, 0, 'parts', { unit: 2 }), 'it counts parts in units of 2');
  test('another board', withProof(pairInOneStep, { board: 'Other' }), 'it is about the board "Other"');
  test('a board without a plan', withProof(pairInOneStep, { impossible: true }), 'it says that no plan exists');
  test(
    'a plan that leaves pedals out',
    { ...pairInOneStep, score: { ...pairInOneStep.score, unpowered: 1 } },
    'the plan leaves some out',
  );
});

describe('a proof does not hold for another board or shop:', () => {
  const open = 'a case is left open';
  const { catalogue } = pairInOneStep;
  const nine = settingOf(9, 100);
  const twin = (price: number) => supplyOf('twin', price, [bankOf(2, [nine])]);
  test('a price lowered', shop(pairInOneStep, { supplies: [...catalogue.supplies.slice(0, 1), twin(10)] }), open);
  test(
    'a supply more',
    shop(pairInOneStep, { supplies: [...catalogue.supplies, supplyOf('new', 5, [bankOf(2, [nine])])] }),
    open,
  );
  test('a lead for less', shop(pairInOneStep, { parts: [partOf('fan', 0, { kind: 'chain', tails: 2 })] }), open);
  test(
    'a longer lead',
    shop(quartet, { parts: [...quartet.catalogue.parts, partOf('long', 5, { kind: 'chain', tails: 4 })] }),
    open,
  );
  test(
    'a supply owned',
    board(pairInOneStep, { owned: { supplies: new Map([[supplyId('single'), 1]]), parts: new Map() } }),
    open,
  );
  test('a noise price', board(pairInOneStep, { policy: policyOf({ noisePrice: euros(2.5) }) }), 'does not divide 250');
  test('a pedal less', board(triple, { pedals: triple.board.pedals.slice(0, 2) }), 'the pedal "c"');
});

describe('that no plan exists', () => {
  it('is shown by tags', () => {
    expect(verifyImpossible(short.board, short.catalogue, short.proof)).toEqual({
      kind: 'holds',
      unpowered: 1,
      cases: 1,
    });
  });

  it.each([
    ['there is another supply', { stock: 2 }, {}, 'a case is left open'],
    ['more is claimed', {}, { value: 2 }, 'a case is left open'],
    ['nothing is claimed', {}, { value: 0 }, 'it leaves no pedal without power'],
    ['money is counted', {}, { tiers: [{ tier: 'money', unit: 1, weight: 1 }] }, 'must count the pedals without power'],
  ] as const)('is not shown when %s', (_, supply, step, reason) => {
    const supplies = short.catalogue.supplies.map((each) => ({ ...each, ...supply }));
    const proof = { ...short.proof, steps: short.proof.steps.map((each) => ({ ...each, ...step })) };
    const verdict = verifyImpossible(short.board, { ...short.catalogue, supplies }, proof);
    expect(verdict).toMatchObject({ kind: 'fails', reason: expect.stringContaining(reason) as string });
  });

  it('is not shown by a proof about a plan', () => {
    const { board: of, catalogue: from, proof } = pairInOneStep;
    expect(verifyImpossible(of, from, proof)).toMatchObject({ reason: 'it does not say that no plan exists' });
  });
});

const ids = (...names: readonly string[]) => names.map(partId);
