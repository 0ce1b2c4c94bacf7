import { parseArgs } from 'node:util';

import { chainProfiles, type Chains } from '../instances.js';
import { listOf, oneOf, seedsOf, sizeOf, wholeOf } from '../option-values.js';
import type { Size } from '../sizes.js';

export type CompareBench = {
  readonly size: Size;
  readonly seeds: readonly number[];
  readonly chains: readonly Chains[];
  /** How many best purchases; null for choices that differ in kind. */
  readonly best: number | null;
  /** How many boards the folder holds, and of what size; none for no folder. */
  readonly boards: number;
  readonly folderSize: Size;
  /** How many threads work on the folder. */
  readonly jobs: number;
};

export const usage = `npx tsx bench/comparing/run.ts [options], on the compiled product
  --size        pedals x supply models of one comparison: 12x40
  --seeds       how many instances a profile of chains, or 3..4 for those two: 20
  --chains      which outputs chain leads fit: ${chainProfiles.join(',')}
  --best        how many best purchases, not choices that differ in kind
  --boards      how many boards in a folder: 100; 0 leaves it out
  --folder-size pedals x supply models of those boards: 10x40
  --jobs        how many boards at once: 1`;

/** @throws Error or RangeError for what it does not understand. */
export function parseOptions(args: readonly string[]): CompareBench {
  const text = { type: 'string' } as const;
  const { values } = parseArgs({
    args: [...args],
    options: { size: text, seeds: text, chains: text, best: text, boards: text, 'folder-size': text, jobs: text },
  });
  return {
    size: sizeOf(values.size ?? '12x40'),
    seeds: seedsOf(values.seeds ?? '20'),
    chains: listOf(values.chains ?? chainProfiles.join(',')).map((name) => oneOf('--chains', chainProfiles, name)),
    best: values.best === undefined ? null : wholeOf('--best', values.best, 1, 50),
    boards: wholeOf('--boards', values.boards ?? '100', 0, 100_000),
    folderSize: sizeOf(values['folder-size'] ?? '10x40'),
    jobs: wholeOf('--jobs', values.jobs ?? '1', 1, 256),
  };
}
