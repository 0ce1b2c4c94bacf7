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
