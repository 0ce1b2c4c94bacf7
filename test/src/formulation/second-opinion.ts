import { kitOf } from '../../../src/domain/kit.js';
/** What two searches say to the same question, held against each other and against the audit. */
import { expect } from 'vitest';

import { audit } from '../../../src/audit/audit.js';
import { soundPlan } from '../../../src/audit/audit-wiring.js';
import { tiersOf, tierValue, type ChoosingAim, type Tier } from '../../../src/domain/aim.js';
import type { Feed, Score, Wiring } from '../../../src/domain/plan.js';
import type { CompactOutcome } from '../../../bench/rival/formulation/compact-search.js';
import type { SearchOutcome } from '../../../src/formulation/optimiser.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import type { Case } from '../../support/arbitraries.js';
import { firstDifference } from '../../support/tier-figures.js';

export type Asked = { readonly of: Case; readonly aim: ChoosingAim; readonly partial: boolean };

const tiersFor = ({ of, aim, partial }: Asked): readonly Tier[] =>
  tiersOf(aim, of.board.policy).filter((tier) => partial || tier !== 'unpowered');

export const questionFor = (asked: Asked): Question =>
  questionOf(kitOf(asked.of.board, asked.of.catalogue), { tiers: tiersFor(asked), partial: asked.partial });

/** What either search says. */
export type Saying = SearchOutcome | CompactOutcome;

/** Which of the two came to an end: both with a plan or both without one, or one of them alone. */
export type Extent = 'plan' | 'impossible' | 'loadouts stopped' | 'compact stopped' | 'both stopped';

/** Fails the test where the two contradict each other, or the audit, in any tier. */
export function expectAgreement(loadouts: Saying, compact: Saying, asked: Asked): Extent {
  const [one, two] = [provenFigures(loadouts, asked), provenFigures(compact, asked)];
  if (loadouts.kind === 'stopped') {
    if (compact.kind === 'stopped') return 'both stopped';
    expectNothingWrong(loadouts, two, asked);
    return 'loadouts stopped';
  }
  if (compact.kind === 'stopped') {
    expectNothingWrong(compact, one, asked);
    return 'compact stopped';
  }
  expect(two).toEqual(one);
  return one === null ? 'impossible' : 'plan';
}

/** The wiring of feeds, which the audit finds nothing wrong with. */
export function auditedWiring(feeds: readonly Feed[], { of: { board, catalogue }, partial }: Asked): Wiring {
  const wiring = soundPlan(audit(board, catalogue, feeds, { partial }));
  return wiring;
}

/** A score as it is asked for, tier by tier. */
export const figuresOf = (score: Score, asked: Asked): readonly number[] =>
  tiersFor(asked).map((tier) => tierValue(tier, score, asked.of.board.policy));

const auditedFigures = (feeds: readonly Feed[], asked: Asked): readonly number[] =>
  figuresOf(auditedWiring(feeds, asked).score, asked);

/** What a proven plan comes to tier by tier; null where there is none. It must be what the search says of it. */
function provenFigures(outcome: Saying, asked: Asked): readonly number[] | null {
  if (outcome.kind !== 'proven') return null;
  const figures = auditedFigures(outcome.feeds, asked);
  expect([...outcome.values]).toEqual(tiersFor(asked).map((tier, index) => [tier, figures[index]]));
  return figures;
}

/** Holds an outcome against the figures of the best plan, tier by tier; null where there is none. */
export function expectTrue(outcome: Saying, truth: readonly number[] | null, asked: Asked): void {
  if (outcome.kind === 'stopped') expectNothingWrong(outcome, truth, asked);
  else expect(provenFigures(outcome, asked)).toEqual(truth);
}

/** A search that was stopped may have little to say; `truth` is null where there is no plan. */
function expectNothingWrong(
  { settled, open, candidates }: Extract<Saying, { kind: 'stopped' }>,
  truth: readonly number[] | null,
  asked: Asked,
): void {
  if (truth === null) {
    expect(candidates).toEqual([]);
    return;
  }
  const tiers = tiersFor(asked);
  expect([...settled]).toEqual(tiers.slice(0, settled.size).map((tier, index) => [tier, truth[index]]));
  if (open !== null) {
    expect(open.tier).toBe(tiers[settled.size]);
    expect(open.bound ?? -Infinity).toBeLessThanOrEqual(truth[settled.size] ?? -Infinity);
  }
  for (const feeds of candidates) {
    expect(firstDifference(auditedFigures(feeds, asked), truth)).toBeGreaterThanOrEqual(0);
  }
}
