import { boundOfRow, type Decisions } from './decisions.js';
import type { Condition, CoverColumn, CoverProgram, FixedColumn, Priced } from './program.js';

/** Integer tags, one a row and one a condition, and the bound that they make; all in `scale`-ths of the objective. */
export type Tags = { readonly rows: Float64Array; readonly conditions: Float64Array; readonly scale: number };

export type Bounded = {
  readonly tags: Tags;
  /** Every solution that keeps the decisions costs at least bound / scale; −Infinity when nothing is shown. */
  readonly bound: number;
  /** By how much more a solution costs for every column of a group; not negative. */
  readonly extra: Float64Array;
  /** The groups of which a column may be worth more than it costs: none was found, but none ruled out. */
  readonly doubtful: readonly number[];
};

/** What a column costs beyond its tags. */
const beyondTags = ({ cost, entries }: FixedColumn, { rows, scale }: Tags): number =>
  entries.reduce((sum, { row, coefficient }) => sum - coefficient * (rows[row] ?? 0), scale * cost);

/** Of a column without limit no more than its cost may be tagged: its first row, where it stands with −1, gives way. */
export function affordable(column: FixedColumn, tags: Tags): void {
  const rest = beyondTags(column, tags);
  const row = column.entries[0]?.row ?? 0;
  if (rest < 0) tags.rows[row] = (tags.rows[row] ?? 0) - rest;
}

/** What one of each feature is worth in a group under the tags. */
export function groupTags<Content>(
  { features, rows }: CoverProgram<Content>,
  conditions: readonly Condition[],
  tags: Tags,
): (group: number) => Float64Array {
  const shared = new Float64Array(features);
  const own = new Map<number, [number, number][]>();
  const note = (row: Pick<Condition, 'feature' | 'group'>, tag: number): void => {
    if (tag === 0 || row.feature < 0) return;
    if (row.group === null) shared[row.feature] = (shared[row.feature] ?? 0) + tag;
    else own.set(row.group, [...(own.get(row.group) ?? []), [row.feature, tag]]);
  };
  rows.forEach((row, index) => note(row, tags.rows[index] ?? 0));
  conditions.forEach((row, index) => note(row, tags.conditions[index] ?? 0));
  return (group) => {
    const extra = own.get(group);
    if (extra === undefined) return shared;
    const all = shared.slice();
    for (const [feature, tag] of extra) all[feature] = (all[feature] ?? 0) + tag;
    return all;
  };
}

/**
 * What tags prove. Where a group may have a column that is worth more than it costs, either each of its columns may be one, or
 * all tags are lessened until none is ("A note on bounding a class of linear programming problems", 1990): whichever proves more.
 */
export function boundOf<Content>(
  program: CoverProgram<Content>,
  decisions: Decisions,
  tags: Tags,
  worths: readonly number[],
): Bounded {
  const doubtful = worths.flatMap((worth, group) => (worth > 0 && (decisions.most[group] ?? 0) > 0 ? [group] : []));
  const asTheyAre = { ...provenBy(program, decisions, tags, worths), doubtful };
  if (doubtful.length === 0) return asTheyAre;
  const lessened = lessenedTags(program, tags, worths, doubtful);
  if (lessened === null) return asTheyAre;
  const less = { ...provenBy(program, decisions, lessened.tags, lessened.worths), doubtful };
  return less.bound > asTheyAre.bound ? less : asTheyAre;
}

/** Sub-units of the objective by which lessened tags stay below what columns cost, for what floating point loses. */
const margin = 64;

/**
 * A share of all tags under which no group in doubt has a column that is worth more than it costs: one of cost c that is worth w
 * beyond it under the tags is worth share · (w + c) − c under a share of them, and the dearer it is, the less.
 */
function lessenedTags<Content>(
  { groups }: CoverProgram<Content>,
  { rows, conditions, scale }: Tags,
  worths: readonly number[],
  doubtful: readonly number[],
): { readonly tags: Tags; readonly worths: readonly number[] } | null {
  const costOf = (group: number): number => scale * (groups[group]?.leastCost ?? 0);
  const share = Math.min(
    ...doubtful.map((group) => (costOf(group) - margin) / (costOf(group) + (worths[group] ?? Infinity))),
  );
  if (share <= 0) return null;
  const less = (tag: number): number => Math.floor(share * tag);
  return {
    tags: { rows: rows.map(less), conditions: conditions.map(less), scale },
    worths: worths.map((worth, group) => Math.min(0, Math.ceil(share * worth - (1 - share) * costOf(group)) + margin)),
  };
}

/**
 * For any tags, cost ≥ Σ tag · bound + Σ most · min(0, what one column costs beyond its tags), over the fixed columns and,
 * for every group, its best column ("Integer programming", 1998, chapter on Lagrangian duality).
 */
function provenBy<Content>(
  program: CoverProgram<Content>,
  decisions: Decisions,
  tags: Tags,
  worths: readonly number[],
): Omit<Bounded, 'doubtful'> {
  const { conditions, most } = decisions;
  let bound = 0;
  program.rows.forEach((row, index) => (bound += boundOfRow(row, program, decisions) * (tags.rows[index] ?? 0)));
  conditions.forEach((row, index) => (bound += boundOfRow(row, program, decisions) * (tags.conditions[index] ?? 0)));
  for (const column of program.fixed) {
    const rest = beyondTags(column, tags);
    if (rest < 0) bound += column.most * rest;
  }
  const extra = new Float64Array(program.groups.length);
  for (const [group, worth] of worths.entries()) {
    if ((most[group] ?? 0) === 0) continue;
    if (worth <= 0) extra[group] = -worth;
    else bound -= (most[group] ?? 0) * worth;
  }
  return { tags, bound, extra };
}

/** The groups' bounds under tags, and columns worth having. */
export type Pricing<Content> = {
  /** Null where not all groups were looked at: then nothing is bounded. */
  readonly worths: readonly number[] | null;
  readonly found: readonly CoverColumn<Content>[];
};

/**
 * Prices every group that may still be used: first what comes easily; only when that finds nothing are the groups that it
 * leaves in doubt priced exactly, one after the other until one has a column. The first ones are looked at before
 * all others, which are only looked at when they have nothing.
 */
export function priceAll<Content>(
  program: CoverProgram<Content>,
  { conditions, most }: Decisions,
  tags: Tags,
  effort: 'quick' | 'exact',
  first: readonly number[] = [],
): Pricing<Content> {
  const tagsOf = groupTags(program, conditions, tags);
  const price = (group: number, how: 'quick' | 'exact'): Priced<Content> =>
    (most[group] ?? 0) === 0
      ? { bound: 0, columns: [] }
      : program.price({ group, tags: tagsOf(group), scale: tags.scale, floor: 0, effort: how });
  const early = first.flatMap((group) => price(group, 'quick').columns);
  if (early.length > 0) return { worths: null, found: early };
  const quick = program.groups.map((_, group) => price(group, 'quick'));
  const found = quick.flatMap(({ columns }) => columns);
  const worths = quick.map(({ bound }) => bound);
  if (effort === 'quick' || found.length > 0) return { worths, found };
  for (const [group, worth] of worths.entries()) {
    if (worth <= 0) continue;
    const { bound, columns } = price(group, 'exact');
    worths[group] = Math.min(worth, bound);
    if (columns.length > 0) return { worths, found: columns };
  }
  return { worths, found };
}
