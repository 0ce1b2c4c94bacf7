import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

import type { Answer } from '../../src/planning/answer.js';
import { megabytesText } from '../cells.js';
import { instance, type InstanceShape } from '../instances.js';
import { progress } from '../output.js';
import { weighedSets, type EngineSetName } from '../set-names.js';
import { shapeText, type CappedShape } from '../shapes.js';
import { judge, type Verdict } from '../verdict.js';

/** One instance solved once in a process of its own, from nothing. */
export type Weighing = {
  readonly shape: InstanceShape;
  readonly set: EngineSetName;
  /** The most memory that the process held at any time, its threads included: its largest resident set. */
  readonly peakBytes: number;
  /** From the question to the audited plan, the start of engines included. */
  readonly elapsedMs: number;
  readonly verdict: Verdict;
};

/** Every instance solved by every set that can be weighed. */
export async function weighAll(
  questions: readonly CappedShape[],
  names: readonly EngineSetName[],
): Promise<readonly Weighing[]> {
  const weighings: Weighing[] = [];
  for (const { shape, capMs } of questions) {
    for (const set of weighedSets.filter((name) => names.includes(name))) {
      const weighing = await weigh(shape, set, capMs);
      progress(`${shapeText(shape)}: ${set} ${weighing.verdict.kind}, peak ${megabytesText(weighing.peakBytes)} MB`);
      weighings.push(weighing);
    }
  }
  return weighings;
}

/** One instance solved by one set. @throws Error when the process ends without a word. */
export async function weigh(shape: InstanceShape, set: EngineSetName, capMs: number): Promise<Weighing> {
  const { board, catalogue } = instance(shape);
  const { answer, ...weight } = await inChild({ board, catalogue, rival: set !== 'loadouts', capMs });
  if (answer === null) throw new Error('the process has not solved what it was given');
  return { shape, set, ...weight, verdict: judge(answer, board, catalogue) };
}

/** What a process weighs that has loaded boardfeed and solves nothing, in bytes. */
export const emptyBytes = async (): Promise<number> => (await inChild(null)).peakBytes;

type Report = { readonly answer: Answer | null; readonly elapsedMs: number; readonly peakBytes: number };

async function inChild(question: object | null): Promise<Report> {
  // Without the loader that this process was started with: the child runs the compiled product and nothing else.
  const child = fork(fileURLToPath(new URL('launcher.mjs', import.meta.url)), {
    execArgv: [],
    serialization: 'advanced',
  });
  return new Promise((resolve, reject) => {
    child.on('message', (report) => resolve(report as Report));
    child.on('error', reject);
    // Comes after the last message; what the process had to say is on standard error.
    child.on('disconnect', () => reject(new Error('a solving process ended without an answer')));
    child.send({ question });
  });
}
