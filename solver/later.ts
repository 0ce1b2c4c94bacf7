import { setTimeout } from 'node:timers/promises';

/** Resolves to true after so many milliseconds, to false as soon as the signal says that nobody waits any more. */
export async function later(ms: number, signal: AbortSignal): Promise<boolean> {
  return setTimeout(ms, true, { signal, ref: false }).catch(() => false);
}
