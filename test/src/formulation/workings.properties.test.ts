import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { withPolicy } from '../../../src/domain/changed-kit.js';
import { choosingAims, rankedTiersOf } from '../../../src/domain/aim.js';
import { kitOf, type Kit } from '../../../src/domain/kit.js';
import { minorUnits } from '../../../src/domain/quantities.js';
import { Workings } from '../../../src/formulation/workings.js';
import { ask, type Ask, type SolverAnswer } from '../../../src/planning/asking/ask.js';
import { largerCase, tinyCase, type Case } from '../../support/arbitraries.js';
import { shoppingCase } from '../../support/arbitrary-shops.js';
import { share, trying } from '../../support/runs.js';

type Posed = { readonly name: string; readonly kit: Kit; readonly asked: Ask };

/** Many questions about one kit: other aims, limits, caps, places and pedals that may be left out. */
function questionsAbout({ board, catalogue }: Case): readonly Posed[] {
  const kit = kitOf(board, catalogue);
  const supplies = [...kit.supplies.keys()];
  const pedals = board.pedals.map(({ id }) => id);
  const least: Ask = { tiers: ['money'] };
  return [
    ...choosingAims.map((aim) => ({ name: aim, kit, asked: { tiers: rankedTiersOf(aim, board.policy) } })),
    { name: 'any', kit, asked: { tiers: [] } },
    { name: 'partial', kit, asked: { tiers: ['unpowered', 'cost'], partial: true } },
    { name: 'required', kit, asked: { tiers: ['unpowered', 'money'], required: new Set(pedals.slice(0, 1)) } },
    { name: 'quiet', kit, asked: { ...least, mostExposed: 0 } },
    { name: 'bricks', kit: withPolicy(kit, { bricks: 1 }), asked: least },
    { name: 'budget', kit: withPolicy(kit, { budget: minorUnits(2000) }), asked: { tiers: ['exposed', 'money'] } },
    { name: 'noise', kit: withPolicy(kit, { budget: null, noisePrice: minorUnits(50) }), asked: { tiers: ['cost'] } },
    { name: 'chains', kit: withPolicy(kit, { chains: 'never' }), asked: least },
    ...supplies.map((id) => ({ name: 'caps', kit, asked: { ...least, caps: new Map([[id, 0]]) } })),
    ...supplies.flatMap((supply) =>
      pedals
        .slice(0, 2)
        .map((pedal) => ({ name: 'pin', kit, asked: { ...least, pin: { pedal, supply, bank: null } } })),
    ),
  ];
}

const alone = { remainingMs: () => Infinity };

/** What is proven, tier by tier; the plan itself may be another of the same worth. */
const proven = (answer: SolverAnswer): readonly unknown[] =>
  answer.kind === 'plan' ? [answer.kind, ...answer.values] : [answer.kind];

describe.each([
  ['tiny boards', tinyCase, 25],
  ['shops with much that is alike', shoppingCase, 25],
  ['larger boards', largerCase(7, 5), 10],
] as const)('on %s', (_, cases, runs) => {
  it('questions that share what is worked out are answered as questions by themselves, in either order', async () => {
    const seen = { plan: 0, impossible: 0 };
    await fc.assert(
      fc.asyncProperty(cases, async (of) => {
        const questions = questionsAbout(of);
        const apart = new Map<Posed, readonly unknown[]>();
        for (const each of questions) {
          const answer = await ask(each.kit, each.asked, alone);
          if (answer.kind !== 'stopped') seen[answer.kind] += 1;
          apart.set(each, proven(answer));
        }
        for (const order of [questions, questions.toReversed()]) {
          const effort = { ...alone, workings: new Workings() };
          for (const each of order) {
            const answer = proven(await ask(each.kit, each.asked, effort));
            // Where a search by itself gets stuck, what is known already may well take it further.
            if (apart.get(each)?.[0] === 'stopped') continue;
            expect([each.name, ...answer]).toEqual([each.name, ...(apart.get(each) ?? [])]);
          }
        }
      }),
      trying(runs),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > share(40)]).toEqual([what, true]);
  });
});

it('the same questions in the same order get the very same plans', async () => {
  await fc.assert(
    fc.asyncProperty(shoppingCase, async (of) => {
      const answers = async (): Promise<readonly SolverAnswer[]> => {
        const effort = { ...alone, workings: new Workings() };
        const all: SolverAnswer[] = [];
        for (const { kit, asked } of questionsAbout(of)) all.push(await ask(kit, asked, effort));
        return all;
      };
      expect(await answers()).toEqual(await answers());
    }),
    trying(15),
  );
});
