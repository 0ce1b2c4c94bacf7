import { choose } from '../src/planning/choose.js';
import { wake, type EngineSet, type EngineSetName } from './engine-sets.js';
import { instance, type InstanceShape } from './instances.js';
import { compared, judge, type Verdict } from './verdict.js';

/** One instance solved once by one set of engines. */
export type Solve = {
  readonly shape: InstanceShape;
  readonly set: EngineSetName;
  /** From the question to the audited plan. */
  readonly elapsedMs: number;
  /** How much of it passed while an engine was at work. */
  readonly enginesMs: number;
  /** How many questions the engines were asked. */
  readonly questions: number;
  readonly verdict: Verdict;
};

/**
 * The instance solved by each set, one after the other, in an order that turns with the seed so that no set is always
 * the first. The answers are judged by themselves and against each other before anyone looks at the times.
 */
export async function measure(
  shape: InstanceShape,
  sets: readonly EngineSet[],
  capMs: number,
): Promise<readonly Solve[]> {
  const turn = shape.seed % Math.max(1, sets.length);
  const solves: Solve[] = [];
  for (const set of [...sets.slice(turn), ...sets.slice(0, turn)]) solves.push(await solveOnce(shape, set, capMs));
  const { policy } = instance(shape).board;
  const verdicts = compared(
    solves.map(({ verdict }) => verdict),
    policy,
  );
  return solves.map((solve, index) => ({ ...solve, verdict: verdicts[index] ?? solve.verdict }));
}

/** One solve with engines that are awake. */
async function solveOnce(shape: InstanceShape, set: EngineSet, capMs: number): Promise<Solve> {
  const { board, catalogue } = instance(shape);
  await wake(set.engines);
  const before = set.meter.reading();
  const started = performance.now();
  const elapsed = (): number => performance.now() - started;
  const answering = choose(board, catalogue, {
    aim: 'cost',
    engines: set.engines,
    method: set.method,
    remainingMs: () => capMs - elapsed(),
  });
  const [answer, fault] = await answering.then(
    (value) => [value, ''] as const,
    (error: unknown) => [null, String(error)] as const,
  );
  const elapsedMs = elapsed();
  const after = set.meter.reading();
  return {
    shape,
    set: set.name,
    elapsedMs,
    enginesMs: after.busyMs - before.busyMs,
    questions: after.questions - before.questions,
    verdict: answer === null ? { kind: 'wrong', fault: `throws ${fault}` } : judge(answer, board, catalogue),
  };
}
