import { expect } from 'vitest';

import { auditWiring } from '../../src/audit/audit-wiring.js';
import { tiersOf, type ChoosingAim } from '../../src/domain/aim.js';
import type { Score } from '../../src/domain/plan.js';
import type { Answer, Gap } from '../../src/planning/answer.js';
import type { Case } from './arbitraries.js';
import { bruteForce } from './brute-force.js';
import { conflictsOf } from './conflicts.js';
import { tierFigures } from './tier-figures.js';

type Asked = { readonly aim: ChoosingAim; readonly partial: boolean };

/** How far an answer goes; whatever it says has been found to be true. */
export type Extent = 'proven' | 'impossible' | 'best found' | 'stopped';

/** Holds an answer against brute force: it may say little, but nothing that is wrong. Fails the test when it does. */
export function expectNotWrong(answer: Answer, of: Case, asked: Asked): Extent {
  const truth = bruteForce(of.board, of.catalogue, asked);
  if (answer.kind === 'stopped') return 'stopped';
  if (answer.kind === 'impossible') {
    expect(truth.kind).toBe('impossible');
    expectConflicts(answer, of);
    return 'impossible';
  }
  expect(auditWiring(of.board, of.catalogue, answer.wiring, asked)).toEqual([]);
  if (truth.kind === 'impossible') throw new Error('brute force overlooked a plan that passes the audit');
  if (answer.gap !== null) {
    expectTrueGap(answer.gap, answer.wiring.score, truth.score, of, asked);
    return 'best found';
  }
  const figures = tierFigures(answer.wiring.score, asked.aim, of.board.policy);
  expect(figures).toEqual(tierFigures(truth.score, asked.aim, of.board.policy));
  return 'proven';
}

function expectConflicts({ reasons }: Extract<Answer, { kind: 'impossible' }>, { board, catalogue }: Case): void {
  const { isConflict } = conflictsOf(board, catalogue);
  for (const reason of reasons) {
    if (reason.kind === 'together') expect(isConflict(reason.pedals)).toBe(true);
    if (reason.kind === 'pedal') expect(isConflict([reason.pedal])).toBe(true);
  }
}

/** The tiers before the open one are at their best, and the bound is no better than the best. */
function expectTrueGap(gap: Gap, reached: Score, best: Score, { board }: Case, { aim, partial }: Asked): void {
  const tiers = tiersOf(aim, board.policy).filter((tier) => partial || tier !== 'unpowered');
  const open = tiers.indexOf(gap.tier);
  expect(open).toBeGreaterThanOrEqual(0);
  const figuresOf = (score: Score): readonly number[] => tierFigures(score, aim, board.policy).slice(-tiers.length);
  const [found, truth] = [figuresOf(reached), figuresOf(best)];
  expect(found.slice(0, open)).toEqual(truth.slice(0, open));
  expect(gap.value).toBe(found[open]);
  expect(gap.value).toBeGreaterThanOrEqual(truth[open] ?? Infinity);
  if (gap.bound !== null) expect(gap.bound).toBeLessThanOrEqual(truth[open] ?? -Infinity);
}
