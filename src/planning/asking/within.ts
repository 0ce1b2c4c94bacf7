import { webTiming } from '../../../solver/timing.js';
import type { Effort } from '../../formulation/optimiser.js';

/** Work that is told to stop after so many milliseconds, or when the caller's own patience ends. */
export async function within<Result>(
  ms: number,
  effort: Effort,
  work: (effort: Effort) => Promise<Result>,
): Promise<Result> {
  const [enough, done] = [new AbortController(), new AbortController()];
  const { later } = effort.timing ?? webTiming;
  void later(ms, done.signal).then((isPassed) => {
    if (isPassed) enough.abort();
  });
  const signal = effort.signal === undefined ? enough.signal : AbortSignal.any([effort.signal, enough.signal]);
  try {
    return await work({ ...effort, signal });
  } finally {
    done.abort();
  }
}

/** The same where Infinity is no limit. */
export const atMost = async <Result>(
  ms: number,
  effort: Effort,
  work: (effort: Effort) => Promise<Result>,
): Promise<Result> => (ms === Infinity ? work(effort) : within(ms, effort, work));
