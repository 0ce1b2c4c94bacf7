/** How much of the random cases a run tries: a quarter, or what `RUNS` says. `npm run nightly` tries all of them. */
const part = Number(process.env['RUNS'] ?? 0.25);

/** The part of so many cases, or of how often something is to be met in them, that this run tries. */
export const share = (all: number): number => Math.ceil(all * part);

/**
 * What fast-check is told for a test with so many cases in a full run. A part is the same in every run, so that what a test
 * counts in it is not left to luck: `SEED` draws another. All of them are drawn anew each time.
 */
export const trying = (all: number, seed = 1): { readonly numRuns: number; readonly seed?: number } => ({
  numRuns: share(all),
  ...(part < 1 ? { seed: Number(process.env['SEED'] ?? seed) } : {}),
});

/**
 * Likewise where a case may be passed over with `fc.pre`, since a search with a counted limit got stuck in it: others are drawn
 * in place of one in fifty, and more than these fail the test.
 */
export const tryingMost = (all: number) => ({ ...trying(all), maxSkipsPerRun: 0.02 });

/**
 * Likewise for a test that has to meet with what is rare: a run of a part looks at the cases after its own, too, as long as
 * something is still to be met with, so that it does not hang on luck. The property asks first whether it has `enough`.
 */
export function tryingUntil(all: number, isMet: () => boolean, seed?: number) {
  let tried = 0;
  return {
    enough: (): boolean => (tried += 1) > share(all) && isMet(),
    parameters: { ...trying(all, seed), numRuns: Math.max(all, share(all)) },
  };
}
