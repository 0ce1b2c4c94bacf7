import type { Amounts, BranchingConstraint, CoverProgram } from './program.js';
import type { ColumnPool } from './column-pool.js';

/** What is this close to a whole number is one. */
const tolerance = 1e-4;
/** Of the numbers that could be branched on so many are worth a closer look. */
const mostCandidates = 6;

/**
 * Numbers that must be whole and are not, each as two conditions that rule its value out: how many columns there are in
 * all, how many of each group, and how much of a feature a group has, in the order of the program's lists; of the first
 * list that has any those that are the farthest from whole.
 */
export function branchesOf<Content>(
  program: CoverProgram<Content>,
  pool: ColumnPool<Content>,
  point: Float64Array,
): readonly (readonly [BranchingConstraint, BranchingConstraint])[] {
  const used = pool.columns.flatMap((column, index) => {
    const share = point[index] ?? 0;
    return share > tolerance / 10 ? [{ column, share }] : [];
  });
  const all = used.reduce((sum, { share }) => sum + share, 0);
  const total = distance(all) > tolerance ? [split(program.unit, null, all)] : [];
  for (const features of [[program.unit], ...program.branching]) {
    const found = mostFractional(features, used);
    if (found.length > 0) return [...total, ...found.map(({ feature, group, value }) => split(feature, group, value))];
  }
  return total;
}

type Used = readonly {
  readonly column: { readonly group: number; readonly amounts: Amounts };
  readonly share: number;
}[];
type Fraction = { readonly feature: number; readonly group: number; value: number };

function mostFractional(features: readonly number[], used: Used): readonly Fraction[] {
  const wanted = new Set(features);
  const sums = new Map<string, Fraction>();
  for (const { column, share } of used) {
    for (const [feature, amount] of column.amounts) {
      if (!wanted.has(feature)) continue;
      const key = `${feature}:${column.group}`;
      const sum = sums.get(key) ?? { feature, group: column.group, value: 0 };
      sum.value += amount * share;
      sums.set(key, sum);
    }
  }
  return [...sums.values()]
    .filter(({ value }) => distance(value) > tolerance)
    .sort((a, b) => distance(b.value) - distance(a.value))
    .slice(0, mostCandidates);
}

const distance = (value: number): number => Math.abs(value - Math.round(value));

/** A number is at most its value rounded down, or at least one more. */
export function split(
  feature: number,
  group: number | null,
  value: number,
): readonly [BranchingConstraint, BranchingConstraint] {
  const most = Math.floor(value);
  return [
    { feature, group, sense: 'at most', bound: most },
    { feature, group, sense: 'at least', bound: most + 1 },
  ];
}
