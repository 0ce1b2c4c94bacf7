import type { Answer } from '../src/planning/answer.js';
import { wake, type EngineSet } from './engine-sets.js';
import { instance, type InstanceShape } from './instances.js';
import type { EngineSetName } from './set-names.js';
import type { CappedShape } from './shapes.js';
import { compared, judge, type Verdict } from './verdict.js';

/** One instance solved once by one set of engines. */
export type Solve = {
  readonly shape: InstanceShape;
  readonly set: EngineSetName;
  /** How long it was allowed to take. */
  readonly capMs: number;
  /** From the question to the audited plan. */
  readonly elapsedMs: number;
  /** How much of it passed while an engine was at work. */
  readonly enginesMs: number;
  /** How many questions the engines were asked. */
  readonly questions: number;
  readonly verdict: Verdict;
  /** What a proof rests on: the tags of loadouts, or engines that agree on the compact program; null without a proof. */
  readonly proofBy: 'tags' | 'agreement' | null;
};

/**
 * The instance solved by each set, one after the other, in an order that turns with the seed so that no set is always
 * the first. The answers are judged by themselves and against each other before anyone looks at the times.
 */
export async function measure(question: CappedShape, sets: readonly EngineSet[]): Promise<readonly Solve[]> {
  const { shape } = question;
  const turn = shape.seed % Math.max(1, sets.length);
  const solves: Solve[] = [];
  for (const set of [...sets.slice(turn), ...sets.slice(0, turn)]) solves.push(await solveOnce(question, set));
  const { policy } = instance(shape).board;
  const verdicts = compared(
    solves.map(({ verdict }) => verdict),
    policy,
  );
  return solves.map((solve, index) => ({ ...solve, verdict: verdicts[index] ?? solve.verdict }));
}

/** One solve with engines that are awake. */
async function solveOnce({ shape, capMs }: CappedShape, set: EngineSet): Promise<Solve> {
  const { board, catalogue } = instance(shape);
  await wake(set);
  const before = set.meter.reading();
  const started = performance.now();
  const elapsed = (): number => performance.now() - started;
  const [answer, fault] = await set
    .answer(board, catalogue, () => capMs - elapsed())
    .then(
      (value) => [value, ''] as const,
      (error: unknown) => [null, String(error)] as const,
    );
  const elapsedMs = elapsed();
  const after = set.meter.reading();
  return {
    shape,
    set: set.name,
    capMs,
    elapsedMs,
    enginesMs: after.busyMs - before.busyMs,
    questions: after.questions - before.questions,
    verdict: answer === null ? { kind: 'wrong', fault: `throws ${fault}` } : judge(answer, board, catalogue),
    proofBy: proofOf(answer),
  };
}

const proofOf = (answer: Answer | null): Solve['proofBy'] =>
  answer?.kind === 'plan' && answer.gap === null ? (answer.evidence?.kind ?? 'agreement') : null;
