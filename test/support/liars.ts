/** Engines that are wrong in every way that one can be wrong, for use in place of an honest one. */
import type { DualEngine } from '../../bench/rival/engines/engines.js';
import type { EngineClaim, Engine } from '../../solver/engines/engine.js';
import type { Objective, ProgramPoint, Program } from '../../solver/program.js';

type Solve = Engine['solve'];

/** Makes a liar out of an honest engine. */
export type Liar = (honest: DualEngine) => DualEngine;

const withSolve =
  (name: string, solve: (honest: Engine) => Solve): Liar =>
  (honest) => ({ ...honest, name, solve: solve(honest) });

/** Changes what the honest engine says; other claims than the one it changes stay true. */
const changing = (name: string, change: (claim: EngineClaim, program: Program) => unknown): Liar =>
  withSolve(
    name,
    (honest) => async (program, objective, limits) =>
      change(await honest.solve(program, objective, limits), program) as EngineClaim,
  );

const changingPoints = (name: string, change: (point: ProgramPoint, program: Program) => readonly unknown[]): Liar =>
  changing(name, (claim, program) =>
    claim.kind === 'optimal' ? { kind: 'optimal', point: change(claim.point, program) } : claim,
  );

/** Calls a solution optimal that is worse than the optimum by at least a step, where there is one. */
const worse: Liar = withSolve(
  'says that a worse solution is optimal',
  (honest) => async (program, objective, limits) => {
    const truth = await honest.solve(program, objective, limits);
    if (truth.kind !== 'optimal') return truth;
    const most = objective.terms.reduce((total, term) => total + term.coefficient * (truth.point[term.column] ?? 0), 0);
    const worseProgram = { ...program, rows: [...program.rows, atLeast(objective, most + 1)] };
    const other = await honest.solve(worseProgram, objective, limits);
    return other.kind === 'optimal' ? other : truth;
  },
);

const atLeast = ({ terms }: Objective, lower: number) => ({ name: 'worse', terms, lower, upper: null });

const never = new Promise<never>(() => undefined);

/** Engines that answer, but not the truth; a solution that is none, or a bound that is none. */
export const liars: readonly Liar[] = [
  worse,
  changing('calls everything infeasible', () => ({ kind: 'infeasible' })),
  changing('calls the solvable infeasible and the infeasible solvable', (claim, program) =>
    claim.kind === 'infeasible' ? { kind: 'optimal', point: program.columns.map(() => 0) } : { kind: 'infeasible' },
  ),
  withSolve('calls every other program infeasible', (honest) => {
    let asked = 0;
    return async (...question) => ((asked += 1) % 2 === 1 ? { kind: 'infeasible' } : honest.solve(...question));
  }),
  changing('calls the point of zeros optimal', (_, program) => ({
    kind: 'optimal',
    point: program.columns.map(() => 0),
  })),
  changingPoints('gives fractional values', (point) => point.map((value) => value / 2)),
  changingPoints('gives values out of bounds', (point, { columns }) =>
    point.map((value, index) => (index === 0 ? (columns[index]?.upper ?? 0) + 1 : value)),
  ),
  changingPoints('gives negative values', (point) => point.map((value) => value - 1)),
  changingPoints('gives no numbers', (point) => point.map(() => Number.NaN)),
  changingPoints('gives words', (point) => point.map(String)),
  changingPoints('gives too few values', (point) => point.slice(1)),
  changingPoints('gives too many values', (point) => [...point, 1]),
  changing('answers nonsense', () => ({ kind: 'splendid', point: 42 })),
  changing('answers nothing', () => undefined),
  withSolve('throws at once', () => () => {
    throw new Error('out of order');
  }),
  withSolve('throws later', () => async () => Promise.reject(new Error('out of order'))),
  (honest) => ({
    ...honest,
    name: 'gives nonsense for duals',
    relaxationDuals: async (program) =>
      Promise.resolve(program.rows.map((_, index) => [Number.NaN, Infinity, 1e300, -7][index % 4] ?? 0)),
  }),
  (honest) => ({
    ...honest,
    name: 'gives duals that are far too high',
    relaxationDuals: async (program, objective, limits) =>
      ((await honest.relaxationDuals?.(program, objective, limits)) ?? []).map((dual) => dual * 3 + 1),
  }),
  (honest) => ({
    ...honest,
    name: 'throws when asked for duals',
    relaxationDuals: () => {
      throw new Error('out of order');
    },
  }),
];

/** Never answers; only the asker's own patience ends it. */
export const silent: Liar = withSolve('never answers', () => async () => never);

/** Never gives multipliers. */
export const silentAboutDuals: Liar = (honest) => ({
  ...honest,
  name: 'never gives duals',
  relaxationDuals: async () => never,
});

const moduleOf = (code: string): string => `data:text/javascript,${encodeURIComponent(code)}`;

/** Addresses of modules for a worker to load: each is an engine that cannot be relied on even to answer. */
export const liarModules = {
  /** Answers with the point of ones. */
  ones: moduleOf(`
    export const load = async () => ({
      solve: (program) => ({ kind: 'optimal', point: program.columns.map(() => 1) }),
    });`),
  loopsForever: moduleOf('export const load = async () => ({ solve: () => { for (;;); } });'),
  loopsWhileLoading: moduleOf('for (;;); export const load = async () => null;'),
  answersThenHangs: moduleOf(`
    export const load = async () => ({
      solve: (program) => {
        queueMicrotask(() => { for (;;); });
        return { kind: 'optimal', point: program.columns.map(() => 1) };
      },
    });`),
  throws: moduleOf(`export const load = async () => ({ solve: () => { throw new Error('out of order'); } });`),
  exits: moduleOf('export const load = async () => ({ solve: () => process.exit(0) });'),
  cannotBeSent: moduleOf('export const load = async () => ({ solve: () => ({ kind: () => 1 }) });'),
  hasNoEngine: moduleOf('export const answer = 42;'),
  prints: moduleOf(`
    export const load = async () => ({
      solve: () => { console.log('noise'); return { kind: 'infeasible' }; },
    });`),
} as const;
