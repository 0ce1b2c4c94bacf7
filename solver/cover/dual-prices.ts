import { gathered } from '../gathered.js';
import { boundOfRow, type Decisions } from './decisions.js';
import type { BranchingConstraint, Counted, CoverColumn, CoverProgram, FixedColumn } from './program.js';

/**
 * Integer dual prices, one a row and one a branching constraint: the duals of a relaxation, rounded. All are in `scale`-ths
 * of the objective.
 */
export type DualPrices = { readonly rows: Float64Array; readonly conditions: Float64Array; readonly scale: number };

/**
 * In what parts of the objective duals are counted: sums of them must stay safe integers, and a column may have one for
 * each amount.
 */
export function scaleFor({ rows }: Pick<CoverProgram<unknown>, 'rows'>, greatest: number): number {
  const items = rows.reduce(
    (sum, { bound, groups }) => (groups === null ? sum + Math.min(200, Math.abs(bound)) : sum),
    8,
  );
  const bits = Math.floor(Math.log2(2 ** 52 / (Math.max(1, greatest) * items)));
  return 2 ** Math.max(0, Math.min(20, bits));
}

export type Bounded = {
  readonly duals: DualPrices;
  /** Every solution that keeps the decisions costs at least bound / scale; −Infinity when nothing is shown. */
  readonly bound: number;
  /** By how much more a solution costs for every column of a group; not negative. */
  readonly extra: Float64Array;
  /** The groups of which a column may be worth more than it costs: none was found, but none ruled out. */
  readonly doubtful: readonly number[];
};

/** What a column costs beyond what the duals pay for it. */
const reducedCost = ({ cost, entries }: FixedColumn, { rows, scale }: DualPrices): number =>
  entries.reduce((sum, { row, coefficient }) => sum - coefficient * (rows[row] ?? 0), scale * cost);

/** Of a column without limit no more than its cost may be priced: its first row, where it stands with −1, gives way. */
export function affordable(column: FixedColumn, duals: DualPrices): void {
  const rest = reducedCost(column, duals);
  const row = column.entries[0]?.row ?? 0;
  if (rest < 0) duals.rows[row] = (duals.rows[row] ?? 0) - rest;
}

/** What one of each feature is worth in a group under the duals. */
export function featurePrices<Content>(
  { features, rows }: CoverProgram<Content>,
  conditions: readonly BranchingConstraint[],
  duals: DualPrices,
): (group: number) => Float64Array {
  const shared = new Float64Array(features);
  const own = new Map<number, [number, number][]>();
  const note = ({ feature, groups }: Counted, dual: number): void => {
    if (dual === 0 || feature < 0) return;
    if (groups === null) shared[feature] = (shared[feature] ?? 0) + dual;
    else for (const group of groups) own.set(group, [...(own.get(group) ?? []), [feature, dual]]);
  };
  rows.forEach((row, index) => note(row, duals.rows[index] ?? 0));
  conditions.forEach((row, index) => note(row, duals.conditions[index] ?? 0));
  return (group) => {
    const extra = own.get(group);
    if (extra === undefined) return shared;
    const all = shared.slice();
    for (const [feature, dual] of extra) all[feature] = (all[feature] ?? 0) + dual;
    return all;
  };
}

/** What a column costs, in subunits, beyond what its features are worth in its group under the duals; without one Infinity. */
export function reducedCosts<Content>(
  program: CoverProgram<Content>,
  conditions: readonly BranchingConstraint[],
  duals: DualPrices,
): (column: CoverColumn<Content> | undefined) => number {
  const pricesIn = featurePrices(program, conditions, duals);
  return (column) => {
    if (column === undefined) return Infinity;
    const own = pricesIn(column.group);
    const start = duals.scale * column.cost;
    return column.amounts.reduce((rest, [feature, amount]) => rest - amount * (own[feature] ?? 0), start);
  };
}

/**
 * The bound that dual prices prove. Where a group may have a column of negative reduced cost, either each of its columns
 * may be one, or all duals are lessened until none is ("A note on bounding a class of linear programming problems", 1990):
 * whichever proves more.
 */
export function dualBound<Content>(
  program: CoverProgram<Content>,
  decisions: Decisions,
  duals: DualPrices,
  worths: readonly number[],
): Bounded {
  const doubtful = gathered(worths, (worth, group) => (worth > 0 && (decisions.most[group] ?? 0) > 0 ? [group] : []));
  const asTheyAre = { doubtful, ...lagrangianBound(program, decisions, duals, worths) };
  if (doubtful.length === 0) return asTheyAre;
  const lessened = lessenedDuals(program, duals, worths, doubtful);
  if (lessened === null) return asTheyAre;
  const less = { doubtful, ...lagrangianBound(program, decisions, lessened.duals, lessened.worths) };
  return less.bound > asTheyAre.bound ? less : asTheyAre;
}

/** Sub-units of the objective by which lessened duals stay below what columns cost, for what floating point loses. */
const margin = 64;

/**
 * A share of all duals under which no group in doubt has a column of negative reduced cost: one of cost c that is worth w
 * beyond it under the duals is worth share · (w + c) − c under a share of them, and the dearer it is, the less.
 */
function lessenedDuals<Content>(
  { groups }: CoverProgram<Content>,
  { rows, conditions, scale }: DualPrices,
  worths: readonly number[],
  doubtful: readonly number[],
): { readonly duals: DualPrices; readonly worths: readonly number[] } | null {
  const costOf = (group: number): number => scale * (groups[group]?.leastCost ?? 0);
  const share = Math.min(
    ...doubtful.map((group) => (costOf(group) - margin) / (costOf(group) + (worths[group] ?? Infinity))),
  );
  if (share <= 0) return null;
  const less = (dual: number): number => Math.floor(share * dual);
  return {
    duals: { rows: rows.map(less), conditions: conditions.map(less), scale },
    worths: worths.map((worth, group) => Math.min(0, Math.ceil(share * worth - (1 - share) * costOf(group)) + margin)),
  };
}

/**
 * For any duals, cost ≥ Σ dual · bound + Σ most · min(0, reduced cost), over the fixed columns and, for every group, its
 * best column ("Integer programming", 1998, chapter on Lagrangian duality).
 */
function lagrangianBound<Content>(
  program: CoverProgram<Content>,
  decisions: Decisions,
  duals: DualPrices,
  worths: readonly number[],
): Omit<Bounded, 'doubtful'> {
  const { conditions, most } = decisions;
  let bound = 0;
  program.rows.forEach((row, index) => (bound += boundOfRow(row, program, decisions) * (duals.rows[index] ?? 0)));
  conditions.forEach((row, index) => (bound += boundOfRow(row, program, decisions) * (duals.conditions[index] ?? 0)));
  for (const column of program.fixed) {
    const rest = reducedCost(column, duals);
    if (rest < 0) bound += column.most * rest;
  }
  const extra = new Float64Array(program.groups.length);
  for (const [group, worth] of worths.entries()) {
    if ((most[group] ?? 0) === 0) continue;
    if (worth <= 0) extra[group] = -worth;
    else bound -= (most[group] ?? 0) * worth;
  }
  return { duals, bound, extra };
}
