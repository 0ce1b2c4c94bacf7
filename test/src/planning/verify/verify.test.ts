import { beforeAll, describe, expect, it } from 'vitest';

import { rankedTiersOf } from '../../../../src/domain/aim.js';
import type { ClaimedPlan } from '../../../../src/domain/claimed-plan.js';
import type { Proof } from '../../../../src/domain/proof.js';
import { pedalId } from '../../../../src/domain/quantities.js';
import { choose } from '../../../../src/planning/choose/choose.js';
import { verify, type Claim, type Verdict } from '../../../../src/planning/verify/verify.js';
import { inputsFromText, type Inputs } from '../../../../src/reading/inputs-from-text.js';
import { scoreWith } from '../../../support/builders.js';
import { marramCatalogue, tidewayBoard } from '../../../support/documented.js';

function inputs(board: string): Inputs {
  const read = inputsFromText({ file: 'board.yaml', text: board }, { file: 'shop.yaml', text: marramCatalogue });
  if (read.kind === 'faulty') throw new Error(read.faults.map(({ message }) => message).join('\n'));
  return read.value;
}

const whole = inputs(tidewayBoard);
/** The same with nothing in hand. */
const fresh = inputs(tidewayBoard.replace('supplies: [quay-6]', 'supplies: []').replace(/wiring:[^]*$/, ''));
/** No output of the shop gives 48 V, alone or joined. */
const hopeless = inputs(tidewayBoard.replace('Tarn fuzz, volts: 9,', 'Tarn fuzz, volts: 48,'));

async function claimOf(kit: Inputs): Promise<Claim> {
  const answer = await choose(kit, { aim: 'cost', proof: true });
  if (answer.kind === 'stopped' || answer.proof === undefined) throw new Error('nothing was proven');
  const { name, currency } = kit.board;
  const head = { board: name, aim: 'cost', currency } as const;
  const plan: ClaimedPlan =
    answer.kind === 'plan'
      ? { ...head, status: 'proven', wiring: answer.wiring }
      : { ...head, status: 'impossible', wiring: nothingPlugged };
  return { plan, proof: answer.proof };
}

const nothingPlugged: ClaimedPlan['wiring'] = {
  feeds: [],
  inlets: [],
  unpowered: [],
  exposed: [],
  buy: { supplies: [], parts: [] },
  score: scoreWith(),
};

let plan: Claim;
let none: Claim;
let bought: Claim;
beforeAll(async () => {
  [plan, none, bought] = [await claimOf(whole), await claimOf(hopeless), await claimOf(fresh)];
});

const reasons = (verdict: Verdict): string => {
  if (verdict.kind !== 'refused') throw new Error(`it is ${verdict.kind}`);
  return `${verdict.what}: ${verdict.reasons.join('; ')}`;
};

describe('what holds', () => {
  it('is a plan that nothing beats, tier by tier', () => {
    const verdict = verify(whole, plan);
    expect(verdict).toMatchObject({ kind: 'proven', aim: 'cost' });
    // Where all pedals are to be powered, none is left out to be counted.
    expect(verdict.kind === 'proven' && verdict.tiers.map(({ tier }) => tier)).toEqual(
      rankedTiersOf('cost', whole.board.policy),
    );
  });

  it('is that no plan exists, and how many pedals stay without power', () => {
    expect(verify(hopeless, none)).toMatchObject({ kind: 'impossible', unpowered: 1 });
  });

  it('is checked case by case, which is told', () => {
    let looked = 0;
    const verdict = verify(whole, plan, () => (looked += 1));
    expect(verdict.kind === 'proven' && verdict.cases).toBeGreaterThan(0);
    expect(looked).toBeGreaterThan(0);
  });
});

describe('what does not', () => {
  const other = (of: Claim, change: Partial<ClaimedPlan>, proof: Partial<Proof> = {}): Claim => ({
    plan: { ...of.plan, ...change },
    proof: { ...of.proof, ...proof },
  });

  it.each<[string, () => Claim, RegExp]>([
    ['another board', () => other(plan, { board: 'Other' }), /^proof: the plan is for the board "Other"/],
    ['another currency', () => other(plan, { currency: { code: 'GBP', decimals: 2 } }), /^proof: .* in GBP, .* in EUR/],
    ['another aim', () => other(plan, { aim: 'quiet' }), /^proof: the plan's aim is quiet, the proof's cost/],
    [
      'a plan that claims to be none',
      () => other(plan, { status: 'impossible' }),
      /^proof: the file says that no plan exists, and the proof is about a plan/,
    ],
    [
      'a pedal left out',
      () => other(plan, { wiring: { ...plan.plan.wiring, unpowered: [pedalId('tarn-fuzz')] } }),
      /^proof: the plan leaves pedals without power/,
    ],
    [
      'a feed left out',
      () => other(plan, { wiring: { ...plan.plan.wiring, feeds: plan.plan.wiring.feeds.slice(1) } }),
      /^plan: /,
    ],
    ['a proof without steps', () => other(plan, {}, { steps: [] }), /^proof: /],
  ])('%s', (_, claim, reason) => {
    expect(reasons(verify(whole, claim()))).toMatch(reason);
  });

  it('a bought unit without the one before it', () => {
    expect(verify(fresh, bought)).toMatchObject({ kind: 'proven' });
    const { wiring } = bought.plan;
    const second = { ...wiring, feeds: wiring.feeds.map((feed) => ({ ...feed, unit: 2 })) };
    expect(reasons(verify(fresh, other(bought, { wiring: second })))).toMatch(
      /^plan: Quay 6 has a unit 2 and no unit 1/,
    );
  });

  it('a proof that no plan exists beside a plan', () => {
    expect(reasons(verify(hopeless, other(none, { status: 'proven' })))).toContain('and here is one');
  });

  it('a proof of another board that nothing can power', () => {
    const easier: Inputs = { ...hopeless, board: { ...whole.board, name: hopeless.board.name } };
    expect(reasons(verify(easier, none))).toMatch(/^proof: /);
  });
});
