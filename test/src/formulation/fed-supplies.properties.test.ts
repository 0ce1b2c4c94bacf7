import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { choosingAims, compareScores, type ChoosingAim } from '../../../src/domain/aim.js';
import { kitOf } from '../../../src/domain/kit.js';
import type { JudgedPlan } from '../../../src/domain/judged-plan.js';
import type { Proof } from '../../../src/domain/proof.js';
import { choose } from '../../../src/planning/choose/choose.js';
import { verifyProof } from '../../../src/proof/verify-proof.js';
import type { Case } from '../../support/arbitraries.js';
import { fedCase, sourceCase } from '../../support/arbitrary-fed.js';
import { bruteForce } from '../../support/brute-force.js';
import { share, trying } from '../../support/runs.js';
import { Tally } from '../../support/tally.js';

type Asked = { readonly of: Case; readonly aim: ChoosingAim; readonly partial: boolean };

const asked: fc.Arbitrary<Asked> = fc.record({
  of: fc.oneof({ weight: 2, arbitrary: fedCase(3, 3) }, { weight: 1, arbitrary: sourceCase(3, 3) }),
  aim: fc.constantFrom(...choosingAims),
  partial: fc.boolean(),
});

/** The proven plan; null when it is impossible. */
async function proven({ of: { board, catalogue }, aim, partial }: Asked, proof: boolean) {
  const answer = await choose(kitOf(board, catalogue), { aim, partial, proof });
  if (answer.kind === 'impossible') return null;
  if (answer.kind !== 'plan' || answer.gap !== null) throw new Error(`nothing was proven: ${JSON.stringify(answer)}`);
  return { wiring: answer.wiring, proof: answer.proof ?? null };
}

describe('on boards with fed supplies', () => {
  it('the plan is as good as brute force finds it', async () => {
    const seen = new Tally();
    const runs = 1_200;
    await fc.assert(
      fc.asyncProperty(asked, async (question) => {
        const { of, aim, partial } = question;
        const expected = bruteForce(of.board, of.catalogue, { aim, partial });
        const found = await proven(question, false);
        expect(found === null ? 'impossible' : 'plan').toBe(expected.kind);
        seen.add(expected.kind);
        if (found === null || expected.kind === 'impossible') return;
        expect(compareScores(found.wiring.score, expected.score, aim, of.board.policy)).toBe(0);
        seen.add(...waysIn(found.wiring));
      }),
      trying(1.5 * runs),
    );
    expect(seen.lacking(share(runs / 20), 'plan', 'impossible', 'fed')).toEqual([]);
    expect(seen.lacking(share(5), 'several', 'adapter')).toEqual([]);
  });

  it('a proof that is written holds, and none holds whose tags of inlets are damaged so that they say too much', async () => {
    const seen = new Tally();
    const runs = 600;
    await fc.assert(
      fc.asyncProperty(asked, async (question) => {
        const { board, catalogue } = question.of;
        const found = await proven(question, true);
        const { proof = null, wiring } = found ?? {};
        if (proof === null || wiring === undefined) return;
        expect(verifyProof(board, catalogue, proof, wiring.score)).toMatchObject({ kind: 'holds' });
        seen.add('holds');
        if (!JSON.stringify(proof).includes('"inlets"')) return;
        for (const damaged of [withoutPaying(proof), ofUnknownSupplies(proof), twice(proof)])
          expect(verifyProof(board, catalogue, damaged, { ...wiring.score, money: wiring.score.money }).kind).toBe(
            'fails',
          );
        seen.add('damaged');
      }),
      trying(1.5 * runs),
    );
    expect(seen.lacking(share(runs / 10), 'holds', 'damaged')).toEqual([]);
  });
});

const waysIn = ({ inlets }: JudgedPlan): readonly string[] => [
  ...(inlets.length > 0 ? ['fed'] : []),
  ...(inlets.length > 1 ? ['several'] : []),
  ...(inlets.some(({ adapters }) => adapters.length > 0) ? ['adapter'] : []),
];

/** Every object of a proof, changed. */
const changed = (proof: Proof, change: (value: Record<string, unknown>) => unknown): Proof =>
  JSON.parse(JSON.stringify(proof), (_, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? change(value as Record<string, unknown>)
      : value,
  ) as Proof;

const withInlets = (proof: Proof, inletsOf: (inlets: readonly Record<string, unknown>[]) => unknown): Proof =>
  changed(proof, (value) =>
    Array.isArray(value['inlets'])
      ? { ...value, inlets: inletsOf(value['inlets'] as Record<string, unknown>[]) }
      : value,
  );

/** What is fed gains, and nobody pays for it: the sign is wrong. */
const withoutPaying = (proof: Proof): Proof => withInlets(proof, (all) => all.map((one) => ({ ...one, paid: -1 })));

const ofUnknownSupplies = (proof: Proof): Proof =>
  withInlets(proof, (all) => all.map((one) => ({ ...one, supplies: ['nowhere'] })));

const twice = (proof: Proof): Proof => withInlets(proof, (all) => [...all, ...all]);
