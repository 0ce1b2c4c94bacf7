import fc from 'fast-check';
import { expect, it } from 'vitest';

import { audit } from '../../../src/audit/audit.js';
import { soundPlan } from '../../../src/audit/audit-wiring.js';
import { instance } from '../../../bench/instances.js';
import { rankedTiersOf, tierValue, type Criterion } from '../../../src/domain/aim.js';
import { withPolicy } from '../../../src/domain/changed-kit.js';
import { kitOf, type Kit } from '../../../src/domain/kit.js';
import { minorUnits } from '../../../src/domain/quantities.js';
import { loadoutSearch } from '../../../src/formulation/loadout-search.js';
import { optimise } from '../../../src/formulation/optimise.js';
import type { Effort, SearchOutcome } from '../../../src/formulation/optimiser.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import { isKeptByBudget, searchWithinBudget } from '../../../src/formulation/within-budget.js';
import { Workings } from '../../../src/formulation/workings.js';
import { boardOf, catalogueOf, pedalOf, policyOf } from '../../support/builders.js';
import { noisyCase } from '../../support/arbitrary-shops.js';
import { trying } from '../../support/runs.js';

const noHurry = { remainingMs: () => Infinity };
const nothingYet = {
  kind: 'stopped',
  candidates: [],
  reached: null,
  settled: new Map(),
  open: null,
  impasse: null,
} as const;

const asking = (kit: Kit, tiers: Question['tiers'], { tables } = new Workings()): Question =>
  questionOf(kit, { tiers, partial: false }, tables);

async function valuesOf(
  kit: Kit,
  tiers: Question['tiers'],
  workings = new Workings(),
): Promise<ReadonlyMap<Criterion, number> | null> {
  const best = await loadoutSearch(asking(kit, tiers, workings), { ...noHurry, workings });
  return best.kind === 'proven' ? best.values : null;
}

const figuresOf = (outcome: SearchOutcome | null): unknown =>
  outcome?.kind === 'proven' ? [...outcome.values] : outcome?.kind;

const exposedBy = ({ feeds }: Extract<SearchOutcome, { kind: 'proven' }>, { board, catalogue }: Kit): number =>
  soundPlan(audit(board, catalogue, feeds, { partial: false })).score.exposed;

/** By way of the least money from the start, as where nothing else has settled it. */
const byMoney = (question: Question, effort: Effort): Promise<SearchOutcome | null> =>
  question.tiers[0] === 'money'
    ? optimise(question, effort)
    : searchWithinBudget(question, nothingYet, effort, optimise);

it.each(['cost', 'quiet', 'any', 'money'] as const)(
  'within a budget the best plan by way of the least money is what a search of the whole finds: %s',
  async (aim) => {
    const seen = { loose: 0, binding: 0, louder: 0, impossible: 0 };
    await fc.assert(
      fc.asyncProperty(
        noisyCase,
        fc.constantFrom(300, 3000, 9000),
        fc.integer({ min: -1, max: 4 }),
        async ({ board, catalogue }, noisePrice, quarters) => {
          const policy = { budget: null, supplyPrice: minorUnits(0), noisePrice: minorUnits(noisePrice) };
          const kit = withPolicy(kitOf(board, catalogue), policy);
          // Plans of any money are at hand when it is asked within the budget.
          const workings = new Workings();
          const best = await valuesOf(kit, ['cost', 'money'], workings);
          const least = await valuesOf(kit, ['money', 'exposed'], workings);
          if (best === null || least === null) return;
          const [dear = 0, cheap = 0] = [best.get('money'), least.get('money')];
          const budget = quarters < 0 ? cheap - 1 : Math.floor(cheap + ((dear - cheap) * quarters) / 4);
          if (budget < 0) return;
          const { policy: kept } = kit.board;
          const tiers =
            aim === 'any' ? [] : aim === 'money' ? (['money', 'exposed'] as const) : rankedTiersOf(aim, kept);
          const within = withPolicy(kit, { budget: minorUnits(budget) });
          const whole = await loadoutSearch(asking(within, tiers), noHurry);
          const known = asking(within, tiers, workings);
          expect(figuresOf(await byMoney(known, { ...noHurry, workings }))).toEqual(figuresOf(whole));
          if (whole.kind === 'impossible') seen.impossible += 1;
          else if (budget >= dear) seen.loose += 1;
          else seen.binding += 1;
          if (whole.kind === 'proven' && budget < dear && (least.get('exposed') ?? 0) > 0) seen.louder += 1;
        },
      ),
      trying(500),
    );
    for (const [what, count] of Object.entries(seen)) expect([what, count > 4]).toEqual([what, true]);
  },
);

it.each(['cost', 'quiet'] as const)(
  'a plan that exposes fewer pedals than the cheapest is found within the budget: %s',
  async (aim) => {
    let quieter = 0;
    for (let seed = 1; seed <= 25; seed += 1) {
      const { board, catalogue } = instance({ pedals: 7, supplies: 12, chains: 'all', seed });
      const kit = withPolicy(kitOf(board, catalogue), { budget: null });
      const best = await valuesOf(kit, ['cost', 'money']);
      const least = await valuesOf(kit, ['money', 'exposed']);
      if (best === null || least === null) continue;
      const budget = minorUnits(Math.max(0, (best.get('money') ?? 0) - 1));
      const within = asking(withPolicy(kit, { budget }), rankedTiersOf(aim, kit.board.policy));
      const whole = await loadoutSearch(within, noHurry);
      const parts = await byMoney(within, noHurry);
      if (whole.kind !== 'stopped') expect(figuresOf(parts)).toEqual(figuresOf(whole));
      if (whole.kind === 'proven' && exposedBy(whole, kit) < (least.get('exposed') ?? 0)) quieter += 1;
    }
    expect(quieter).toBeGreaterThan(0);
  },
);

/** Boards on which no branch of a search with the budget in it settled anything. */
it.each([
  ['cost', 7, 'cost'],
  ['quiet', 8, 'money'],
] as const)('a budget that is a little too small is told as such: %s', async (aim, seed, spent) => {
  const { board, catalogue } = instance({ pedals: 12, supplies: 40, chains: 'none', seed });
  const kit = withPolicy(kitOf(board, catalogue), { budget: null });
  const money = (await valuesOf(kit, [spent, 'money']))?.get('money') ?? 0;
  const budget = minorUnits(money - 1);
  const within = asking(withPolicy(kit, { budget }), rankedTiersOf(aim, kit.board.policy));
  expect((await optimise(within, noHurry)).kind).toBe('impossible');
  expect((await optimise(within, { remainingMs: () => 0 })).kind).toBe('stopped');
});

it.each([
  ['cost', 16, null, false],
  ['cost', 17, null, true],
  ['cost', 17, 5000, false],
  ['cost', 17, 5001, true],
  ['quiet', 17, 0, false],
  ['quiet', 17, 1, true],
  ['bricks', 17, 3, false],
] as const)(
  '%s: gives up after %i nodes with %s, for what the budget may forbid: %s',
  (aim, nodes, value, isGivenUp) => {
    const board = boardOf([pedalOf('echo', 50)], { policy: { ...policyOf(), budget: minorUnits(5000) } });
    const question = asking(kitOf(board, catalogueOf([])), rankedTiersOf(aim, board.policy));
    expect(isKeptByBudget(question)(nodes, value)).toBe(isGivenUp);
  },
);

it('what is known when the time ends keeps to the budget', async () => {
  const { board, catalogue } = instance({ pedals: 12, supplies: 40, chains: 'adapters', seed: 19 });
  const kit = withPolicy(kitOf(board, catalogue), { budget: null });
  const money = (await valuesOf(kit, ['cost', 'money']))?.get('money') ?? 0;
  const budget = minorUnits(money - 1);
  const within = asking(withPolicy(kit, { budget }), rankedTiersOf('cost', kit.board.policy));
  const best = await optimise(within, noHurry);
  if (best.kind !== 'proven') throw new Error('there is a plan within the budget');
  let [stops, plans] = [0, 0];
  for (let looks = 1; looks < 1_000; looks *= 3) {
    let left = looks;
    const outcome = await optimise(within, { remainingMs: () => (left -= 1) });
    if (outcome.kind !== 'stopped') continue;
    stops += 1;
    plans += outcome.candidates.length;
    const last = outcome.candidates.at(-1);
    if (last !== undefined && outcome.reached !== null) {
      const { score } = soundPlan(audit(board, catalogue, last, { partial: false }));
      expect(outcome.reached.get('cost')).toBe(tierValue('cost', score, kit.board.policy));
    }
    for (const feeds of outcome.candidates) {
      const report = audit(board, catalogue, feeds, { partial: false });
      expect(soundPlan(report).score.money).toBeLessThanOrEqual(budget);
    }
    expect(outcome.open?.bound ?? 0).toBeLessThanOrEqual(best.values.get('cost') ?? 0);
  }
  expect(stops).toBeGreaterThan(4);
  expect(plans).toBeGreaterThan(0);
});
