import { expect, it } from 'vitest';

import type { Engine } from '../../../solver/engines/engine.js';
import { instance } from '../../../bench/instances.js';
import { choosingTiersOf } from '../../../src/domain/aim.js';
import { kitOf } from '../../../src/domain/kit.js';
import type { ProofBranch, ProofNode, ProofTags } from '../../../src/domain/proof.js';
import { loadoutSearch } from '../../../src/formulation/loadout-search.js';
import { questionOf } from '../../../src/formulation/question.js';
import { choose } from '../../../src/planning/choose/choose.js';
import { parseProof } from '../../../src/proof/proof-schema.js';
import { verifyProof } from '../../../src/proof/verify-proof.js';
import { bankOf, boardOf, catalogueOf, pedalOf, policyOf, settingOf, supplyOf } from '../../support/builders.js';

const unasked: Engine = {
  name: 'must not be asked',
  solve: () => Promise.reject(new Error('loadouts need no engine')),
  close: () => Promise.resolve(),
};

const tagsIn = ({ tags, branch }: ProofNode): readonly ProofTags[] => [
  ...(tags === undefined ? [] : [tags]),
  ...(branch === undefined ? [] : [...tagsIn(branch.fewer), ...tagsIn(branch.more)]),
];

it.each([
  ['bricks', 'sockets'],
  ['sockets', 'bricks'],
] as const)('a limit on %s is charged by a tag of its own', async (limit, other) => {
  // Two supplies of two outputs would be cheaper than one of four.
  const supply = (id: string, price: number, outputs: number) =>
    supplyOf(id, price, [bankOf(outputs, [settingOf(9, 100)])]);
  const pedals = ['a', 'b', 'c'].map((id, at) => pedalOf(id, 10 + at));
  const board = boardOf(pedals, { policy: policyOf({ [limit]: 1 }) });
  const kit = kitOf(board, catalogueOf([supply('twin', 10, 2), supply('quad', 45, 4)]));
  const question = questionOf(kit, { tiers: choosingTiersOf('cost', kit.board.policy).slice(1), partial: false });
  const effort = { engine: unasked, remainingMs: () => Infinity, proof: true };
  const outcome = await loadoutSearch(question, effort);
  if (outcome.kind !== 'proven' || outcome.proof === null) throw new Error('nothing was proven');
  const tags = outcome.proof.flatMap(({ tree }) => tagsIn(tree));
  expect(Math.min(...tags.map((each) => each[limit] ?? 0))).toBeLessThan(0);
  expect(tags.filter((each) => each[other] !== undefined)).toEqual([]);
});

const branchesIn = ({ branch }: ProofNode): readonly ProofBranch[] =>
  branch === undefined ? [] : [branch, ...branchesIn(branch.fewer), ...branchesIn(branch.more)];

it.each([
  ['the leads of the whole plan', 'all', 3, ({ count, supply }: ProofBranch) => count === 'leads' && supply === null],
  [
    'the units of a set of supplies',
    'none',
    7,
    ({ count, among }: ProofBranch) => count === 'units' && among !== undefined,
  ],
] as const)('cases by %s are written so that they can be checked', async (_, chains, seed, isMeant) => {
  const { board, catalogue } = instance({ pedals: 8, supplies: 20, chains, seed });
  const answer = await choose(kitOf(board, catalogue), { aim: 'cost', proof: true });
  if (answer.kind !== 'plan' || answer.proof === undefined) throw new Error('nothing was proven');
  const branches = answer.proof.steps.flatMap(({ tree }) => branchesIn(tree));
  expect(branches.filter(isMeant)).not.toEqual([]);
  expect(parseProof(JSON.parse(JSON.stringify(answer.proof)))).toEqual({ kind: 'proof', proof: answer.proof });
  expect(verifyProof(board, catalogue, answer.proof, answer.wiring.score)).toMatchObject({ kind: 'holds' });
});

it('no cases by leads are written that a plan could have more of for nothing', async () => {
  const { board, catalogue } = instance({ pedals: 12, supplies: 40, chains: 'none', seed: 5 });
  const answer = await choose(kitOf(board, catalogue), { aim: 'bricks', proof: true });
  if (answer.kind !== 'plan' || answer.proof === undefined) throw new Error('nothing was proven');
  const branches = answer.proof.steps.flatMap(({ tree }) => branchesIn(tree));
  expect(branches).not.toEqual([]);
  expect(branches.filter(({ count }) => count === 'leads')).toEqual([]);
  expect(verifyProof(board, catalogue, answer.proof, answer.wiring.score)).toMatchObject({ kind: 'holds' });
});
