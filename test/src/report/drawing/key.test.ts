import { expect, it } from 'vitest';

import { drawnBoard } from '../../../../src/report/drawing/contents.js';
import { drawingKey } from '../../../../src/report/drawing/key.js';
import { planOf, plainPlan } from '../handouts.js';

const keyOf = (plan: ReturnType<typeof planOf>) => drawingKey(plan, drawnBoard(plan));
const hazardsOf = (plan: ReturnType<typeof planOf>): readonly string[] =>
  keyOf(plan).flatMap((entry) => (entry.kind === 'hazard' ? [entry.hazard] : []));

it('explains every mark of the drawing and no other', () => {
  expect(hazardsOf(planOf())).toEqual(['AC', 'over 9 V', 'plus pin', 'reverses', 'chain', 'shared ground']);
  expect(hazardsOf(plainPlan())).toEqual(['over 9 V', 'positive ground']);
});

it('shows the signs that are there', () => {
  const signs = (plan: ReturnType<typeof planOf>) =>
    keyOf(plan).flatMap((entry) => (entry.kind === 'sign' ? [entry.sign] : []));
  expect(signs(planOf())).toEqual(['centre-negative', 'centre-positive']);
  expect(signs(plainPlan())).toEqual(['centre-negative']);
});

it('speaks of tails and switches where there are some', () => {
  const texts = (plan: ReturnType<typeof planOf>): string =>
    keyOf(plan)
      .map(({ text }) => text)
      .join('\n');
  expect(texts(planOf())).toContain('a letter for each tail of a chain');
  expect(texts(planOf())).toContain('"Set": turn the switch');
  expect(texts(plainPlan())).not.toContain('tail');
  expect(texts(plainPlan())).toContain('An open ring is a free output.');
});
