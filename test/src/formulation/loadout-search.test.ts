import { readFileSync } from 'node:fs';

import { describe, expect, it } from 'vitest';

import { packingBoard } from '../../../bench/packings.js';
import type { Engine } from '../../../solver/engines/engine.js';
import { audit } from '../../../src/audit/audit.js';
import { soundPlan } from '../../../src/audit/audit-wiring.js';
import { tiersOf, type Criterion } from '../../../src/domain/aim.js';
import type { Board, Catalogue } from '../../../src/domain/board.js';
import { kitOf } from '../../../src/domain/kit.js';
import { criterionValue } from '../../../src/domain/judged-plan.js';
import type { Feed } from '../../../src/domain/plan.js';
import { supplyId } from '../../../src/domain/quantities.js';
import { scalarObjectives } from '../../../src/formulation/scalar-objective.js';
import { loadoutSearch } from '../../../src/formulation/loadout-search.js';
import type { Effort, SearchOutcome, Progress } from '../../../src/formulation/optimiser.js';
import { questionOf, type Question } from '../../../src/formulation/question.js';
import { inputsFromText } from '../../../src/reading/inputs-from-text.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  listed,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
  volts,
} from '../../support/builders.js';
import { hardBoards } from './hard-boards.js';
import { expectTrue, questionFor } from './second-opinion.js';
import { indivisible } from '../../support/indivisible.js';

const unasked: Engine = {
  name: 'must not be asked',
  solve: () => Promise.reject(new Error('loadouts need no engine')),
  close: () => Promise.resolve(),
};

type Asked = { readonly board: Board; readonly catalogue: Catalogue; readonly question: Question };
type Terms = { readonly tiers?: readonly Criterion[]; readonly partial?: boolean; readonly required?: number };

function asked(board: Board, catalogue: Catalogue, terms: Terms = {}): Asked {
  const { tiers = tiersOf('cost', board.policy).slice(1), partial = false, required = 0 } = terms;
  const question = questionOf(kitOf(board, catalogue), { tiers, partial, required: new Map([[0, required]]) });
  return { board, catalogue, question };
}

const search = ({ question }: Asked, effort: Partial<Effort> = {}): Promise<SearchOutcome> =>
  loadoutSearch(question, { engine: unasked, remainingMs: () => Infinity, ...effort });

/** What feeds come to, tier by tier; the audit must find nothing wrong with them. */
function figuresOf(feeds: readonly Feed[], { board, catalogue, question }: Asked): readonly number[] {
  const wiring = soundPlan(audit(board, catalogue, feeds, { partial: question.partial }));
  return question.tiers.map((tier) => criterionValue(tier, wiring, board.policy));
}

/** The figures of the best plan tier by tier, or that there is none. */
async function best(given: Asked, effort: Partial<Effort> = {}): Promise<readonly number[] | 'impossible'> {
  const outcome = await search(given, effort);
  if (outcome.kind === 'stopped') throw new Error('it stopped without any reason to');
  if (outcome.kind === 'impossible') return 'impossible';
  expect([...outcome.values.values()]).toEqual(figuresOf(outcome.feeds, given));
  return [...outcome.values.values()];
}

const nine = [settingOf(9, 100)];
const single = supplyOf('single', 10, [bankOf(1, nine)]);
const pairLead = partOf('pair', 1, { kind: 'chain', tails: 2 });
const pedalsOf = (...draws: readonly number[]) => draws.map((draw, index) => pedalOf(`pedal-${index}`, draw));

it('minds who takes a lead of which there are few, where all that is counted beside that is whole', async () => {
  const few = hardBoards.find(({ what }) => what.includes('an adapter of which there are two'));
  if (few === undefined) throw new Error('there is such a board');
  const outcome = await loadoutSearch(questionFor(few.asked), { remainingMs: () => Infinity });
  expect(outcome.kind).toBe('proven');
  expectTrue(outcome, few.truth, few.asked);
});

describe('units are whole', () => {
  it.each(indivisible)('and so are chains and joins: $what', async ({ board, catalogue, best: expected }) => {
    expect(await best(asked(board, catalogue))).toEqual(expected);
  });

  it('where the owned one is not like the one for sale in price alone', async () => {
    const box = supplyOf('box', 10, [bankOf(2, nine)], { stock: 1 });
    const board = (boxes: number) =>
      boardOf(pedalsOf(50, 60, 70), { owned: { supplies: new Map([[supplyId('box'), boxes]]), parts: new Map() } });
    expect(await best(asked(board(0), catalogueOf([box])))).toBe('impossible');
    expect(await best(asked(board(1), catalogueOf([box])))).toEqual([1000, 2, 0, 0]);
    expect(await best(asked(board(2), catalogueOf([box])))).toEqual([0, 2, 0, 0]);
  });
});

describe('a plan that may be partial', () => {
  const partial = (required: number): Terms => ({ tiers: tiersOf('cost', board.policy), partial: true, required });
  const shop = catalogueOf([supplyOf('one', 10, [bankOf(1, nine)], { stock: 1 })]);
  // The first class has two pedals, the second one.
  const board = boardOf([pedalOf('a', 50), pedalOf('same', 50), pedalOf('b', 60, { prefers: volts(9) })]);

  it('leaves out no more than it must', async () => {
    expect(await best(asked(board, shop, partial(0)))).toEqual([2, 1000, 1, 0, 0]);
    expect(await best(asked(board, catalogueOf([single]), partial(0)))).toEqual([0, 3000, 3, 0, 0]);
    expect(await best(asked(board, catalogueOf([]), partial(0)))).toEqual([3, 0, 0, 0, 0]);
  });

  it('feeds those that must be fed', async () => {
    const given = asked(board, shop, partial(1));
    const outcome = await search(given);
    expect(outcome.kind === 'proven' ? outcome.feeds.map(({ pedal }) => pedal) : outcome.kind).toEqual(['a']);
    expect(await best(asked(board, shop, partial(2)))).toBe('impossible');
  });
});

describe('an answer', () => {
  const board = boardOf(pedalsOf(50, 60));

  it('rests on tags, and its proof is there when it was asked for', async () => {
    const given = asked(board, catalogueOf([single]));
    const [plain, written] = [await search(given), await search(given, { proof: true })];
    expect(plain).toMatchObject({ kind: 'proven', evidence: { kind: 'tags', cases: 1 }, proof: null });
    expect(written).toMatchObject({
      kind: 'proven',
      evidence: { kind: 'tags' },
      proof: [{ value: expect.any(Number) as number }],
    });
  });

  it('is that there is none where there are too few units', async () => {
    expect(await best(asked(board, catalogueOf([{ ...single, stock: 1 }])))).toBe('impossible');
    expect(await best(asked(board, catalogueOf([])))).toBe('impossible');
  });

  it('is any plan where nothing is to be minimised', async () => {
    expect(await best(asked(board, catalogueOf([single]), { tiers: [] }))).toEqual([]);
    expect(await best(asked(board, catalogueOf([{ ...single, stock: 1 }]), { tiers: [] }))).toBe('impossible');
  });
});

describe('units of one supply that stand for one another', () => {
  /** Of either voltage three pedals of which any two fill an output: three units could carry all of them by halves. */
  const pedals = [9, 12].flatMap((at) =>
    [48, 49, 50].map((draw) => pedalOf(`at-${at}-${draw}`, draw, { accepts: listed(at) })),
  );
  const box = supplyOf('box', 10, [bankOf(1, [settingOf(9, 100), settingOf(12, 100)])]);
  const lead = partOf('lead', 0, { kind: 'chain', tails: 2 });
  const given = asked(boardOf(pedals, { policy: policyOf() }), catalogueOf([box], [lead]), { tiers: ['bricks'] });

  it('are told apart where their halves add up to whole ones', async () => {
    expect(await best(given)).toEqual([4]);
    expect(await search(given, { proof: true })).toMatchObject({ kind: 'proven', evidence: { kind: 'tags' } });
  });

  it('are too few where one less could carry all by halves', async () => {
    const few = catalogueOf([{ ...box, stock: 3 }], [lead]);
    expect(await best(asked(given.board, few, { tiers: ['bricks'] }))).toBe('impossible');
  });
});

describe('a search that is not finished', () => {
  /** Pedals in steps on three sorts of supplies, chains on all of them: some rounds of work. */
  const given = asked(
    boardOf(pedalsOf(11, 17, 23, 29, 31, 37), { policy: policyOf({ budget: euros(45) }) }),
    catalogueOf(
      [
        single,
        supplyOf('two', 17, [bankOf(2, nine)]),
        supplyOf('three', 23, [bankOf(3, [settingOf(9, 60)], { isolated: false })]),
      ],
      [pairLead, partOf('fan', 3, { kind: 'chain', tails: 4 })],
    ),
  );

  it.each<[string, Partial<Effort>]>([
    ['no millisecond is left', { remainingMs: () => 0 }],
    ['it is cancelled', { signal: AbortSignal.abort() }],
  ])('knows nothing before it began: %s', async (_, effort) => {
    const outcome = await search(given, effort);
    expect(outcome).toMatchObject({ kind: 'stopped', candidates: [], open: { tier: 'cost' } });
    if (outcome.kind === 'stopped') expect([outcome.settled.size, (outcome.open?.bound ?? 0) <= 0]).toEqual([0, true]);
  });

  it('says nothing that is wrong, whenever it is stopped', async () => {
    const truth = await best(given);
    if (truth === 'impossible') throw new Error('there is a plan');
    const [cost = NaN] = truth;
    const seen = { candidates: 0, bounds: 0, proven: 0 };
    for (let rounds = 1; seen.proven === 0; rounds += 1) {
      let asks = 0;
      const outcome = await search(given, { remainingMs: () => (++asks > rounds ? 0 : Infinity) });
      if (outcome.kind === 'proven') {
        expect([...outcome.values.values()]).toEqual(truth);
        seen.proven += 1;
        continue;
      }
      if (outcome.kind === 'impossible') throw new Error('there is a plan');
      for (const feeds of outcome.candidates) {
        seen.candidates += 1;
        expect(figuresOf(feeds, given)[0]).toBeGreaterThanOrEqual(cost);
      }
      const settled = [...outcome.settled.values()];
      expect(settled).toEqual(truth.slice(0, settled.length));
      const bound = outcome.open?.bound ?? 0;
      if (bound > 0) seen.bounds += 1;
      expect(bound).toBeLessThanOrEqual(truth[settled.length] ?? NaN);
    }
    expect(seen.candidates).toBeGreaterThan(0);
    expect(seen.bounds).toBeGreaterThan(0);
  });

  it('has settled the money, too, as soon as it knows how many supplies of one price it takes', async () => {
    // Items of a packing: whatever is open of it, the money is the price times the number.
    const sizes = [66, 82, 100, 93, 39, 91, 67, 33, 36, 88, 55, 56, 51, 31];
    const { board, catalogue } = packingBoard({ name: 'packing', capacity: 150, bestKnown: 7, sizes });
    const packing = asked(board, catalogue, { tiers: tiersOf('bricks', board.policy).slice(1) });
    const seen = { money: 0, rounds: 0 };
    for (let isOpen = true; isOpen; seen.rounds += 1) {
      let asks = 0;
      const outcome = await search(packing, { remainingMs: () => (++asks > seen.rounds ? 0 : Infinity) });
      isOpen = outcome.kind === 'stopped';
      if (outcome.kind !== 'stopped') expect(outcome).toMatchObject({ kind: 'proven' });
      else if (outcome.settled.has('bricks')) {
        expect([...outcome.settled].slice(0, 2)).toEqual([
          ['bricks', 7],
          ['cost', 7000],
        ]);
        seen.money += 1;
      } else expect(outcome.open?.tier).toBe('bricks');
    }
    expect(seen.money).toBeGreaterThan(1);
  });

  it('tells how far it has come, and never more than is true', async () => {
    const told: Progress[] = [];
    const truth = await best(given, { onProgress: (progress) => told.push(progress) });
    const cost = truth === 'impossible' ? NaN : (truth[0] ?? NaN);
    expect(told.length).toBeGreaterThan(1);
    for (const { tier, value, bound } of told) {
      expect(tier).toBe('cost');
      expect(value ?? Infinity).toBeGreaterThanOrEqual(cost);
      expect(bound ?? -Infinity).toBeLessThanOrEqual(cost);
    }
    expect(told.at(-1)?.value).toBe(cost);
  });
});

describe('a search that may get stuck', () => {
  it.each(hardBoards)('says nothing that is wrong: $what', async ({ asked: of, truth, steps = 1 }) => {
    const question = questionFor(of);
    expect(scalarObjectives(question)).toHaveLength(steps);
    expectTrue(await loadoutSearch(question, { engine: unasked, remainingMs: () => Infinity }), truth, of);
  });
});

it('proves a wall of 28 pedals in the demo shop in a few cases, as branches are tried with columns of their own', async () => {
  const [board, shop] = ['boards/studio-wall.yaml', 'shops/marram-street.yaml'].map((file) => ({
    file,
    text: readFileSync(new URL(`../../../fixtures/${file}`, import.meta.url), 'utf8'),
  }));
  if (board === undefined || shop === undefined) throw new RangeError('there are two files');
  const read = inputsFromText(board, shop);
  if (read.kind === 'faulty') throw new RangeError('the demo is in order');
  const outcome = await search(asked(read.value.board, read.value.catalogue));
  expect(outcome.kind).toBe('proven');
  // By the columns at hand alone it took 921.
  expect(outcome.kind === 'proven' && outcome.evidence.cases).toBeLessThan(100);
});
