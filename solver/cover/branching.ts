import type { Amounts, BranchingConstraint, CoverProgram } from './program.js';
import type { ColumnPool } from './column-pool.js';

/** What is this close to a whole number is one. */
const tolerance = 1e-4;
/** Sums over many groups are worth a closer look when they are at least so far from a whole number. */
const tellingDistance = 0.02;
/** Of the numbers of one list so many are worth a closer look. */
const mostCandidates = 6;

type Branches = readonly [BranchingConstraint, BranchingConstraint];

/**
 * Numbers that must be whole and are not, each as two conditions that rule its value out: how many columns there are in
 * all, how much of some features they have in all, how many there are of each group, and how much of a feature a group
 * has, in the order of the program's lists; of the first list that has any those that are the farthest from whole.
 */
export function branchesOf<Content>(
  program: CoverProgram<Content>,
  pool: ColumnPool<Content>,
  point: Float64Array,
): readonly Branches[] {
  const used = pool.columns.flatMap((column, index) => {
    const share = point[index] ?? 0;
    return share > tolerance / 10 ? [{ column, share }] : [];
  });
  const { inAll, withinGroups } = program.branching;
  const sums = [
    ...fractional(
      sumsOf([program.unit], used, () => null),
      tolerance,
    ),
    ...fractional(
      sumsOf(inAll, used, () => null),
      tellingDistance,
    ),
  ];
  for (const features of [[program.unit], ...withinGroups]) {
    const found = fractional(
      sumsOf(features, used, ({ group }) => group),
      tolerance,
    );
    if (found.length > 0) return [...sums, ...found].map(({ feature, group, value }) => split(feature, group, value));
  }
  return sums.map(({ feature, group, value }) => split(feature, group, value));
}

type Column = { readonly group: number; readonly amounts: Amounts };
type Used = readonly { readonly column: Column; readonly share: number }[];
type Sum = { readonly feature: number; readonly group: number | null; value: number };

/** How much there is of each feature, for each group that columns are counted to. */
function sumsOf(features: readonly number[], used: Used, countedTo: (column: Column) => number | null): readonly Sum[] {
  const wanted = new Set(features);
  const sums = new Map<string, Sum>();
  for (const { column, share } of used) {
    const group = countedTo(column);
    for (const [feature, amount] of column.amounts) {
      if (!wanted.has(feature)) continue;
      const key = `${feature}:${group ?? ''}`;
      const sum = sums.get(key) ?? { feature, group, value: 0 };
      sum.value += amount * share;
      sums.set(key, sum);
    }
  }
  return [...sums.values()];
}

/** Those at least so far from whole, the farthest first. */
const fractional = (sums: readonly Sum[], least: number): readonly Sum[] =>
  sums
    .filter(({ value }) => distance(value) > least)
    .sort((a, b) => distance(b.value) - distance(a.value))
    .slice(0, mostCandidates);

const distance = (value: number): number => Math.abs(value - Math.round(value));

/** A number is at most its value rounded down, or at least one more. */
export function split(feature: number, group: number | null, value: number): Branches {
  const most = Math.floor(value);
  return [
    { feature, group, sense: 'at most', bound: most },
    { feature, group, sense: 'at least', bound: most + 1 },
  ];
}
