import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { choosingAims, tierValue } from '../../../src/domain/aim.js';
import type { Board, Catalogue } from '../../../src/domain/board.js';
import type { Score } from '../../../src/domain/plan.js';
import type { Proof, ProofNode, ProofStep, ProofTags } from '../../../src/domain/proof.js';
import { minorUnits } from '../../../src/domain/quantities.js';
import { groundOf } from '../../../src/proof/claim.js';
import { greatestBelow } from '../../../src/proof/greatest-below.js';
import { parseProof } from '../../../src/proof/proof-schema.js';
import { verifyImpossible, verifyProof } from '../../../src/proof/verify-proof.js';
import { allCases } from '../../acceptance/cases/all.js';
import { readCase } from '../../acceptance/cases/read-case.js';
import { largerCase, tinyCase, type Case } from '../../support/arbitraries.js';
import { standIns } from '../../support/arbitrary-stand-ins.js';
import { sourceCase } from '../../support/arbitrary-fed.js';
import { sharedChoose } from '../../support/choosing.js';
import { share, trying } from '../../support/runs.js';

const choose = sharedChoose();
const runs = 240;
const questions = fc.record({ aim: fc.constantFrom(...choosingAims), partial: fc.boolean() });
type Question = typeof questions extends fc.Arbitrary<infer Value> ? Value : never;

/** A proof with what it is about; the score is null for a board that no plan can power. */
type Proven = {
  readonly board: Board;
  readonly catalogue: Catalogue;
  readonly proof: Proof;
  readonly score: Score | null;
};

/** Null when the answer has no proof to write down. */
async function provenOf({ board, catalogue }: Case, question: Question): Promise<Proven | null> {
  const answer = await choose(board, catalogue, { ...question, proof: true });
  if (answer.kind === 'stopped' || answer.proof === undefined) return null;
  const score = answer.kind === 'plan' ? answer.wiring.score : null;
  return { board, catalogue, proof: answer.proof, score };
}

/** Why it does not hold; null when it does. */
function faultOf({ board, catalogue, proof, score }: Proven): string | null {
  const verdict =
    score === null ? verifyImpossible(board, catalogue, proof) : verifyProof(board, catalogue, proof, score);
  return verdict.kind === 'holds' ? null : verdict.reason;
}

describe('the proofs of what was worked out by hand', () => {
  it.each(Object.entries(allCases))('hold: %s', async (_, cases) => {
    let written = 0;
    for (const one of cases) {
      const { of, aim, partial } = readCase(one);
      const made = await provenOf(of, { aim, partial });
      // What was divided to be proven cannot be written down.
      if (made === null) continue;
      written += 1;
      expect(faultOf(made), one.says).toBeNull();
    }
    expect(written).toBeGreaterThanOrEqual(cases.length - 1);
  });
});

const withSteps = (made: Proven, change: (step: ProofStep, index: number) => ProofStep): Proven => ({
  ...made,
  proof: { ...made.proof, steps: made.proof.steps.map(change) },
});
const inFirstStep = (made: Proven, change: (step: ProofStep) => Partial<ProofStep>): Proven =>
  withSteps(made, (step, index) => (index === 0 ? { ...step, ...change(step) } : step));

/** The tree with all of its tags changed: a case with a branch may hold by its own. */
function withTags(node: ProofNode, change: (tags: ProofTags) => ProofNode): ProofNode {
  const { tags, branch } = node;
  const changed = tags === undefined ? {} : change(tags);
  if (branch === undefined) return changed;
  const [fewer, more] = [withTags(branch.fewer, change), withTags(branch.more, change)];
  return { ...changed, branch: { ...branch, fewer, more } };
}

/** Far below anything that other tags could make up for. */
const low = -(2 ** 52);

/** The place of a tier that the plan has anything of; of a board without a plan the only one. */
function placeOfValue({ board, proof, score }: Proven): number | null {
  const tiers = proof.steps[0]?.tiers ?? [];
  const place = score === null ? 0 : tiers.findIndex(({ tier }) => tierValue(tier, score, board.policy) > 0);
  return place < 0 ? null : place;
}

/** Changes that leave nothing of a proof, whatever it is about. */
const tamperings: Readonly<Record<string, (made: Proven) => Proven | null>> = {
  'a tag far too low': (made) => {
    const id = made.board.pedals[0]?.id ?? '';
    return inFirstStep(made, ({ tree }) => ({
      tree: withTags(tree, (tags) => ({ tags: { ...tags, pedals: { ...tags.pedals, [id]: low } } })),
    }));
  },
  'no tags': (made) => inFirstStep(made, ({ tree }) => ({ tree: withTags(tree, () => ({})) })),
  'a higher value': (made) => inFirstStep(made, ({ value }) => ({ value: value + 1 })),
  'a lower value': (made) => (made.score === null ? null : inFirstStep(made, ({ value }) => ({ value: value - 1 }))),
  'a weight of another size': (made) => {
    const place = placeOfValue(made);
    if (place === null) return null;
    return inFirstStep(made, ({ tiers }) => ({
      tiers: tiers.map((entry, index) => (index === place ? { ...entry, weight: entry.weight + 1 } : entry)),
    }));
  },
  'another board': (made) => ({ ...made, board: { ...made.board, name: `${made.board.name} 2` } }),
};

/** Whether a first step of value 0 is at hand: no plan is below it, so that its tags are of no account. */
const isNothing = ({ proof }: Proven): boolean => proof.steps[0]?.value === 0;

describe.each([
  ['tiny boards', tinyCase, runs, runs / 20],
  ['larger boards', largerCase(7, 6), (2 * runs) / 5, runs / 100],
  ['boards with every source', sourceCase(3, 3), 2 * runs, runs / 100],
] as const)('the proofs of %s', (_, cases, times, few) => {
  it('hold, and are read back from what is written', async () => {
    const seen = { plans: 0, impossible: 0, cases: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(cases, questions, async (of, question) => {
        const made = await provenOf(of, question);
        if (made === null) {
          seen.none += 1;
          return;
        }
        seen[made.score === null ? 'impossible' : 'plans'] += 1;
        if (made.proof.steps.some(({ tree }) => tree.branch !== undefined)) seen.cases += 1;
        expect(parseProof(JSON.parse(JSON.stringify(made.proof)))).toEqual({ kind: 'proof', proof: made.proof });
        expect(faultOf(made)).toBeNull();
      }),
      trying(times),
    );
    expect(seen.none).toBeLessThan(share(times / 10));
    expect(seen.plans).toBeGreaterThan(share(times / 2));
    expect(seen.impossible).toBeGreaterThan(share(few));
    expect(seen.cases).toBeGreaterThan(share(few));
  });
});

describe('the proofs of boards on which units stand for one another', () => {
  const likewiseIn = ({ branch }: ProofNode): number =>
    branch === undefined
      ? 0
      : Number(branch.likewise !== undefined) + likewiseIn(branch.fewer) + likewiseIn(branch.more);

  it('hold, and take units that are told apart for alike', async () => {
    const seen = { proofs: 0, likewise: 0 };
    await fc.assert(
      fc.asyncProperty(standIns, questions, async (of, question) => {
        const made = await provenOf(of, question);
        if (made === null) return;
        seen.proofs += 1;
        expect(faultOf(made)).toBeNull();
        const { steps } = made.proof;
        if (steps.some(({ tree }) => likewiseIn(tree) > 0)) seen.likewise += 1;
        expect(parseProof(JSON.parse(JSON.stringify(made.proof)))).toEqual({ kind: 'proof', proof: made.proof });
      }),
      trying(runs / 2),
    );
    expect(seen.proofs).toBeGreaterThan(share(runs / 3));
    expect(seen.likewise).toBeGreaterThan(share(runs / 10));
  });
});

describe('a proof that was tampered with', () => {
  it.each(Object.entries(tamperings))('does not hold with %s', async (_, tamper) => {
    let tampered = 0;
    await fc.assert(
      fc.asyncProperty(fc.oneof(tinyCase, sourceCase(3, 3)), questions, async (of, question) => {
        const made = await provenOf(of, question);
        const other = made === null || isNothing(made) ? null : tamper(made);
        if (other === null) return;
        tampered += 1;
        expect(faultOf(other)).not.toBeNull();
      }),
      trying(runs / 3),
    );
    expect(tampered).toBeGreaterThan(share(runs / 10));
  });

  it('does not hold for a shop in which what the plan buys costs less', async () => {
    let cheaper = 0;
    await fc.assert(
      fc.asyncProperty(tinyCase, async ({ board, catalogue }) => {
        const answer = await choose(board, catalogue, { aim: 'cost', proof: true });
        if (answer.kind !== 'plan' || answer.proof === undefined) return;
        const bought = new Set(answer.wiring.buy.supplies.map(({ id }) => id));
        if (bought.size === 0) return;
        cheaper += 1;
        const supplies = catalogue.supplies.map((supply) =>
          bought.has(supply.id) ? { ...supply, price: minorUnits(0) } : supply,
        );
        const made = { board, catalogue: { ...catalogue, supplies }, proof: answer.proof, score: answer.wiring.score };
        expect(faultOf(made)).not.toBeNull();
      }),
      trying(runs / 2),
    );
    expect(cheaper).toBeGreaterThan(share(runs / 10));
  });

  it('does not hold with the cases of another board', async () => {
    let swapped = 0;
    await fc.assert(
      fc.asyncProperty(tinyCase, tinyCase, async (one, two) => {
        const question = { aim: 'cost', partial: false } as const;
        const [made, other] = [await provenOf(one, question), await provenOf(two, question)];
        const [step] = other?.proof.steps ?? [];
        const [own] = made?.proof.steps ?? [];
        if (!made?.score || !other?.score || step === undefined || own === undefined) return;
        // Tags that are worth less than the claim can never show it.
        if (step.value * own.scale >= own.value * own.scale || step.scale > own.scale) return;
        // They need show no more than that nothing below the claim that a plan can have is reached.
        const ground = groundOf(made.board, made.catalogue, made.proof.partial, null);
        if (BigInt(step.value) > greatestBelow(BigInt(own.value), own.tiers, new Map(), ground)) return;
        swapped += 1;
        expect(faultOf(inFirstStep(made, () => ({ tree: step.tree })))).not.toBeNull();
      }),
      trying(runs),
    );
    expect(swapped).toBeGreaterThan(share(runs / 20));
  });
});
