import { kitOf } from '../../../src/domain/kit.js';
import { describe, expect, it } from 'vitest';

import { audit } from '../../../src/audit/audit.js';
import { soundPlan } from '../../../src/audit/audit-wiring.js';
import { tiersOf } from '../../../src/domain/aim.js';
import { rules } from '../../../src/domain/rules.js';
import { compactSearch } from '../../../src/formulation/compact-search.js';
import { loadoutSearch } from '../../../src/formulation/loadout-search.js';
import type { Optimiser } from '../../../src/formulation/optimiser.js';
import { questionOf } from '../../../src/formulation/question.js';
import { sharedEngines } from '../../support/engines.js';
import { outputTrials } from '../planning/trials/output-trials.js';
import { planTrials } from '../planning/trials/plan-trials.js';
import { caseOf, type Expected, type Given } from '../planning/trials/trial.js';
import { unitTrials } from '../planning/trials/unit-trials.js';

const engines = sharedEngines();
const trials = [...outputTrials, ...unitTrials, ...planTrials];
const searches: readonly (readonly [string, Optimiser])[] = [
  ['loadouts', loadoutSearch],
  ['the compact program', compactSearch],
];

async function expectFound(search: Optimiser, given: Given, expected: Expected): Promise<void> {
  const { board, catalogue } = caseOf(given);
  const question = questionOf(kitOf(board, catalogue), {
    tiers: tiersOf('cost', board.policy).slice(1),
    partial: false,
  });
  const outcome = await search(question, { engines, remainingMs: () => Infinity });
  if (expected === 'impossible' || outcome.kind !== 'proven') {
    expect(outcome.kind).toBe(expected === 'impossible' ? 'impossible' : 'proven');
    return;
  }
  const wiring = soundPlan(audit(board, catalogue, outcome.feeds, { partial: false }));
  expect(wiring.score).toMatchObject({ unpowered: 0, ...expected });
}

// Elsewhere the two searches help each other out; here each has to know every rule by itself.
describe.each(searches)('by %s', (_, search) => {
  it.each(rules)('the rule %s bites, and spares what is a shade better', async (rule) => {
    const ofRule = trials.filter((each) => each.rule === rule);
    expect(ofRule.length).toBeGreaterThanOrEqual(2);
    for (const { bites, spares } of ofRule) {
      await expectFound(search, ...bites);
      await expectFound(search, ...spares);
    }
  });
});
