import fc from 'fast-check';
import { expect, it } from 'vitest';

import { choosingAims } from '../../../src/domain/aim.js';
import { pedalId } from '../../../src/domain/quantities.js';
import { divided } from '../../../src/formulation/divide.js';
import { optimise } from '../../../src/formulation/optimise.js';
import type { Question } from '../../../src/formulation/question.js';
import type { Loadout } from '../../../src/loadout/loadout.js';
import { caseOf, type Case } from '../../support/arbitraries.js';
import { share, trying } from '../../support/runs.js';
import { Tally } from '../../support/tally.js';
import { questionFor } from './second-opinion.js';

/** Parts that disagree about where every pedal hangs that some supply feeds by itself. */
const partsOf = ({ supplies }: Question): readonly Loadout[] =>
  supplies.flatMap(({ supply, unit, solos }) =>
    solos.slice(0, 3).map((use) => ({ supply, unit, mode: null, hung: [{ kind: 'solo', use }] })),
  );

/** The tiers' values of the best plan, in the order of the tiers; null where there is none. */
async function bestOf(question: Question): Promise<readonly number[] | null> {
  const outcome = await optimise(question, { remainingMs: () => Infinity });
  if (outcome.kind === 'stopped') throw new Error('nothing stops it');
  return outcome.kind === 'proven' ? [...outcome.values.values()] : null;
}

const isLess = (one: readonly number[], other: readonly number[]): boolean => {
  const at = one.findIndex((value, index) => value !== other[index]);
  return at >= 0 && (one[at] ?? 0) < (other[at] ?? 0);
};

/** The parts of a question; itself where it is not divided. */
function divisions(question: Question, seen: Tally): readonly Question[] {
  const parts = divided(question, partsOf(question));
  if (parts === null) return [question];
  seen.add('divided');
  if (parts.some(({ bench }) => bench.classes.length > question.bench.classes.length)) seen.add('one apart');
  if (parts.some(({ supplies }) => supplies.length > question.supplies.length)) seen.add('a unit apart');
  return parts;
}

/** The case with another pedal like the first. */
const withTwin = ({ board, catalogue }: Case): Case => ({
  board: {
    ...board,
    pedals: [...board.pedals, ...board.pedals.slice(0, 1).map((like) => ({ ...like, id: pedalId('twin') }))],
  },
  catalogue,
});

const asked = fc.record({
  of: caseOf({ min: 1, max: 4 }, { min: 1, max: 3 }, 3).map(withTwin),
  aim: fc.constantFrom(...choosingAims),
  partial: fc.boolean(),
});

it('where a plan is to be beaten, the best one is found if it is better, and else none', async () => {
  const seen = new Tally();
  await fc.assert(
    fc.asyncProperty(asked, fc.nat({ max: 5 }), fc.nat({ max: 3_000 }), async (one, at, more) => {
      const question = questionFor(one);
      const best = await bestOf(question);
      if (best === null) return;
      const beating = (values: readonly number[]): Question => ({
        ...question,
        beating: new Map(question.tiers.map((tier, index) => [tier, values[index] ?? 0])),
      });
      expect(await bestOf(beating(best))).toBeNull();
      const place = at % best.length;
      // What comes after a worse tier is of no account.
      const worse = best.map((value, index) => (index < place ? value : index === place ? value + 1 + more : 0));
      expect(await bestOf(beating(worse))).toEqual(best);
      seen.add('better', place === 0 ? 'first' : 'later');
    }),
    trying(200),
  );
  expect(seen.lacking(share(20), 'better', 'first', 'later')).toEqual([]);
});

it('the best plan of a question is the best of the parts that it is divided into', async () => {
  const seen = new Tally();
  await fc.assert(
    fc.asyncProperty(asked, async (one) => {
      const question = questionFor(one);
      const whole = await bestOf(question);
      const parts = divisions(question, seen).flatMap((part) => divisions(part, seen));
      const found = await Promise.all(parts.map(bestOf));
      const best = found.reduce((least, each) => (least === null || (each !== null && isLess(each, least)) ? each : least), null); // prettier-ignore
      expect(best).toEqual(whole);
      seen.add(whole === null ? 'impossible' : 'plan');
    }),
    trying(200),
  );
  expect(seen.lacking(share(20), 'divided', 'one apart', 'a unit apart', 'plan', 'impossible')).toEqual([]);
});
