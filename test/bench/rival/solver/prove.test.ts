import fc from 'fast-check';
import solverModule from 'javascript-lp-solver';
import { describe, expect, test } from 'vitest';

import type { Engine } from '../../../../solver/engines/engine.js';
import type { DualEngine, Engines } from '../../../../bench/rival/engines/engines.js';
import type { CompactOutcome } from '../../../../bench/rival/solver/outcome.js';
import type { Objective, Program } from '../../../../solver/program.js';
import { webTiming, type Timing } from '../../../../solver/timing.js';
import { prove } from '../../../../bench/rival/solver/prove.js';
import type { CompactProgress } from '../../../../bench/rival/solver/standing.js';
import { sharedEngines } from '../../../support/engines.js';
import { liars, silent, silentAboutDuals } from '../../../support/liars.js';
import {
  isSolution,
  knottyProgram,
  leastValue,
  smallProgram,
  solutionsOf,
  withoutDuals,
  worth,
  type SmallProgram,
} from '../../../solver/small-programs.js';
import { share, trying } from '../../../support/runs.js';

const { trusted, second } = sharedEngines();
const honest = { trusted, second };

const plenty = () => Infinity;
const anyProgram = fc.oneof({ arbitrary: smallProgram, weight: 1 }, { arbitrary: knottyProgram, weight: 3 });
const proofs = new Map<string, number>();

/** Right, or stopped with what is in hand: a true solution of that value and a true bound. Returns the kind. */
function expectSound(outcome: CompactOutcome, small: SmallProgram): CompactOutcome['kind'] {
  const least = leastValue(small);
  if (outcome.kind !== 'stopped') proofs.set(outcome.proof.kind, (proofs.get(outcome.proof.kind) ?? 0) + 1);
  if (outcome.kind === 'infeasible') {
    expect(least).toBeNull();
    return outcome.kind;
  }
  if (outcome.kind === 'optimal') expect(outcome.value).toBe(least);
  if (outcome.point !== null) {
    expect(solutionsOf(small.program).map(String)).toContain(String(outcome.point));
    expect(outcome.value).toBe(worth(small.objective, outcome.point));
  }
  if (outcome.kind === 'stopped' && least !== null) expect(outcome.bound).toBeLessThanOrEqual(least);
  return outcome.kind;
}

describe('honest engines', () => {
  const setups: readonly (readonly [string, Engines])[] = [
    ['both', honest],
    ['both, without duals', { ...honest, trusted: withoutDuals(honest.trusted) }],
    ['the trusted one alone', { ...honest, second: null }],
    ['the trusted one alone, without duals', { trusted: withoutDuals(honest.trusted), second: null }],
  ];

  test.each(setups)('%s: the outcome equals brute force', async (_, engines) => {
    const counted = { optimal: 0, infeasible: 0, stopped: 0 };
    await fc.assert(
      fc.asyncProperty(anyProgram, async (small) => {
        const outcome = await prove(small.program, small.objective, { engines, remainingMs: plenty });
        counted[expectSound(outcome, small)] += 1;
      }),
      trying(300),
    );
    expect(counted.optimal).toBeGreaterThan(share(100));
    expect(counted.infeasible).toBeGreaterThan(share(30));
    // The second engine may be wrong on such programs, but then the trusted one's second run decides.
    expect(counted.stopped).toBe(0);
  });

  test('every kind of proof has been met with', () => {
    expect([...proofs.keys()].sort()).toEqual(['agreement', 'bound', 'row', 'second run']);
  });

  test('what remains holds every solution of the optimal value, and the point itself', async () => {
    let solutions = 0;
    await fc.assert(
      fc.asyncProperty(anyProgram, async (small) => {
        const { program, objective } = small;
        const outcome = await prove(program, objective, { engines: honest, remainingMs: plenty });
        if (outcome.kind !== 'optimal') return;
        const best = solutionsOf(program).filter((point) => worth(objective, point) === outcome.value);
        solutions += best.length;
        const remaining = solutionsOf(outcome.remaining).map(String);
        expect(remaining).toEqual(expect.arrayContaining(best.map(String)));
      }),
      trying(300),
    );
    expect(solutions).toBeGreaterThan(share(150));
  });
});

/** Two of three columns in each row: the relaxation's optimum is 5, the integer one 6. */
const triangle: SmallProgram = {
  program: {
    columns: [1, 1, 1].map((upper, index) => ({ name: `column ${index}`, upper })),
    rows: [
      [0, 1],
      [1, 2],
      [0, 2],
    ].map((pair) => ({
      name: 'pair',
      terms: pair.map((column) => ({ column, coefficient: 1 })),
      lower: 1,
      upper: null,
    })),
  },
  objective: {
    name: 'cost',
    terms: [3, 3, 4].map((coefficient, column) => ({ column, coefficient })),
    constant: 0,
  },
};

describe('liars', () => {
  /** Counts the questions that an engine gets. */
  const counting = (engine: DualEngine, count: () => void): DualEngine => ({
    ...engine,
    solve: async (...question) => {
      count();
      return engine.solve(...question);
    },
  });

  test.each(liars.map((liar, index) => [liar(honest.trusted).name, liar, index] as const))(
    'one that %s never makes the outcome wrong',
    async (_, liar, index) => {
      let asked = 0;
      const liarOf = (engine: DualEngine) => counting(liar(engine), () => (asked += 1));
      const setups = (trusted: DualEngine): readonly Engines[] => [
        { trusted: liarOf(trusted), second: honest.second },
        { trusted, second: liarOf(honest.second) },
        { trusted: liarOf(trusted), second: null },
      ];
      await fc.assert(
        fc.asyncProperty(anyProgram, fc.nat(2), fc.boolean(), async (small, setup, duals) => {
          const engines = setups(duals ? honest.trusted : withoutDuals(honest.trusted))[setup] ?? honest;
          expectSound(await prove(small.program, small.objective, { engines, remainingMs: plenty }), small);
        }),
        { ...trying(300), seed: index },
      );
      expect(asked).toBeGreaterThan(share(100));
    },
  );

  test('a second engine that lies does not keep the trusted one from a proof', async () => {
    let proven = 0;
    await fc.assert(
      fc.asyncProperty(anyProgram, fc.constantFrom(...liars), async (small, liar) => {
        const engines = { trusted: withoutDuals(honest.trusted), second: liar(honest.second) };
        const outcome = await prove(small.program, small.objective, { engines, remainingMs: plenty });
        proven += expectSound(outcome, small) === 'stopped' ? 0 : 1;
      }),
      trying(300),
    );
    expect(proven).toBe(share(300));
  });

  test('an engine that never answers is not waited for', async () => {
    const search = async (engines: Engines, remainingMs: () => number) =>
      prove(triangle.program, triangle.objective, { engines, remainingMs });
    expect(await search({ ...honest, second: silent(honest.second) }, plenty)).toMatchObject({
      kind: 'optimal',
      value: 6,
      proof: { kind: 'second run' },
    });
    expect(await search({ ...honest, trusted: silent(honest.trusted) }, () => 50)).toMatchObject({ kind: 'stopped' });
  });

  test('an engine that says nothing of duals is waited for no longer than for any answer', async () => {
    let giveUp = (): unknown => expect.unreachable('nobody waits');
    const later: Timing['later'] = async (_, signal) =>
      new Promise((resolve) => {
        giveUp = () => resolve(true);
        signal.addEventListener('abort', () => resolve(false));
      });
    const mute = silentAboutDuals(honest.trusted);
    const relaxationDuals: DualEngine['relaxationDuals'] = async (...question) => {
      giveUp();
      return mute.relaxationDuals?.(...question) ?? expect.unreachable();
    };
    const options = { engines: { ...honest, trusted: { ...mute, relaxationDuals } }, timing: { ...webTiming, later } };
    expect(await prove(triangle.program, triangle.objective, { ...options, remainingMs: plenty })).toMatchObject({
      kind: 'optimal',
      value: 6,
    });
  });
});

test('a case that javascript-lp-solver calls infeasible', async () => {
  const rows = [
    { coefficients: [0, 4, -100_000], lower: null, upper: -199_996 },
    { coefficients: [1, 0, 4], lower: 9, upper: 9 },
    { coefficients: [1, 0, 0], lower: 1, upper: 1 },
    { coefficients: [-5, 1, -100_000], lower: -200_004, upper: -200_004 },
  ];
  // The types say CommonJS, where the default export would be one step further in.
  const solver = solverModule as unknown as typeof solverModule.default;
  const said = solver.Solve({
    optimize: 'cost',
    opType: 'min',
    constraints: { a: { max: -199_996 }, b: { equal: 9 }, c: { equal: 1 }, d: { equal: -200_004 } },
    variables: {
      x: { b: 1, c: 1, d: -5 },
      y: { cost: 1, a: 4, d: 1 },
      z: { a: -100_000, b: 4, d: -100_000 },
    },
    ints: { x: 1, y: 1, z: 1 },
  });
  expect(said).toMatchObject({ feasible: false });
  const program: Program = {
    columns: ['x', 'y', 'z'].map((name) => ({ name, upper: 9 })),
    rows: rows.map(({ coefficients, lower, upper }, index) => ({
      name: `row ${index}`,
      terms: coefficients.map((coefficient, column) => ({ column, coefficient })),
      lower,
      upper,
    })),
  };
  const objective: Objective = { name: 'cost', terms: [{ column: 1, coefficient: 1 }], constant: 0 };
  expect(isSolution(program, [1, 1, 2])).toBe(true);
  const outcome = await prove(program, objective, { engines: honest, remainingMs: plenty });
  expect(outcome).toMatchObject({ kind: 'optimal', value: 1, point: [1, 1, 2] });
});

describe('the ends of a search', () => {
  const program: Program = {
    columns: [{ name: 'x', upper: 9 }],
    rows: [{ name: 'least', terms: [{ column: 0, coefficient: 2 }], lower: 7, upper: null }],
  };
  const objective: Objective = { name: 'cost', terms: [{ column: 0, coefficient: 10 }], constant: 1 };

  test('without time it stops with what is known', async () => {
    const options = { engines: honest, remainingMs: () => 0 };
    const nothing = { kind: 'stopped', reason: 'time', point: null, value: null, bound: 1 };
    expect(await prove(program, objective, options)).toEqual(nothing);
    const inHand = { ...nothing, point: [5], value: 51 };
    expect(await prove(program, objective, { ...options, known: [5] })).toEqual(inHand);
    expect(await prove(program, objective, { ...options, known: [3] })).toEqual(nothing);
  });

  test('when it is cancelled it says so', async () => {
    const options = { engines: honest, remainingMs: plenty, signal: AbortSignal.abort() };
    expect(await prove(program, objective, options)).toMatchObject({ kind: 'stopped', reason: 'cancelled' });
  });

  test('cancelled under way it does not wait for the engines', async () => {
    const controller = new AbortController();
    const engines = { trusted: silent(withoutDuals(honest.trusted)), second: silent(honest.second) };
    const options = { engines, remainingMs: plenty, signal: controller.signal, known: [9] };
    const outcome = prove(program, objective, options);
    setTimeout(() => controller.abort(), 50);
    expect(await outcome).toMatchObject({ kind: 'stopped', reason: 'cancelled', point: [9], value: 91 });
  });

  test('an engine whose time ran out has its point checked and kept, and no say beyond that', async () => {
    const endingWith = (point: readonly number[] | null): Engine => ({
      ...withoutDuals(honest.trusted),
      solve: async () => Promise.resolve({ kind: 'stopped', point }),
    });
    const outcome = (point: readonly number[] | null) =>
      prove(program, objective, { engines: { trusted: endingWith(point), second: null }, remainingMs: plenty });
    const nothing = { kind: 'stopped', reason: 'time', point: null, value: null, bound: 1 };
    expect(await outcome([5])).toEqual({ ...nothing, point: [5], value: 51 });
    expect(await outcome([3])).toEqual(nothing);
    expect(await outcome(null)).toEqual(nothing);
  });

  test('a known point that meets the bound needs no engine', async () => {
    const broken = { ...honest.trusted, solve: () => expect.unreachable('an engine was asked') };
    const options = { engines: { trusted: broken, second: broken }, remainingMs: plenty, known: [4], lowerBound: 41 };
    const proof = { kind: 'bound' };
    expect(await prove(program, objective, options)).toMatchObject({ kind: 'optimal', value: 41, proof });
  });

  test('progress is told as it is made', async () => {
    const told: CompactProgress[] = [];
    const onProgress = (progress: CompactProgress) => told.push(progress);
    await prove(program, objective, { engines: honest, remainingMs: plenty, known: [9], onProgress });
    expect(told[0]).toEqual({ value: 91, bound: 1 });
    expect(told.at(-1)).toEqual({ value: 41, bound: 41 });
  });

  test('a malformed program is refused', async () => {
    const malformed = { ...program, columns: [{ name: 'x', upper: -1 }] };
    const options = { engines: honest, remainingMs: plenty };
    await expect(prove(malformed, objective, options)).rejects.toThrow(RangeError);
  });
});
