import { expect, it } from 'vitest';

import { kitOf } from '../../../src/domain/kit.js';
import { partId } from '../../../src/domain/quantities.js';
import { featuresOf, takenIn, takingPairs } from '../../../src/formulation/loadout-features.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import type { Loadout } from '../../../src/loadout/loadout.js';
import { bankOf, boardOf, catalogueOf, listed, partOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';

const parts = [
  partOf('mini', 3, { kind: 'adapter' }, { gives: 'jack-3.5' }),
  partOf('clip', 3, { kind: 'adapter' }, { gives: 'snap-clip', stock: 2 }),
  partOf('stack', 3, { kind: 'join', mode: 'series' }, { stock: 1 }),
  partOf('fan', 3, { kind: 'chain', tails: 4 }, { stock: 1 }),
];
const pedals = [
  pedalOf('plain', 10),
  pedalOf('mini', 20, { inlet: 'jack-3.5' }),
  pedalOf('clip', 30, { inlet: 'snap-clip' }),
  pedalOf('high', 40, { accepts: listed(18) }),
];
const supply = supplyOf('box', 10, [bankOf(3, [settingOf(9, 100)], { joins: ['series'] })]);

const ask = (owned: Readonly<Record<string, number>> = {}): Question => {
  const leads = new Map(Object.entries(owned).map(([id, count]) => [partId(id), count]));
  const board = boardOf(pedals, { owned: { supplies: new Map(), parts: leads } });
  return questionOf(kitOf(board, catalogueOf([supply], parts)), { tiers: ['cost'], partial: false });
};

/** Pairs by the names of the pedal and of the lead. */
const named = (question: Question): readonly string[] =>
  takingPairs(question, question.supplies)
    .map(({ pedal, lead }) => {
      const { classes, kinds } = question.bench;
      return `${classes[pedal]?.like.id ?? ''} ${kinds[lead]?.supplyOf[0]?.part ?? ''}`;
    })
    .sort();

it('counts who takes a lead of its own, or to join outputs, of which there are few or of several prices', () => {
  expect(named(ask())).toEqual(['clip clip', 'high stack']);
  expect(named(ask({ mini: 1 }))).toEqual(['clip clip', 'high stack', 'mini mini']);
});

it('numbers those features after all others, and leaves out what a loadout has none of', () => {
  const question = ask();
  const pairs = takingPairs(question, question.supplies);
  const features = featuresOf(question, [], pairs);
  expect(features.count).toBe(featuresOf(question, []).count + pairs.length);
  const [uses] = question.supplies;
  const solos = (uses?.solos ?? []).filter(({ pedal }) => question.bench.classes[pedal]?.like.id !== 'clip');
  const loadout: Loadout = {
    supply,
    unit: null,
    mode: null,
    hung: solos.map((use) => ({ kind: 'solo', use })),
  };
  const high = pairs.findIndex(({ pedal }) => question.bench.classes[pedal]?.like.id === 'high');
  expect(high).toBeGreaterThanOrEqual(0);
  expect(takenIn(loadout, features)).toEqual([[features.taking + high, 1]]);
  expect(takenIn(loadout, featuresOf(question, []))).toEqual([]);
});
