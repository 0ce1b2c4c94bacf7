import { startEngineSet, type EngineSet } from './engine-sets.js';
import { chainProfiles } from './instances.js';
import { measure, type Solve } from './measure.js';
import { progress } from './output.js';
import type { EngineSetName } from './set-names.js';
import { shapeText, type CappedShape } from './shapes.js';

/** Every instance solved by every set that takes it on, by turns, once the sets are warm; tells how it is getting on. */
export async function solveAll(
  questions: readonly CappedShape[],
  names: readonly EngineSetName[],
): Promise<readonly Solve[]> {
  const sets = names.map(startEngineSet);
  try {
    await warmUp(sets);
    const solves: Solve[] = [];
    for (const [index, question] of questions.entries()) {
      const measured = await measure(question, sets);
      const times = measured.map(
        ({ set, elapsedMs, verdict }) => `${set} ${verdict.kind}, ${Math.round(elapsedMs)} ms`,
      );
      progress(`${index + 1}/${questions.length} ${shapeText(question.shape)}: ${times.join('; ')}`);
      solves.push(...measured);
    }
    return solves;
  } finally {
    await Promise.all(sets.map(async (set) => set.close()));
  }
}

/** So many for each profile of chains: most of what times fall by is over then. */
const warmUps = 20;

/**
 * Instances that are not counted, of a middling size: code is compiled while it runs, and better the more often it has run, which
 * shows in the first few dozen of every set.
 */
async function warmUp(sets: readonly EngineSet[]): Promise<void> {
  progress('instances that are not counted …');
  const size = { pedals: 12, supplies: 40 };
  for (let seed = 1_001; seed <= 1_000 + warmUps; seed += 1) {
    for (const chains of chainProfiles) await measure({ shape: { ...size, chains, seed }, capMs: 30_000 }, sets);
  }
}

export const nothingWrong = (solves: readonly Pick<Solve, 'verdict'>[]): boolean =>
  solves.every(({ verdict }) => verdict.kind !== 'wrong');
