import { expect, it } from 'vitest';

import { kitOf } from '../../../src/domain/kit.js';
import { supplyId } from '../../../src/domain/quantities.js';
import { groupsOf, kindKey } from '../../../src/formulation/loadout-groups.js';
import { questionOf } from '../../../src/formulation/question.js';
import { unitSets } from '../../../src/formulation/unit-sets.js';
import { bankOf, boardOf, catalogueOf, currentTotal, pedalOf, settingOf, supplyOf } from '../../support/builders.js';

const nine = settingOf(9, 100);
const supplies = [
  supplyOf('single', 10, [bankOf(1, [nine])]),
  supplyOf('twin', 20, [bankOf(2, [nine])]),
  supplyOf('shared', 30, [bankOf(3, [nine], { isolated: false })], { total: currentTotal(250) }),
  supplyOf('switched', 30, [bankOf(3, [nine, settingOf(12, 100)])]),
];
const pedals = ['a', 'b', 'c', 'd'].map((id) => pedalOf(id, 10));

/** The sets of the shop's groups, each as the names of its groups. */
function setsOf(owned: ReadonlyMap<string, number>, apart: ReadonlySet<string> = new Set()) {
  const units = new Map([...owned].map(([id, count]) => [supplyId(id), count]));
  const board = boardOf(pedals, { owned: { supplies: units, parts: new Map() } });
  const question = questionOf(kitOf(board, catalogueOf(supplies)), { tiers: ['cost'], partial: false });
  const groups = question.supplies.flatMap((uses) => groupsOf(uses, apart, question.bench));
  const names = groups.map((group) => `${kindKey(group)}${group.slot === null ? '' : ` ${group.slot}`}`);
  return { names, sets: unitSets(groups).map((set) => set.map((group) => names[group])) };
}

it('are those with as many outputs, at least as dear or as strong, on a common ground or none, with a total, at some volts', () => {
  const { sets } = setsOf(new Map());
  const bought = (...ids: readonly string[]) => ids.map((id) => `bought ${id}`);
  expect(new Set(sets)).toEqual(
    new Set([bought('twin', 'shared', 'switched'), bought('shared', 'switched'), bought('single', 'twin', 'switched')]),
  );
});

it('count what is owned as free, and by itself', () => {
  const { sets } = setsOf(
    new Map([
      ['shared', 1],
      ['twin', 1],
    ]),
  );
  const dear = ['bought twin', 'bought shared', 'bought switched'];
  expect(sets).toContainEqual(dear);
  expect(sets).toContainEqual(['owned twin', 'owned shared']);
  // A total or a common ground is the same, whoever owns it.
  expect(sets).toContainEqual(['owned shared', 'bought shared']);
});

it('hold every unit of what they hold, also those that are told apart', () => {
  const { names, sets } = setsOf(new Map(), new Set(['bought twin']));
  const twins = names.filter((name) => name.startsWith('bought twin'));
  expect(twins).toHaveLength(4);
  for (const set of sets) expect([0, 4]).toContain(set.filter((name) => twins.includes(name ?? '')).length);
});

it('are no more than thresholds at about eleven of many amounts', () => {
  const many = Array.from({ length: 90 }, (_, index) => supplyOf(`supply-${index}`, 10 + index, [bankOf(1, [nine])]));
  const question = questionOf(kitOf(boardOf(pedals), catalogueOf(many)), { tiers: ['cost'], partial: false });
  const groups = question.supplies.flatMap((uses) => groupsOf(uses, new Set(), question.bench));
  const sizes = unitSets(groups).map(({ length }) => length);
  expect(sizes).toEqual([83, 75, 68, 60, 53, 45, 38, 30, 23, 15, 8]);
});
