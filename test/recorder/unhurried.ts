import { syncBuiltinESMExports } from 'node:module';
import timers from 'node:timers/promises';

/** Timers take no more; a longer one would end at once. */
const longestMs = 2 ** 31 - 1;

/**
 * Makes every timer of this thread last so many times longer. The commands give up on parts of an answer after a second or
 * two; with others at work on the machine, what they answer would depend on them.
 */
export function unhurried(times: number): void {
  const longer = (ms: number | undefined): number => Math.min((ms ?? 0) * times, longestMs);
  const { setTimeout: plain } = globalThis;
  const slow = (work: (...given: unknown[]) => void, ms?: number, ...given: unknown[]): NodeJS.Timeout =>
    plain(work, longer(ms), ...given);
  globalThis.setTimeout = Object.assign(slow, plain);
  const { setTimeout: plainPromise } = timers;
  timers.setTimeout = (ms, value, options) => plainPromise(longer(ms), value, options);
  syncBuiltinESMExports();
}
