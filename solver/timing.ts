/** How a search lets others have their turn, and how it waits. Handed in, for what costs least differs from place to place. */
export type Timing = {
  /** Gives timers, messages and whoever wants to stop the search their turn. */
  readonly pause: () => Promise<void>;
  /** A search pauses after so many milliseconds and the step that it is at; a pause takes longer than many a step. */
  readonly unpausedMs: number;
  /** Resolves to true after so many milliseconds, to false as soon as the signal says that nobody waits any more. */
  readonly later: (ms: number, signal: AbortSignal) => Promise<boolean>;
};

/** Pauses that are left out where the last one is no longer ago than that. */
export function pausesOf({ pause, unpausedMs }: Timing): () => Promise<void> {
  let last = performance.now();
  return async () => {
    if (performance.now() - last < unpausedMs) return;
    await pause();
    last = performance.now();
  };
}

/** By web standards alone, for browsers and their workers; right in Node, too. */
export const webTiming: Timing = {
  // A timer of no milliseconds would not do: after a few in a row browsers make each of them last four.
  pause: async () =>
    new Promise((resolve) => {
      const { port1, port2 } = new MessageChannel();
      const received = (): void => {
        port1.close();
        resolve();
      };
      port1.addEventListener('message', received, { once: true });
      port1.start();
      port2.postMessage(null);
    }),
  unpausedMs: 8,
  later: async (ms, signal) =>
    new Promise((resolve) => {
      if (signal.aborted) {
        resolve(false);
        return;
      }
      const cancelled = (): void => {
        clearTimeout(timer);
        resolve(false);
      };
      const timer = setTimeout(() => {
        signal.removeEventListener('abort', cancelled);
        resolve(true);
      }, ms);
      signal.addEventListener('abort', cancelled, { once: true });
    }),
};
