import { expect, test } from 'vitest';

import { inletId } from '../../../src/domain/inlet.js';
import { kitOf } from '../../../src/domain/kit.js';
import { questionOf } from '../../../src/formulation/question.js';
import { scalarObjectives } from '../../../src/formulation/scalar-objective.js';
import { settle } from '../../../src/formulation/settle.js';
import { nothingToday, type Today } from '../../../src/loadout/today.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  fedBy,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';
import { loadoutOf, type Hanging } from './loadouts.js';

const box = supplyOf('box', 20, [bankOf(2, [settingOf(9, 200)])]);
const step = supplyOf('step', 12, [bankOf(1, [settingOf(9, 100)])], fedBy());
const inlet = inletId({ supply: step.id, unit: 1 });
const pinned: Today = {
  berths: new Map([[inlet, { supply: box.id, unit: 1, outputs: [1], millivolts: volts(9) }]]),
  exposed: new Set(),
  pinned: new Set([inlet]),
};

/** What the units cost; null where they make no plan. */
function costOf(today: Today, ...units: readonly (readonly [supply: string, ...hanging: readonly Hanging[]])[]) {
  const owned = { supplies: new Map([box, step].map(({ id }) => [id, 1])), parts: new Map() };
  const board = boardOf([pedalOf('a', 10)], { policy: policyOf({}), owned });
  const question = questionOf(kitOf(board, catalogueOf([box, step])), { tiers: ['money'], partial: false, today });
  const [objective] = scalarObjectives(question);
  if (objective === undefined) throw new RangeError('nothing is asked for');
  const loadouts = units.map(([supply, ...hanging]) => loadoutOf(question, supply, ...hanging));
  return settle(loadouts, question, question.supplies, objective, [])?.value ?? null;
}

test('an inlet that must stay where it is has its unit in use', () => {
  expect(costOf(pinned, ['box', inlet], ['step', 'a'])).toBe(euros(0));
  expect(costOf(pinned, ['box', inlet, 'a'])).toBeNull();
  expect(costOf(nothingToday, ['box', 'a'])).toBe(euros(0));
});
