import { expect, it } from 'vitest';

import type { Proof, ProofBranch, ProofStep } from '../../../src/domain/proof.js';
import { verifyProof } from '../../../src/proof/verify-proof.js';
import type { HandMade } from './hand-made.js';

export const verdictOn = ({ board, catalogue, proof, score }: HandMade) => verifyProof(board, catalogue, proof, score);

/** Why a proof fails. @throws Error when it holds. */
export function reasonOf(made: HandMade): string {
  const verdict = verdictOn(made);
  if (verdict.kind === 'holds') throw new Error('the proof holds');
  return verdict.reason;
}

export const withProof = (made: HandMade, change: Partial<Proof>): HandMade => ({
  ...made,
  proof: { ...made.proof, ...change },
});
export const withStep = (made: HandMade, index: number, change: Partial<ProofStep>): HandMade =>
  withProof(made, { steps: made.proof.steps.map((step, at) => (at === index ? { ...step, ...change } : step)) });

type BranchChange = Partial<ProofBranch> | ((branch: ProofBranch) => Partial<ProofBranch>);

export function withBranch(made: HandMade, change: BranchChange): HandMade {
  const [step] = made.proof.steps;
  const branch = step?.tree.branch;
  if (step === undefined || branch === undefined) throw new Error('there is no branch');
  const changed = typeof change === 'function' ? change(branch) : change;
  return withStep(made, 0, { tree: { ...step.tree, branch: { ...branch, ...changed } } });
}

/** One change, and a part of the reason that is given for it. */
export function test(name: string, made: HandMade, reason: string): void {
  it(name, () => {
    expect(reasonOf(made)).toContain(reason);
  });
}
