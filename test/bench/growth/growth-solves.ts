import type { Solve } from '../../../bench/measure.js';
import { solveOf, unproven } from '../fake-solves.js';

const sizes = [5, 10, 20].map((pedals) => ({ pedals, supplies: 100 }));

/** What is asked for: one series of three sizes, one profile, both rivals. */
export const growthOptions = {
  sizes: sizes.map((size) => ({ ...size, seeds: [1, 2, 3], capMs: 1000 })),
  chains: ['none'],
  engines: ['loadouts', 'HiGHS'],
} as const;

/** `loadouts` takes as many milliseconds as there are pedals; HiGHS their square, and at 20 two of three are cut off. */
export const growthSolves: readonly Solve[] = sizes.flatMap((size) =>
  [1, 2, 3].flatMap((seed) => {
    const shape = { ...size, chains: 'none', seed } as const;
    const rival = { shape, capMs: 1000, set: 'HiGHS', proofBy: 'agreement' } as const;
    return [
      solveOf({ shape, capMs: 1000, elapsedMs: size.pedals }),
      size.pedals === 20 && seed > 1
        ? solveOf({ ...rival, elapsedMs: 1003, verdict: unproven, proofBy: null })
        : solveOf({ ...rival, elapsedMs: size.pedals ** 2 }),
    ];
  }),
);
