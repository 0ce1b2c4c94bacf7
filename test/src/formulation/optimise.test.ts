import { describe, expect, it } from 'vitest';

import { loadoutSearch } from '../../../src/formulation/loadout-search.js';
import { optimise } from '../../../src/formulation/optimise.js';
import type { Effort, SearchOutcome, Progress } from '../../../src/formulation/optimiser.js';
import { bankOf, boardOf, catalogueOf, pedalOf, settingOf, supplyOf } from '../../support/builders.js';
import { hardBoards } from './hard-boards.js';
import { expectTrue, questionFor, type Asked } from './second-opinion.js';

const noHurry = { remainingMs: () => Infinity };

const run = (asked: Asked, effort: Partial<Effort> = {}): Promise<SearchOutcome> =>
  optimise(questionFor(asked), { ...noHurry, ...effort });

const nine = [settingOf(9, 100)];
const pedalsOf = (...draws: readonly number[]) => draws.map((draw, index) => pedalOf(`pedal-${index}`, draw));
const single = supplyOf('single', 10, [bankOf(1, nine)]);
const whole = (of: Asked['of']): Asked => ({ of, aim: 'cost', partial: false });

/** Loadouts prove this at once: two units for 20 euros. */
const easy = whole({ board: boardOf(pedalsOf(50, 60)), catalogue: catalogueOf([single]) });
const easyTruth = [2000, 2, 0, 0];
const impossible = whole({ board: boardOf(pedalsOf(50, 60)), catalogue: catalogueOf([{ ...single, stock: 1 }]) });

/** One on which the search by loadouts gets stuck. @throws Error when there is none any more: then find another. */
async function stuckBoard(): Promise<(typeof hardBoards)[number]> {
  for (const board of hardBoards) {
    const outcome = await loadoutSearch(questionFor(board.asked), noHurry);
    if (outcome.kind === 'stopped') return board;
  }
  throw new Error('no board is hard for loadouts any more');
}

describe('the search by loadouts', () => {
  it('proves by tags what is soon done', async () => {
    const outcome = await run(easy);
    expectTrue(outcome, easyTruth, easy);
    expect(outcome).toMatchObject({ kind: 'proven', evidence: { kind: 'tags' }, proof: null });
    expect(await run(impossible)).toEqual({ kind: 'impossible' });
  });

  it('writes its proof down', async () => {
    const outcome = await run(easy, { proof: true });
    expect(outcome).toMatchObject({
      kind: 'proven',
      evidence: { kind: 'tags' },
      proof: [{ tiers: expect.any(Array) as [] }],
    });
  });
});

describe('where it gets stuck', () => {
  it.each(hardBoards)('the best plan is proven all the same: $what', async ({ asked, truth }) => {
    const outcome = await run(asked);
    expect(outcome.kind).toBe('proven');
    expectTrue(outcome, truth, asked);
  });

  it.each([false, true])('the question is divided, without a proof to write down; asked for one: %s', async (proof) => {
    const { asked, truth } = await stuckBoard();
    const outcome = await run(asked, { proof });
    expectTrue(outcome, truth, asked);
    if (outcome.kind !== 'proven') throw new Error('there is a plan');
    expect(outcome.proof).toBeNull();
    expect(outcome.evidence.cases).toBeGreaterThan(0);
  });

  it('and the time is over on the way, what is known is the answer, whenever that is', async () => {
    const { asked, truth } = await stuckBoard();
    const seen = new Set<string>();
    for (let most = 0; most < 160; most += 8) {
      let times = 0;
      const outcome = await run(asked, { remainingMs: () => ((times += 1) > most ? 0 : 60_000) });
      expectTrue(outcome, truth, asked);
      seen.add(outcome.kind);
    }
    expect([...seen].sort()).toEqual(['proven', 'stopped']);
  });
});

describe('the end comes', () => {
  it.each<[string, Partial<Effort>]>([
    ['no millisecond is left', { remainingMs: () => 0 }],
    ['it is cancelled beforehand', { signal: AbortSignal.abort() }],
  ])('at once where %s', async (_, effort) => {
    for (const proof of [false, true]) {
      const outcome = await run(easy, { proof, ...effort });
      expect(outcome.kind).toBe('stopped');
      expectTrue(outcome, easyTruth, easy);
    }
  });
});

describe('progress', () => {
  /** Of each tier in a row: values never rise, bounds never fall, and neither passes the truth. */
  function expectSteady(told: readonly Progress[], asked: Asked, truth: readonly number[]): void {
    const { tiers } = questionFor(asked);
    for (const [index, { tier, value, bound }] of told.entries()) {
      const best = tier === null ? NaN : (truth[tiers.indexOf(tier)] ?? NaN);
      expect(value ?? Infinity).toBeGreaterThanOrEqual(best);
      expect(bound ?? -Infinity).toBeLessThanOrEqual(best);
      const before = told[index - 1];
      if (before?.tier !== tier) continue;
      expect(value ?? Infinity).toBeLessThanOrEqual(before.value ?? Infinity);
      expect(bound ?? -Infinity).toBeGreaterThanOrEqual(before.bound ?? -Infinity);
    }
  }

  it.each(hardBoards)('is never lost where the question is divided: $what', async ({ asked, truth }) => {
    const told: Progress[] = [];
    await run(asked, { onProgress: (progress) => told.push(progress) });
    expect(told.length).toBeGreaterThan(0);
    expectSteady(told, asked, truth);
  });
});
