import { describe, expect, it } from 'vitest';

import { rules } from '../../../src/domain/rules.js';
import { sharedChoose } from '../../support/choosing.js';
import { outputTrials } from './trials/output-trials.js';
import { planTrials } from './trials/plan-trials.js';
import { caseOf, type Expected, type Given } from './trials/trial.js';
import { unitTrials } from './trials/unit-trials.js';

const choose = sharedChoose();
const trials = [...outputTrials, ...unitTrials, ...planTrials];

async function expectAnswer(given: Given, expected: Expected): Promise<void> {
  const { board, catalogue } = caseOf(given);
  const answer = await choose(board, catalogue);
  if (expected === 'impossible') {
    expect(answer.kind).toBe('impossible');
    return;
  }
  expect(answer).toMatchObject({ kind: 'plan', gap: null, wiring: { unpowered: [], score: expected } });
}

describe.each(rules)('the rule %s', (rule) => {
  const ofRule = trials.filter((each) => each.rule === rule);

  it('is tried', () => {
    expect(ofRule.length).toBeGreaterThanOrEqual(2);
  });

  it.each(ofRule)('bites, and spares what is a shade better: $what', async ({ bites, spares }) => {
    await expectAnswer(...bites);
    await expectAnswer(...spares);
  });
});
