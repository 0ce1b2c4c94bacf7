import { describe, expect, it } from 'vitest';

import type { ProofNode } from '../../../src/domain/proof.js';
import { parseProof } from '../../../src/proof/proof-schema.js';
import { four, pairInOneStep, quartet, short, triple } from './hand-made.js';

const copyOf = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** The paths of all that is wrong. @throws Error when nothing is. */
function faultsOf(data: unknown): readonly string[] {
  const parsed = parseProof(copyOf(data));
  if (parsed.kind === 'proof') throw new Error('it is a proof');
  return parsed.faults.map(({ path }) => path.join('.'));
}

const { proof } = pairInOneStep;
const [step] = proof.steps;
const withNode = (tree: unknown) => ({ ...proof, steps: [{ ...step, tree }] });

describe('a proof file', () => {
  it.each([{ pairInOneStep }, { triple }, { quartet }, { four }, { short }])(
    'is read as it was written: %o',
    (made) => {
      for (const { proof: written } of Object.values(made))
        expect(parseProof(copyOf(written))).toEqual({ kind: 'proof', proof: written });
    },
  );

  it('of the earlier format is refused for that alone', () => {
    const earlier = { ...proof, format: 'boardfeed/proof/1', steps: [{ ...step, tree: { tags: { bricks: 1 } } }] };
    const parsed = parseProof(copyOf(earlier));
    if (parsed.kind === 'proof') throw new Error('it is a proof');
    const [fault, ...others] = parsed.faults;
    expect(others).toEqual([]);
    expect(fault?.path).toEqual(['format']);
    expect(fault?.message).toMatch(/boardfeed\/proof\/1 .* boardfeed\/proof\/2/);
    expect(fault?.remedy).toMatch(/Write the proof again/);
  });

  it('is read however deep its tree is', () => {
    let tree: ProofNode = { tags: { pedals: {} } };
    for (let depth = 0; depth < 20_000; depth += 1)
      tree = { branch: { count: 'units', supply: null, source: null, most: 1, fewer: tree, more: {} } };
    const parsed = parseProof(withNode(tree));
    expect(parsed.kind).toBe('proof');
  });

  it.each([
    ['no map', 'proof', ''],
    ['another format', { ...proof, format: 'boardfeed/plan/1' }, 'format'],
    ['no steps', { ...proof, steps: [] }, 'steps'],
    ['an unknown key', { ...proof, prooof: true }, ''],
    ['an unknown aim', { ...proof, aim: 'loud' }, 'aim'],
    [
      'an unknown tier',
      { ...proof, steps: [{ ...step, tiers: [{ tier: 'sockets', unit: 1, weight: 1 }] }] },
      'steps.0.tiers.0.tier',
    ],
    [
      'a weight of nothing',
      { ...proof, steps: [{ ...step, tiers: [{ tier: 'cost', unit: 1, weight: 0 }] }] },
      'steps.0.tiers.0.weight',
    ],
    ['a broken number', { ...proof, steps: [{ ...step, value: 1.5 }] }, 'steps.0.value'],
    ['a number too large', { ...proof, steps: [{ ...step, scale: 2 ** 53 }] }, 'steps.0.scale'],
    ['a tree that is none', withNode(3), 'steps.0.tree'],
    ['a broken tag', withNode({ tags: { pedals: { a: 0.5 } } }), 'steps.0.tree.tags.pedals.a'],
    [
      'a tag of a lead below zero',
      withNode({ tags: { pedals: {}, leads: [{ parts: ['x'], tag: -1 }] } }),
      'steps.0.tree.tags.leads.0.tag',
    ],
    ['a tag of sockets above zero', withNode({ tags: { pedals: {}, sockets: 1 } }), 'steps.0.tree.tags.sockets'],
    ['a tag of the budget above zero', withNode({ tags: { pedals: {}, budget: 1 } }), 'steps.0.tree.tags.budget'],
    [
      'a set of no supplies',
      withNode({ branch: { count: 'units', supply: null, among: [], source: null, most: 1, fewer: {}, more: {} } }),
      'steps.0.tree.branch.among',
    ],
    [
      'a branch with half a case',
      withNode({ branch: { count: 'units', supply: null, source: null, most: 1, fewer: {}, more: { tags: {} } } }),
      'steps.0.tree.branch.more.tags.pedals',
    ],
  ])('is refused for %s', (_, data, path) => {
    expect(faultsOf(data)).toEqual([path]);
  });
});
