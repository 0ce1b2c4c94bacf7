import { gathered } from '../gathered.js';
import type { Amounts, BranchingConstraint, Counted, CoverProgram } from './program.js';
import type { ColumnPool } from './column-pool.js';
import { columnCaps, isDecided } from './decisions.js';

/** What is this close to a whole number is one. */
const tolerance = 1e-4;
/** Sums over many groups are worth a closer look when they are at least so far from a whole number. */
const tellingDistance = 0.02;
/** Of the numbers of one list so many are worth a closer look. */
const mostCandidates = 6;

/** Of the sets of groups whose columns do not add up to a whole number, so many are. */
const mostSets = 8;

type Branches = readonly [BranchingConstraint, BranchingConstraint];

/** What may be branched on: what seems to tell most, and what else there is, for where that tells little. */
export type Candidates = { readonly foremost: readonly Branches[]; readonly others: () => readonly Branches[] };

/**
 * Numbers that must be whole and are not, each as two conditions that rule its value out. Sums over many groups: how many
 * columns there are in all, how much of some features they have, how many columns sets of groups have. Then, of one group
 * each: how many columns it has and how much of a feature, in the order of the program's lists, of which the first one with
 * any counts, and later ones where all else is decided. What is decided by the conditions is left out.
 */
export function branchesOf<Content>(
  program: CoverProgram<Content>,
  pool: ColumnPool<Content>,
  point: Float64Array,
  conditions: readonly BranchingConstraint[],
): Candidates {
  const used = gathered(pool.columns, (column, index) => {
    const share = point[index] ?? 0;
    return share > tolerance / 10 ? [{ column, share }] : [];
  });
  const { unit, branching } = program;
  const perGroup = (features: readonly number[]) => sumsOf(features, used, ({ group }) => group);
  const units = perGroup([unit]);
  const sums = [
    ...fractional(
      sumsOf([unit], used, () => null),
      tolerance,
      mostCandidates,
    ),
    ...fractional(
      sumsOf(branching.inAll, used, () => null),
      tellingDistance,
      mostCandidates,
    ),
    ...fractional(sumsOfSets(branching.sets(), unit, units), tellingDistance, mostSets),
  ];
  const [found = overfull(program, used), ...later] = [units, ...branching.withinGroups.map(perGroup)]
    .map((list) => fractional(list, tolerance, Infinity))
    .filter((list) => list.length > 0);
  const openOf = (counted: readonly Sum[]): readonly Branches[] => {
    const all = counted.map((sum) => forAllAlike(split(sum, sum.value), program, conditions));
    const open = all.filter((branches) => !branches.some((branch) => isDecided(branch, { conditions })));
    return [...new Map(open.map((branches) => [JSON.stringify(branches), branches])).values()];
  };
  const [first, rest] = [found.slice(0, mostCandidates), found.slice(mostCandidates)];
  const foremost = openOf([...sums, ...first]);
  if (foremost.length > 0) return { foremost, others: () => openOf(rest) };
  // All that seems to tell most is decided, and the relaxation only all but keeps it.
  const open = openOf([...rest, ...later.flat()]);
  return { foremost: open.slice(0, mostCandidates), others: () => open.slice(mostCandidates) };
}

type Column = { readonly group: number; readonly amounts: Amounts };
type Used = readonly { readonly column: Column; readonly share: number }[];
type Sum = Counted & { readonly value: number };

/** How much there is of each feature, for each group that columns are counted to; null counts all as one. */
function sumsOf(features: readonly number[], used: Used, countedTo: (column: Column) => number | null): readonly Sum[] {
  const wanted = new Set(features);
  const sums = new Map<string, { feature: number; groups: readonly number[] | null; value: number }>();
  for (const { column, share } of used) {
    const group = countedTo(column);
    for (const [feature, amount] of column.amounts) {
      if (!wanted.has(feature)) continue;
      const key = `${feature}:${group ?? ''}`;
      const sum = sums.get(key) ?? { feature, groups: group === null ? null : [group], value: 0 };
      sum.value += amount * share;
      sums.set(key, sum);
    }
  }
  return [...sums.values()];
}

/** How many columns each set of groups has; sets that have as many as an earlier one hardly tell more, and are left out. */
function sumsOfSets(sets: readonly (readonly number[])[], unit: number, units: readonly Sum[]): readonly Sum[] {
  const ofGroup = new Map(units.map(({ groups, value }) => [groups?.[0], value]));
  const sums = new Map<string, Sum>();
  for (const groups of sets) {
    const value = groups.reduce((sum, group) => sum + (ofGroup.get(group) ?? 0), 0);
    const key = value.toFixed(4);
    if (!sums.has(key)) sums.set(key, { feature: unit, groups, value });
  }
  return [...sums.values()];
}

/**
 * What a column has more of by itself than all of its group have together, as half of one that has two and half of one that has
 * none come to one: where there is no more than that, pricing is told that no column has more.
 */
function overfull({ capped }: Pick<CoverProgram<unknown>, 'capped'>, used: Used): readonly Sum[] {
  const most = new Map<string, number>();
  const key = (feature: number, group: number | undefined): string => `${feature}:${group ?? ''}`;
  for (const { column } of used)
    for (const [feature, amount] of column.amounts) {
      const at = key(feature, column.group);
      most.set(at, Math.max(amount, most.get(at) ?? 0));
    }
  return sumsOf(capped, used, ({ group }) => group)
    .map((sum) => ({ ...sum, value: Math.round(sum.value) }))
    .filter(({ feature, groups, value }) => (most.get(key(feature, groups?.[0])) ?? 0) > value)
    .slice(0, mostCandidates);
}

/** Those farther than this from whole, the farthest first. */
const fractional = (sums: readonly Sum[], least: number, most: number): readonly Sum[] =>
  sums
    .filter(({ value }) => distance(value) > least)
    .sort((a, b) => distance(b.value) - distance(a.value))
    .slice(0, most);

const distance = (value: number): number => Math.abs(value - Math.round(value));

/**
 * Where it is not known what the columns of a group may be worth: the group has no more of something than now, or more. How
 * many columns it has comes first, then of the features that it could have more of the dearest one, which leaves pricing less
 * to choose from. Null where its columns are held to what is used already.
 */
export function splitOfGroup<Content>(
  group: number,
  program: CoverProgram<Content>,
  pool: ColumnPool<Content>,
  point: Float64Array,
  { conditions, prices, most }: GroupState,
): Branches | null {
  const used = usedBy(group, pool, point);
  const caps = columnCaps(conditions, program)(group);
  const required = conditions.filter(
    ({ groups, sense }) => sense === 'at least' && groups?.length === 1 && groups[0] === group,
  );
  /** As much as there is, or has to be. */
  const valueOf = (feature: number): number =>
    Math.max(
      Math.round(used.get(feature) ?? 0),
      ...required.filter((condition) => condition.feature === feature).map(({ bound }) => bound),
    );
  const { unit, capped: features, rows } = program;
  if (valueOf(unit) < most) return split({ feature: unit, groups: [group] }, valueOf(unit));
  const wanted = (feature: number): number =>
    rows.find((row) => row.feature === feature && row.groups === null && row.sense === 'at least')?.bound ?? 0;
  const [dearest] = features
    .filter((feature) => (prices[feature] ?? 0) > 0)
    .filter((feature) => valueOf(feature) < Math.min(wanted(feature), caps.get(feature) ?? Infinity))
    .sort((one, two) => (prices[two] ?? 0) - (prices[one] ?? 0));
  return dearest === undefined ? null : split({ feature: dearest, groups: [group] }, valueOf(dearest));
}

/** What is decided about a group, what one of each feature is worth there, and how many columns it may have. */
type GroupState = {
  readonly conditions: readonly BranchingConstraint[];
  readonly prices: Float64Array;
  readonly most: number;
};

function usedBy<Content>(group: number, pool: ColumnPool<Content>, point: Float64Array): ReadonlyMap<number, number> {
  const used = new Map<number, number>();
  for (const [index, column] of pool.columns.entries()) {
    const share = column.group === group ? (point[index] ?? 0) : 0;
    if (share === 0) continue;
    for (const [feature, amount] of column.amounts) used.set(feature, (used.get(feature) ?? 0) + share * amount);
  }
  return used;
}

/** What is counted is at most its value rounded down, or at least one more. */
export function split({ feature, groups }: Counted, value: number): Branches {
  const most = Math.floor(value);
  return [
    { feature, groups, sense: 'at most', bound: most },
    { feature, groups, sense: 'at least', bound: most + 1 },
  ];
}

/**
 * The same where groups that can be exchanged for one another are told apart ("Orbital branching", 2011): if any of those has
 * some of what is counted, it may as well be the first of them, so that elsewhere none of them has any. Groups are alike as
 * long as all that is decided says the same of each.
 */
function forAllAlike(
  [less, more]: Branches,
  { groups }: Pick<CoverProgram<unknown>, 'groups'>,
  conditions: readonly BranchingConstraint[],
): Branches {
  const [one = -1, other] = less.groups ?? [];
  const alike = groups[one]?.alike ?? null;
  if (alike === null || other !== undefined || less.bound > 0) return [less, more];
  const decided = decidedOf(one, conditions);
  const same = [...groups.keys()].filter(
    (group) => groups[group]?.alike === alike && decidedOf(group, conditions) === decided,
  );
  return [
    { ...less, groups: same },
    { ...more, groups: same.slice(0, 1) },
  ];
}

/** What is decided about a group by itself, and which conditions on several count it. */
const decidedOf = (group: number, conditions: readonly BranchingConstraint[]): string =>
  gathered(conditions, ({ feature, groups, sense, bound }, index) => {
    if (groups?.includes(group) !== true) return [];
    return [groups.length > 1 ? `${index}` : `${feature} ${sense} ${bound}`];
  })
    .sort()
    .join(', ');
