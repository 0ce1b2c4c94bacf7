import type { BranchingConstraint, CoverProgram } from '../../../solver/cover/program.js';
import type { CoverNode } from '../../../solver/cover/tree.js';
import type { Column } from './small-covers.js';

type Listed = { readonly program: CoverProgram<number>; readonly columns: readonly Column[] };
type Place = { readonly conditions: readonly BranchingConstraint[]; readonly caps: readonly number[] };

/**
 * Whether the tree proves that no solution costs less than `value`: every leaf's bound is worked out anew over all listed
 * columns, in big integers; on the way down groups are capped where a column more would cost too much.
 */
export function proves(listed: Listed, tree: CoverNode, scale: number, value: number): boolean {
  const enough = BigInt(scale) * BigInt(value - 1);
  const caps = listed.program.groups.map(({ most }) => most);
  return closes(listed, tree, { conditions: [], caps }, { scale: BigInt(scale), enough });
}

type Terms = { readonly scale: bigint; readonly enough: bigint };

function closes(listed: Listed, node: CoverNode, place: Place, terms: Terms): boolean {
  const weighed = node.duals === null ? null : weigh(listed, node.duals, place, terms);
  if (weighed !== null && weighed.bound > terms.enough) return true;
  if (node.branch === null) return false;
  const [one, two] = node.branch;
  if (one === undefined || two === undefined || !areOpposite(one.condition, two.condition, listed, place)) return false;
  const caps = weighed === null ? place.caps : tightened(place.caps, weighed, terms);
  return [one, two].every(({ condition, node: child }) =>
    closes(
      listed,
      child,
      { conditions: [...place.conditions, condition], caps: capped(caps, condition, listed.program) },
      terms,
    ),
  );
}

/**
 * One of both holds for every solution, at most so much, or at least one more; or for one that comes of it when alike groups
 * are exchanged, which keeps all that was decided before.
 */
function areOpposite(one: BranchingConstraint, two: BranchingConstraint, { program }: Listed, place: Place): boolean {
  if (one.feature !== two.feature || one.sense !== 'at most' || two.sense !== 'at least') return false;
  if (two.bound !== one.bound + 1) return false;
  if (String(one.groups) === String(two.groups)) return true;
  const [named = -1, ...more] = two.groups ?? [];
  const isExchanged = (other: number): boolean =>
    program.groups[other]?.alike === program.groups[named]?.alike && staysSame(place.conditions, named, other);
  return (
    one.bound === 0 &&
    more.length === 0 &&
    (program.groups[named]?.alike ?? null) !== null &&
    one.groups?.includes(named) === true &&
    one.groups.every((other) => other === named || isExchanged(other))
  );
}

/** Whether the conditions are the same, in whatever order, when two groups are exchanged in them. */
function staysSame(conditions: readonly BranchingConstraint[], one: number, other: number): boolean {
  const exchanged = (group: number): number => (group === one ? other : group === other ? one : group);
  const listed = (rename: (group: number) => number): string =>
    conditions
      .map(({ feature, groups, sense, bound }) =>
        JSON.stringify([feature, sense, bound, groups === null ? null : groups.map(rename).sort((a, b) => a - b)]),
      )
      .sort()
      .join();
  return listed((group) => group) === listed(exchanged);
}

type Weighed = { readonly bound: bigint; readonly surcharges: readonly (bigint | null)[] };

function weigh(
  { program, columns }: Listed,
  duals: ProofNodeTags,
  { conditions, caps }: Place,
  { scale }: Terms,
): Weighed {
  const rows = [...program.rows, ...conditions];
  const dualOf = (row: number): bigint =>
    BigInt((row < program.rows.length ? duals.rows[row] : duals.conditions[row - program.rows.length]) ?? NaN);
  let bound = 0n;
  for (const [row, { sense, bound: right, feature, groups }] of rows.entries()) {
    const dual = dualOf(row);
    if (sense === 'at least' ? dual < 0n : sense === 'at most' && dual > 0n)
      throw new Error('a dual has the wrong sign');
    const [group, ...others] = groups ?? [];
    const limits = feature === program.unit && group !== undefined && others.length === 0 && sense === 'at most';
    bound += dual * BigInt(limits ? Math.min(right, caps[group] ?? right) : right);
  }
  for (const { cost, entries, most } of program.fixed) {
    const reduced = entries.reduce(
      (sum, each) => sum - BigInt(each.coefficient) * dualOf(each.row),
      scale * BigInt(cost),
    );
    if (reduced < 0n) bound += BigInt(most) * reduced;
  }
  const surcharges = program.groups.map((_, group) => {
    const reduced = columns
      .filter((column) => column.group === group && keepsAll(column, conditions))
      .map(({ cost, amounts }) =>
        rows.reduce(
          (sum, row, index) => {
            if (!isCounted(row.groups, group)) return sum;
            const amount = amounts.find(([feature]) => feature === row.feature)?.[1] ?? 0;
            return sum - BigInt(amount) * dualOf(index);
          },
          scale * BigInt(cost),
        ),
      );
    const least = reduced.reduce<bigint | null>((most, each) => (most === null || each < most ? each : most), null);
    if (least !== null && least < 0n) bound += BigInt(caps[group] ?? 0) * least;
    return least;
  });
  return { bound, surcharges };
}

/** No column has more by itself than all of them may have together. */
const keepsAll = ({ group, amounts }: Column, conditions: readonly BranchingConstraint[]): boolean =>
  conditions.every(
    ({ feature, groups, sense, bound }) =>
      sense === 'at least' ||
      !isCounted(groups, group) ||
      amounts.every(([each, amount]) => each !== feature || amount <= bound),
  );

type ProofNodeTags = NonNullable<CoverNode['duals']>;

const tightened = (caps: readonly number[], { bound, surcharges }: Weighed, { enough }: Terms): readonly number[] =>
  caps.map((cap, group) => {
    const surcharge = surcharges[group];
    if (surcharge === null) return 0;
    if (surcharge === undefined || surcharge <= 0n) return cap;
    return Math.min(cap, Number((enough - bound) / surcharge));
  });

const capped = (
  caps: readonly number[],
  { feature, groups, sense, bound }: BranchingConstraint,
  { unit }: { readonly unit: number },
) =>
  feature === unit && sense === 'at most'
    ? caps.map((cap, group) => (isCounted(groups, group) ? Math.min(cap, bound) : cap))
    : caps;

const isCounted = (groups: readonly number[] | null, group: number): boolean =>
  groups === null || groups.includes(group);
