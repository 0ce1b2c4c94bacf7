import fc from 'fast-check';
import { expect, it } from 'vitest';

import { dive, straight, wider, type Breadth } from '../../../solver/cover/dive.js';
import { CoverSearch } from '../../../solver/cover/search.js';
import { COLD } from '../../../solver/cover/simplex-start.js';
import { completed, leastCost, programOf, smallCovers, type SmallCover } from './small-covers.js';
import { trying } from '../../support/runs.js';

/** What dives of these breadths find from the root when all columns are there. */
async function found(cover: SmallCover, breadths: readonly Breadth[]): Promise<number | null> {
  const program = programOf(cover);
  const search = new CoverSearch(program, { remainingMs: () => Infinity, known: null });
  for (const column of cover.columns) search.pool.add(column);
  const decisions = { conditions: [], most: program.groups.map(({ most }) => most), taken: [] };
  const start = {
    columns: search.pool.columns.map((_, index) => index),
    since: search.pool.columns.length,
    state: COLD,
  };
  for (const breadth of breadths) await dive(search, decisions, start, breadth, () => false);
  if (search.best !== null) expect(completed(search.best.contents, cover)?.value).toBe(search.best.value);
  return search.best?.value ?? null;
}

it('a dive finds solutions that are none better than the best, and a wider one finds more of the best', async () => {
  const seen = { solvable: 0, straight: 0, wider: 0 };
  await fc.assert(
    fc.asyncProperty(smallCovers, async (cover) => {
      const truth = leastCost(cover);
      const [once, often] = [await found(cover, [straight]), await found(cover, [straight, ...wider])];
      if (truth === null) {
        expect([once, often]).toEqual([null, null]);
        return;
      }
      expect(often ?? Infinity).toBeLessThanOrEqual(once ?? Infinity);
      expect(often ?? Infinity).toBeGreaterThanOrEqual(truth);
      seen.solvable += 1;
      if (once === truth) seen.straight += 1;
      if (often === truth) seen.wider += 1;
    }),
    trying(400),
  );
  expect(seen.straight).toBeGreaterThan(seen.solvable / 2);
  expect(seen.wider).toBeGreaterThan(seen.straight);
});

it('a dive takes nothing more once what was found is enough', async () => {
  await fc.assert(
    fc.asyncProperty(smallCovers, async (cover) => {
      const program = programOf(cover);
      const search = new CoverSearch(program, { remainingMs: () => Infinity, known: null });
      for (const column of cover.columns) search.pool.add(column);
      const columns = search.pool.columns.map((_, index) => index);
      const decisions = { conditions: [], most: program.groups.map(({ most }) => most), taken: [] };
      const start = { columns, since: columns.length, state: COLD };
      for (const breadth of wider) await dive(search, decisions, start, breadth, () => true);
      expect(search.best).toBeNull();
    }),
    trying(50),
  );
});
