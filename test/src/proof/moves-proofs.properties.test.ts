import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { audit } from '../../../src/audit/audit.js';
import { tierValue } from '../../../src/domain/aim.js';
import { kitOf } from '../../../src/domain/kit.js';
import type { ProofNode } from '../../../src/domain/proof.js';
import { rewire } from '../../../src/planning/rewire/rewire.js';
import { parseProof } from '../../../src/proof/proof-schema.js';
import { verifyImpossible, verifyProof } from '../../../src/proof/verify-proof.js';
import type { Case } from '../../support/arbitraries.js';
import { wiredCase } from '../../support/arbitrary-wirings.js';
import { share, trying } from '../../support/runs.js';

const runs = 300;
const questions = fc.record({ partial: fc.boolean(), pins: fc.array(fc.nat({ max: 3 }), { maxLength: 2 }) });

type Question = typeof questions extends fc.Arbitrary<infer Value> ? Value : never;

/** How a board is re-plugged, with the proof. */
async function answered({ board, catalogue }: Case, { partial, pins }: Question) {
  const wired = pins.flatMap((pin) => board.wiring.slice(pin, pin + 1));
  const keep = [...new Set(wired.map(({ pedal }) => pedal))];
  return { keep, answer: await rewire(kitOf(board, catalogue), { partial, keep, proof: true }) };
}

describe('the proofs of how boards are re-plugged', () => {
  it('hold, and are read back from what is written', async () => {
    const seen = { plans: 0, impossible: 0, kept: 0, cases: 0, none: 0 };
    await fc.assert(
      fc.asyncProperty(wiredCase, questions, async (of, question) => {
        const { board, catalogue } = of;
        const { keep, answer } = await answered(of, question);
        if (answer.kind === 'stopped' || answer.proof === undefined) {
          if (answer.kind !== 'impossible') seen.none += 1;
          return;
        }
        const { proof } = answer;
        expect(parseProof(JSON.parse(JSON.stringify(proof)))).toEqual({ kind: 'proof', proof });
        const verdict =
          answer.kind === 'plan'
            ? verifyProof(board, catalogue, proof, answer.wiring.score)
            : verifyImpossible(board, catalogue, proof);
        expect(verdict).toMatchObject({ kind: 'holds' });
        seen[answer.kind === 'plan' ? 'plans' : 'impossible'] += 1;
        if (keep.length > 0) seen.kept += 1;
        const isSplit = ({ branch }: ProofNode): boolean => branch !== undefined;
        if (proof.steps.some(({ tree }) => isSplit(tree))) seen.cases += 1;
      }),
      trying(runs),
    );
    expect(seen.none).toBeLessThan(share(runs / 20));
    expect(seen.plans).toBeGreaterThan(share(runs / 3));
    expect(seen.kept).toBeGreaterThan(share(runs / 10));
    expect(seen.impossible).toBeGreaterThan(share(runs / 50));
  });

  it('do not hold of fewer moves than there must be, nor where pedals are plugged otherwise', async () => {
    let [tampered, elsewhere] = [0, 0];
    await fc.assert(
      fc.asyncProperty(wiredCase, questions, async (of, question) => {
        const { board, catalogue } = of;
        const { answer } = await answered(of, question);
        if (answer.kind !== 'plan' || answer.proof === undefined) return;
        const { score } = answer.wiring;
        const { proof } = answer;
        const moved = proof.steps[0]?.tiers.find(({ tier }) => tier === 'moved');
        if (moved === undefined || (score.moved ?? 0) === 0) return;
        tampered += 1;
        // A plan with a move more is not the best.
        const worse = { ...score, moved: (score.moved ?? 0) + 1 };
        const steps = proof.steps.map((step, index) =>
          index === 0 ? { ...step, value: step.value + moved.weight } : step,
        );
        expect(verifyProof(board, catalogue, { ...proof, steps }, worse).kind).toBe('fails');
        // The plan itself is better than is claimed where nothing is plugged yet, unless its leads have to be bought then.
        const unplugged = { ...board, wiring: [] };
        const { wiring: plan, violations } = audit(unplugged, catalogue, answer.wiring.feeds, {
          ...question,
          moves: true,
        });
        const [step] = steps;
        if (violations.length > 0 || step === undefined) return;
        const number = step.tiers.reduce(
          (sum, { tier, unit, weight }) => sum + (weight * tierValue(tier, plan.score, board.policy)) / unit,
          0,
        );
        if (number >= step.value) return;
        expect(verifyProof(unplugged, catalogue, { ...proof, steps }, worse).kind).toBe('fails');
        elsewhere += 1;
      }),
      trying(runs),
    );
    expect(tampered).toBeGreaterThan(share(runs / 20));
    expect(elsewhere).toBeGreaterThan(share(runs / 50));
  });
});
