import { setImmediate } from 'node:timers/promises';

import type { ColumnPool } from './column-pool.js';
import type { Decisions } from './decisions.js';
import type { CoverColumn, CoverProgram } from './program.js';
import { Relaxation, type Start } from './relaxation.js';
import { COLD } from './simplex.js';
import { priceAll } from './tags.js';

/** What a dive needs of the search that it serves. */
export type Diver<Content> = {
  readonly program: CoverProgram<Content>;
  readonly pool: ColumnPool<Content>;
  readonly scale: number;
  /** A solution must be worth less than this to be of interest. */
  readonly target: number;
  /** Whether the time is over. */
  readonly over: boolean;
  /** Takes columns that cover everything as a solution. */
  offer(columns: readonly CoverColumn<Content>[]): boolean;
};

/** Rounds of pricing after each column that a dive takes. */
const roundsEach = 4;
const mostSteps = 200;
/** Less than this of a column is none. */
const nothing = 1e-3;

/**
 * Looks for a solution by taking columns one after the other, those that the relaxation uses most first, and solving what
 * is left of the program in between, with new columns for it ("Column generation based primal heuristics", 2010).
 */
export async function dive<Content>(search: Diver<Content>, decisions: Decisions, begin: Start): Promise<void> {
  let now = decisions;
  let start = begin;
  for (let step = 0; step < mostSteps; step += 1) {
    await setImmediate();
    if (search.over) return;
    const point = solved(search, now, start, step === 0 ? 1 : roundsEach);
    const more = nextColumns(search.pool, point, now);
    if (more.length === 0) break;
    now = { ...now, taken: [...now.taken, ...more], most: lessMost(search.pool, now.most, more) };
    start = { ...start, state: COLD };
  }
  search.offer(now.taken.flatMap((index) => search.pool.columns[index] ?? []));
}

/** The point of the relaxation after a few rounds of new columns. */
function solved<Content>(search: Diver<Content>, decisions: Decisions, start: Start, rounds: number): Float64Array {
  const { program, pool, scale, target } = search;
  const relaxation = new Relaxation(program, pool, decisions, target, start);
  relaxation.solve();
  for (let round = 1; round < rounds; round += 1) {
    const { found } = priceAll(program, decisions, relaxation.tags(scale), 'quick');
    const fresh = found.filter((column) => relaxation.include(pool.add(column)));
    if (fresh.length === 0) break;
    relaxation.solve();
  }
  return relaxation.point;
}

/** The columns that are used whole, each as often as it is; where none is, the one of which the largest part is used. */
function nextColumns<Content>(pool: ColumnPool<Content>, point: Float64Array, { most }: Decisions): readonly number[] {
  const whole: number[] = [];
  let best: number | null = null;
  let largest = nothing;
  for (const [index, share] of point.entries()) {
    for (let times = 1; times <= share + 1e-4; times += 1) whole.push(index);
    const allowed = (most[pool.columns[index]?.group ?? -1] ?? 0) > 0;
    if (allowed && share % 1 > largest) [best, largest] = [index, share % 1];
  }
  return whole.length > 0 || best === null ? whole : [best];
}

function lessMost<Content>(
  pool: ColumnPool<Content>,
  most: readonly number[],
  taken: readonly number[],
): readonly number[] {
  const left = [...most];
  for (const index of taken) {
    const group = pool.columns[index]?.group ?? 0;
    left[group] = Math.max(0, (left[group] ?? 0) - 1);
  }
  return left;
}
