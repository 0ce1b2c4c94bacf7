import { describe, expect, it } from 'vitest';

import type { Engine } from '../../../solver/engines/engine.js';
import type { Engines } from '../../../solver/engines/engines.js';
import { loadoutSearch } from '../../../src/formulation/loadout-search.js';
import { optimise } from '../../../src/formulation/optimise.js';
import type { Effort, SearchOutcome, Progress } from '../../../src/formulation/optimiser.js';
import {
  bankOf,
  boardOf,
  catalogueOf,
  euros,
  partOf,
  pedalOf,
  policyOf,
  settingOf,
  supplyOf,
} from '../../support/builders.js';
import { enginesInThreads } from '../../support/engines.js';
import { silent } from '../../support/liars.js';
import { hardBoards } from './hard-boards.js';
import { expectTrue, questionFor, type Asked } from './second-opinion.js';

const honest = enginesInThreads();

/** Engines that count how often they are asked, before the change is made to them. */
function counted(change: (engine: Engine) => Engine = (engine) => engine): { engines: Engines; asked: () => number } {
  let asked = 0;
  const counting = (engine: Engine): Engine => {
    const changed = change(engine);
    return {
      ...changed,
      solve: (...given) => {
        asked += 1;
        return changed.solve(...given);
      },
    };
  };
  const { trusted, second, twin } = honest;
  return {
    engines: { trusted: counting(trusted), second: counting(second), twin: counting(twin) },
    asked: () => asked,
  };
}

/** Answers nothing, and has no bound either. */
const broken = ({ name, close }: Engine): Engine => ({
  name,
  solve: () => Promise.reject(new Error('out of order')),
  close: () => close(),
});

const noHurry = { remainingMs: () => Infinity };

const run = (asked: Asked, effort: Partial<Effort> & Pick<Effort, 'engines'>): Promise<SearchOutcome> =>
  optimise(questionFor(asked), { ...noHurry, ...effort });

const nine = [settingOf(9, 100)];
const pedalsOf = (...draws: readonly number[]) => draws.map((draw, index) => pedalOf(`pedal-${index}`, draw));
const single = supplyOf('single', 10, [bankOf(1, nine)]);
const whole = (of: Asked['of']): Asked => ({ of, aim: 'cost', partial: false });

/** Loadouts prove this at once: two units for 20 euros. */
const easy = whole({ board: boardOf(pedalsOf(50, 60)), catalogue: catalogueOf([single]) });
const easyTruth = [2000, 2, 0, 0];
const impossible = whole({ board: boardOf(pedalsOf(50, 60)), catalogue: catalogueOf([{ ...single, stock: 1 }]) });

/** Some rounds of work: pedals in steps on three sorts of supplies, chains on all of them, and money for no more. */
const long = whole({
  board: boardOf(pedalsOf(11, 17, 23, 29, 31, 37, 41, 43), { policy: policyOf({ budget: euros(70) }) }),
  catalogue: catalogueOf(
    [
      single,
      supplyOf('two', 17, [bankOf(2, nine)]),
      supplyOf('three', 23, [bankOf(3, [settingOf(9, 60)], { isolated: false })]),
    ],
    [partOf('pair', 1, { kind: 'chain', tails: 2 }), partOf('fan', 3, { kind: 'chain', tails: 4 })],
  ),
});

/** One on which loadouts by themselves come to no end. @throws Error when there is none any more: then find another. */
async function stuckBoard(): Promise<(typeof hardBoards)[number]> {
  for (const board of hardBoards) {
    const outcome = await loadoutSearch(questionFor(board.asked), { engines: honest, ...noHurry });
    if (outcome.kind === 'stopped') return board;
  }
  throw new Error('no board is hard for loadouts any more');
}

describe('the method that is asked for', () => {
  it('is loadouts, which ask no engine where they are soon done', async () => {
    for (const method of ['loadouts', undefined] as const) {
      const { engines, asked } = counted();
      const outcome = await run(easy, { engines, method });
      expectTrue(outcome, easyTruth, easy);
      expect(outcome).toMatchObject({ kind: 'proven', evidence: { kind: 'tags' }, proof: null });
      expect(await run(impossible, { engines, method })).toEqual({ kind: 'impossible' });
      expect(asked()).toBe(0);
    }
  });

  it('is the compact program, on which engines agree', async () => {
    const { engines, asked } = counted();
    const outcome = await run(easy, { engines, method: 'compact' });
    expectTrue(outcome, easyTruth, easy);
    expect(outcome).toMatchObject({ kind: 'proven', evidence: { kind: 'agreement' }, proof: null });
    expect(await run(impossible, { engines, method: 'compact' })).toEqual({ kind: 'impossible' });
    expect(asked()).toBeGreaterThan(0);
  });

  it('writes a proof down where loadouts have one', async () => {
    const { engines, asked } = counted();
    const outcome = await run(easy, { engines, proof: true });
    expect(outcome).toMatchObject({
      kind: 'proven',
      evidence: { kind: 'tags' },
      proof: [{ tiers: expect.any(Array) as [] }],
    });
    expect(asked()).toBe(0);
  });
});

describe('where loadouts get stuck', () => {
  it.each(hardBoards)('the best plan is found all the same: $what', async ({ asked, truth }) => {
    const outcome = await run(asked, { engines: honest });
    expect(outcome.kind).toBe('proven');
    expectTrue(outcome, truth, asked);
  });

  it.each([false, true])(
    'the compact program takes over, without a proof to write down; asked for one: %s',
    async (proof) => {
      const { asked, truth } = await stuckBoard();
      const { engines, asked: times } = counted();
      const outcome = await run(asked, { engines, proof });
      expectTrue(outcome, truth, asked);
      expect(outcome).toMatchObject({ kind: 'proven', evidence: { kind: 'agreement' }, proof: null });
      expect(times()).toBeGreaterThan(0);
    },
  );

  it('and engines are out of order, what loadouts know is the answer', async () => {
    const { asked, truth } = await stuckBoard();
    const alone = await loadoutSearch(questionFor(asked), { engines: honest, ...noHurry });
    const outcome = await run(asked, { engines: counted(broken).engines });
    expectTrue(outcome, truth, asked);
    if (outcome.kind !== 'stopped' || alone.kind !== 'stopped') throw new Error('nobody could prove this');
    expect(outcome.candidates.length).toBeGreaterThanOrEqual(alone.candidates.length);
    expect(outcome.open?.tier).toBe(alone.open?.tier);
    expect(outcome.open?.bound ?? -Infinity).toBeGreaterThanOrEqual(alone.open?.bound ?? -Infinity);
  });
});

describe('the end comes', () => {
  it.each<[string, Partial<Effort>]>([
    ['no millisecond is left', { remainingMs: () => 0 }],
    ['it is cancelled beforehand', { signal: AbortSignal.abort() }],
  ])('without a question to an engine where %s', async (_, effort) => {
    for (const proof of [false, true]) {
      const { engines, asked } = counted();
      const outcome = await run(easy, { engines, proof, ...effort });
      expect(outcome.kind).toBe('stopped');
      expectTrue(outcome, easyTruth, easy);
      expect(asked()).toBe(0);
    }
  });

  it('when it is cancelled, whoever is at work', async () => {
    const { asked, truth } = await stuckBoard();
    const { engines, asked: times } = counted(silent);
    const controller = new AbortController();
    const waiting = setInterval(() => {
      if (times() > 0) controller.abort();
    }, 20);
    const outcome = await run(asked, { engines, signal: controller.signal });
    clearInterval(waiting);
    expect([outcome.kind, times() > 0]).toEqual(['stopped', true]);
    expectTrue(outcome, truth, asked);
  });

  it('when the time is over, even if an engine never answers', async () => {
    const { asked, truth } = await stuckBoard();
    const end = performance.now() + 200;
    const outcome = await run(asked, { engines: counted(silent).engines, remainingMs: () => end - performance.now() });
    expect(outcome.kind).toBe('stopped');
    expectTrue(outcome, truth, asked);
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

  it.each(hardBoards)('is never lost when the compact program takes over: $what', async ({ asked, truth }) => {
    const told: Progress[] = [];
    await run(asked, { engines: honest, onProgress: (progress) => told.push(progress) });
    expect(told.length).toBeGreaterThan(0);
    expectSteady(told, asked, truth);
  });

  it('of both at work is told as that of one, and the first to be done ends both', async () => {
    const { engines, asked } = counted();
    const told: Progress[] = [];
    // Whoever listens holds the loadouts up for longer than they have a head start, and the engines not at all.
    const onProgress = (progress: Progress): void => {
      const end = performance.now() + (told.length === 0 ? 1_700 : 100);
      told.push(progress);
      while (performance.now() < end);
    };
    const outcome = await run(long, { engines, onProgress });
    if (outcome.kind !== 'proven') throw new Error('there is a plan');
    const truth = [...outcome.values.values()];
    expectTrue(outcome, truth, long);
    expectTrue(await run(long, { engines: honest, method: 'compact' }), truth, long);
    expect(asked()).toBeGreaterThan(0);
    expect(told.length).toBeGreaterThan(1);
    expectSteady(told, long, truth);
  });
});
