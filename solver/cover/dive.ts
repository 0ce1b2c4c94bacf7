import { priceAll, Relaxation, type Decisions, type Start } from './relaxation.js';
import type { CoverSearch } from './search.js';
import { COLD } from './simplex.js';

/** Rounds of pricing after each column that a dive takes. */
const roundsEach = 4;

/**
 * Looks for a solution by taking columns one after the other, those that the relaxation uses most first, and solving what
 * is left of the program in between, with new columns for it ("Column generation based primal heuristics", 2010).
 */
export async function dive<Content>(search: CoverSearch<Content>, decisions: Decisions, begin: Start): Promise<void> {
  const { program, pool, scale } = search;
  let taken = decisions.taken;
  let most = decisions.most;
  let start = begin;
  for (let step = 0; step < 200; step += 1) {
    if (search.over) return;
    const now = { conditions: decisions.conditions, most, taken };
    const relaxation = new Relaxation(program, pool, now, search.target, start);
    for (let round = 0; round < roundsEach; round += 1) {
      relaxation.solve();
      if (step === 0) break;
      const tags = relaxation.tags(scale);
      const { found } = priceAll(program, now, tags, 'quick');
      if (!found.map((column) => relaxation.include(pool.add(column))).includes(true)) break;
    }
    const point = relaxation.point;
    start = { ...start, state: COLD };
    let best = -1;
    let largest = 1e-3;
    const whole: number[] = [];
    for (let index = 0; index < point.length; index += 1) {
      const share = point[index] ?? 0;
      for (let times = 1; times <= share + 1e-4; times += 1) whole.push(index);
      const rest = share % 1;
      if (share > 1e-3 && rest > largest && (most[pool.columns[index]?.group ?? 0] ?? 0) > 0) [best, largest] = [index, rest];
    }
    const more = whole.length > 0 ? whole : best >= 0 ? [best] : [];
    if (more.length === 0) break;
    taken = [...taken, ...more];
    const caps = [...most];
    for (const index of more) {
      const group = pool.columns[index]?.group ?? 0;
      caps[group] = Math.max(0, (caps[group] ?? 0) - 1);
    }
    most = caps;
  }
  search.offer(taken.flatMap((index) => pool.columns[index] ?? []));
}
