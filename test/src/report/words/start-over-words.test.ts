import { expect, it } from 'vitest';

import type { JudgedPlan } from '../../../../src/domain/judged-plan.js';
import { kitOf } from '../../../../src/domain/kit.js';
import type { Score } from '../../../../src/domain/plan.js';
import { startOverText } from '../../../../src/report/words/start-over-words.js';
import { speechOf } from '../../../../src/report/words/speech.js';
import { euros } from '../../../support/builders.js';
import { bankFrom, boardOf, catalogueOf, feedOf, pedalOf, planOf, supplyOf } from '../samples.js';

const board = boardOf([pedalOf('echo')]);
const shop = catalogueOf([supplyOf('quay', [bankFrom(1, 1)])]);
const plan = planOf(board, shop, [feedOf('echo', 'quay', 1)]);
const scored = (more: Partial<Score>): JudgedPlan => ({
  ...plan,
  score: { ...plan.score, money: euros(0), exposed: 0, bricks: 1, ...more },
});
const said = (over: Partial<Score>, rewired: Partial<Score>): string =>
  startOverText(speechOf(kitOf(board, shop)), scored(over), scored(rewired));

it('says what a plan from nothing comes to, and that it saves nothing', () => {
  expect(said({}, {})).toBe(
    'Planned from nothing: nothing to buy, 1 supply, none exposed to digital noise, and every pedal plugged anew. ' +
      'That saves nothing.',
  );
});

it.each([
  [{ money: euros(30), bricks: 1 }, { money: euros(45), bricks: 3 }, 'That saves 15.00 EUR and 2 supplies.'],
  [{ exposed: 0 }, { exposed: 2 }, 'That saves the noise on 2 pedals.'],
  [{ bricks: 1, exposed: 1 }, { bricks: 2 }, 'That saves 1 supply, and costs the noise on 1 pedal more.'],
  [{ money: euros(5) }, {}, 'That saves nothing, and costs 5.00 EUR more.'],
] as const)('against the plan that re-plugs: %o and %o', (over, rewired, words) => {
  expect(said(over, rewired)).toContain(words);
});
