import { describe, expect, it } from 'vitest';

import { compared, judge, type Verdict } from '../../bench/verdict.js';
import { audit } from '../../src/audit/audit.js';
import type { Feed, Score } from '../../src/domain/plan.js';
import { partId } from '../../src/domain/quantities.js';
import type { Answer } from '../../src/planning/answer.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  pedalOf,
  policyOf,
  scoreWith,
  settingOf,
  supplyOf,
  feedOf,
} from '../support/builders.js';

const board = boardOf([pedalOf('echo', 100)]);
const catalogue = catalogueOf([supplyOf('wall', 20, [bankOf(1, [settingOf(9, 500)])])], []);
const feed = feedOf('echo', 'wall', 1);

const planOf = (feeds: readonly Feed[], changes: Partial<Score> = {}): Extract<Answer, { kind: 'plan' }> => {
  const { wiring } = audit(board, catalogue, feeds, { partial: false });
  return {
    kind: 'plan',
    aim: 'cost',
    wiring: { ...wiring, score: { ...wiring.score, ...changes } },
    gap: null,
    reasons: [],
  };
};
const verdictOf = (answer: Answer): string => judge(answer, board, catalogue).kind;

describe('judge', () => {
  it('takes a sound plan with a proof as proven, and without one as unproven', () => {
    const plan = planOf([feed]);
    expect(judge(plan, board, catalogue)).toMatchObject({ kind: 'proven', score: { money: euros(20), bricks: 1 } });
    expect(verdictOf({ ...plan, gap: { tier: 'cost', value: euros(20), bound: null } })).toBe('unproven');
  });

  it('finds plans wrong that break a rule, leave a pedal out or claim a score that is not theirs', () => {
    expect(verdictOf(planOf([{ ...feed, adapters: [partId('nowhere')] }]))).toBe('wrong');
    expect(verdictOf(planOf([{ ...feed, polarity: 'centre-positive' }]))).toBe('wrong');
    expect(verdictOf(planOf([]))).toBe('wrong');
    expect(verdictOf(planOf([feed], { money: euros(19) }))).toBe('wrong');
  });

  it('finds "impossible" wrong and does not hold it against an answer that its time ran out', () => {
    expect(verdictOf({ kind: 'impossible', aim: 'cost', reasons: [] })).toBe('wrong');
    expect(verdictOf({ kind: 'stopped', aim: 'cost' })).toBe('unproven');
  });
});

describe('compared', () => {
  const policy = policyOf({ noisePrice: euros(20) });
  const score = (changes: Partial<Score>): Score => scoreWith({ money: euros(100), bricks: 2, parts: 1, ...changes });
  const proven = (changes: Partial<Score> = {}): Verdict => ({ kind: 'proven', score: score(changes) });
  const unproven = (changes: Partial<Score>): Verdict => ({ kind: 'unproven', score: score(changes) });
  const kinds = (...verdicts: readonly Verdict[]) => compared(verdicts, policy).map(({ kind }) => kind);

  it('lets proofs stand that agree in every tier', () => {
    expect(kinds(proven(), proven())).toEqual(['proven', 'proven']);
    // 80 and one exposed pedal cost what 100 do.
    expect(kinds(proven(), proven({ money: euros(80), exposed: 1 }))).toEqual(['proven', 'proven']);
    expect(kinds(proven(), { kind: 'wrong', fault: 'broken' })).toEqual(['proven', 'wrong']);
  });

  it('finds the worse one of two proofs wrong, in the last tier too', () => {
    expect(kinds(proven(), proven({ money: euros(99) }))).toEqual(['wrong', 'proven']);
    expect(kinds(proven(), proven({ offPreferred: 1 }))).toEqual(['proven', 'wrong']);
  });

  it('finds a proof wrong that a plan without a proof beats, and leaves a worse plan alone', () => {
    expect(kinds(proven(), unproven({ bricks: 1 }))).toEqual(['wrong', 'unproven']);
    expect(kinds(proven(), unproven({ bricks: 3 }))).toEqual(['proven', 'unproven']);
    expect(kinds(proven(), { kind: 'unproven', score: null })).toEqual(['proven', 'unproven']);
  });
});
