/** Searches of small covers, and what must be true of how they end. */
import { expect } from 'vitest';

import type { CoverProgram } from '../../../solver/cover/program.js';
import { searchCover, type CoverOptions } from '../../../solver/cover/search.js';
import type { CoverOutcome } from '../../../solver/cover/outcome.js';
import { proves } from './proof-tree.js';
import { completed, programOf, type SmallCover } from './small-covers.js';

const patient: CoverOptions<number> = { remainingMs: () => Infinity, known: null };

export const search = (
  program: CoverProgram<number>,
  options: Partial<CoverOptions<number>> = {},
): Promise<CoverOutcome<number>> => searchCover(program, { ...patient, ...options });

/** Each unit is a group of its own, like the others of its group, so that no number of units hides which columns they are. */
export function toldApart(cover: SmallCover): SmallCover {
  const units = cover.groups.flatMap(({ name, most }, group) =>
    Array.from({ length: most }, () => ({ name, most: 1, of: group, alike: String(group) })),
  );
  return {
    ...cover,
    groups: units,
    columns: units
      .flatMap(({ of }, group) =>
        cover.columns.filter((column) => column.group === of).map((column) => ({ ...column, group })),
      )
      .map((column, content) => ({ ...column, content })),
  };
}

/** What the search ends with; where it is stuck, once more with all units told apart. */
export async function ended(
  cover: SmallCover,
  price?: (of: SmallCover) => CoverProgram<number>['price'],
  options: Partial<CoverOptions<number>> = {},
) {
  const outcome = await search(programOf(cover, price?.(cover)), options);
  if (outcome.kind !== 'stuck') return { outcome, cover };
  const apart = toldApart(cover);
  return { outcome: await search(programOf(apart, price?.(apart)), options), cover: apart };
}

/** True of every outcome; what is optimal or infeasible has a proof that holds. */
export function expectTrue(outcome: CoverOutcome<number>, cover: SmallCover, truth: number | null): void {
  const program = programOf(cover);
  const listed = { program, columns: cover.columns };
  switch (outcome.kind) {
    case 'optimal':
      expect(outcome.value).toBe(truth);
      expect(completed(outcome.contents, cover)?.value).toBe(truth);
      // That nothing costs less than nothing needs no proof.
      if (outcome.value > 0) expect(proves(listed, outcome.proof.tree, outcome.proof.scale, outcome.value)).toBe(true);
      expect(proves(listed, outcome.proof.tree, outcome.proof.scale, outcome.value + 1)).toBe(false);
      return;
    case 'infeasible':
      expect(truth).toBe(null);
      expect(proves(listed, outcome.proof.tree, outcome.proof.scale, program.greatest + 1)).toBe(true);
      return;
    case 'stopped':
    case 'stuck':
      expect(outcome.bound).toBeLessThanOrEqual(truth ?? Infinity);
      if (outcome.best === null) return;
      expect(outcome.best.value).toBeGreaterThanOrEqual(truth ?? Infinity);
      expect(completed(outcome.best.contents, cover)?.value).toBe(outcome.best.value);
  }
}
