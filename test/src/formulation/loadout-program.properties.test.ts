import { kitOf } from '../../../src/domain/kit.js';
import fc from 'fast-check';
import { expect, it } from 'vitest';

import { searchCover } from '../../../solver/cover/search.js';
import { choosingAims, tiersOf } from '../../../src/domain/aim.js';
import { scalarObjectives, type ScalarObjective, type SettledStep } from '../../../src/formulation/scalar-objective.js';
import { tierValues } from '../../../src/formulation/digits.js';
import { loadoutProgram } from '../../../src/formulation/loadout-program.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import type { Bench } from '../../../src/loadout/bench.js';
import { loadoutPricer, type LoadoutPricer } from '../../../src/loadout/best-loadout.js';
import type { SupplyUses } from '../../../src/loadout/supply-uses.js';
import { tinyCase } from '../../support/arbitraries.js';
import { bruteForce } from '../../support/brute-force.js';
import { tierFigures } from '../../support/tier-figures.js';
import { share, trying } from '../../support/runs.js';

/** The loadouts of one step's best plan, and what it is worth; null where the search got stuck. */
async function stepOf(question: Question, objective: ScalarObjective, earlier: readonly SettledStep[]) {
  const { supplies, bench } = question;
  const { cover } = loadoutProgram(question, supplies, objective, earlier, remembered(bench));
  const outcome = await searchCover(cover, { remainingMs: () => Infinity, known: null });
  if (outcome.kind === 'infeasible') throw new Error('a plan that may leave out every pedal always exists');
  return outcome.kind === 'optimal' ? outcome : null;
}

function remembered(bench: Bench): (uses: SupplyUses) => LoadoutPricer {
  const pricers = new Map<SupplyUses, LoadoutPricer>();
  return (uses) => {
    const pricer = pricers.get(uses) ?? loadoutPricer(uses, bench);
    pricers.set(uses, pricer);
    return pricer;
  };
}

/** The figures of the tiers, worked out in two steps that are cut at a place; null where the search got stuck. */
async function inTwoSteps(question: Question, cut: number): Promise<readonly number[] | null> {
  const { tiers } = question;
  const earlier: SettledStep[] = [];
  const figures: number[] = [];
  for (const part of [tiers.slice(0, cut), tiers.slice(cut)]) {
    const [objective] = scalarObjectives({ ...question, tiers: part });
    if (objective === undefined) throw new RangeError('a step has a number');
    const step = await stepOf(question, objective, earlier);
    if (step === null) return null;
    figures.push(...tierValues(objective, step.value).map(([, figure]) => figure));
    earlier.push({ objective, value: step.value });
  }
  return figures;
}

it('steps that keep what the earlier ones have reached come to what brute force finds', async () => {
  const seen = { done: 0, stuck: 0 };
  const cuts = fc.constantFrom(1, 2, 3, 4);
  await fc.assert(
    fc.asyncProperty(tinyCase, fc.constantFrom(...choosingAims), cuts, async ({ board, catalogue }, aim, cut) => {
      const question = questionOf(kitOf(board, catalogue), { tiers: tiersOf(aim, board.policy), partial: true });
      const figures = await inTwoSteps(question, cut);
      seen[figures === null ? 'stuck' : 'done'] += 1;
      const truth = bruteForce(board, catalogue, { aim, partial: true });
      if (truth.kind === 'impossible') throw new Error('a plan that may leave out every pedal always exists');
      if (figures !== null) expect(figures).toEqual(tierFigures(truth.score, aim, board.policy));
    }),
    trying(250),
  );
  expect(seen.done).toBeGreaterThan(0.9 * (seen.done + seen.stuck));
});

it('both halves by the units of a set of supplies together come to what brute force finds', async () => {
  const seen = { halves: 0, stuck: 0, fewer: 0, more: 0 };
  const chosen = fc.record({ at: fc.nat(40), most: fc.nat(2) });
  await fc.assert(
    fc.asyncProperty(tinyCase, fc.constantFrom(...choosingAims), chosen, async (given, aim, { at, most }) => {
      const { board, catalogue } = given;
      const question = questionOf(kitOf(board, catalogue), { tiers: tiersOf(aim, board.policy), partial: true });
      const [objective, ...others] = scalarObjectives(question);
      if (objective === undefined || others.length > 0) throw new RangeError('tiny boards take one step');
      const { cover } = loadoutProgram(question, question.supplies, objective, [], remembered(question.bench));
      const sets = cover.branching.sets();
      const groups = sets[at % sets.length];
      if (groups === undefined) return;
      const row = { name: 'set', feature: cover.unit, groups };
      const halves = [];
      for (const limit of [
        { sense: 'at most', bound: most } as const,
        { sense: 'at least', bound: most + 1 } as const,
      ]) {
        const program = { ...cover, rows: [...cover.rows, { ...row, ...limit }] };
        halves.push(await searchCover(program, { remainingMs: () => Infinity, known: null }));
      }
      if (halves.some(({ kind }) => kind === 'stuck')) {
        seen.stuck += 1;
        return;
      }
      seen.halves += 1;
      const [fewer = Infinity, more = Infinity] = halves.map((half) =>
        half.kind === 'optimal' ? half.value : Infinity,
      );
      const truth = bruteForce(board, catalogue, { aim, partial: true });
      if (truth.kind === 'impossible') throw new Error('a plan that may leave out every pedal always exists');
      const figures = tierValues(objective, Math.min(fewer, more)).map(([, figure]) => figure);
      expect(figures).toEqual(tierFigures(truth.score, aim, board.policy));
      seen[fewer < more ? 'fewer' : 'more'] += 1;
    }),
    trying(250),
  );
  expect(seen.stuck).toBeLessThan(0.1 * (seen.halves + seen.stuck));
  expect(Math.min(seen.fewer, seen.more)).toBeGreaterThan(share(10));
});
