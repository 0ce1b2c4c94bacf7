import { expect, it } from 'vitest';

import { kitOf } from '../../../../src/domain/kit.js';
import { explain } from '../../../../src/planning/explain/explain.js';
import { toldWays } from '../../../../src/web/worker/told-ways.js';
import { pedalOf } from '../../../support/builders.js';
import { bankHolding, fourHours, onBlocks } from '../../../support/impossible-sources.js';
import { caseOf, type Given } from '../../planning/given.js';

async function editsFor(given: Given) {
  const { board, catalogue } = caseOf(given);
  const kit = kitOf(board, catalogue);
  const explanation = await explain(kit, { shrinkMs: 100_000 });
  if (explanation.kind !== 'impossible') throw new Error(`it is ${explanation.kind}`);
  return toldWays(kit, explanation).ways.flatMap(({ edits }) => edits);
}

it('lets batteries last less, and pays for as much', async () => {
  expect(await editsFor(onBlocks(2, 10))).toEqual([
    { kind: 'set', path: ['policy', 'batteries'], value: { change: 5, pay: 100 } },
  ]);
});

it('lets power banks last less, by as much of their charge', async () => {
  const given = { pedals: [pedalOf('looper', 100)], supplies: [bankHolding(1.8)], policy: fourHours };
  expect(await editsFor(given)).toEqual([
    { kind: 'set', path: ['policy', 'runtime'], value: { hours: 1, usable: 0.5 } },
  ]);
});
