import { limitsOne } from '../../solver/cover/decisions.js';
import type { CoverProof } from '../../solver/cover/outcome.js';
import type { BranchingConstraint } from '../../solver/cover/program.js';
import type { CoverNode } from '../../solver/cover/tree.js';
import type { PartId, PedalId, SupplyId } from '../domain/quantities.js';
import { inletSortOf, type InletSort } from '../loadout/inlet-sort.js';
import type { ProofBranch, ProofCount, ProofNode, ProofStep, ProofTags, ProofTier } from '../domain/proof.js';
import type { Digit } from './digits.js';
import type { ScalarObjective } from './scalar-objective.js';
import type { UnitGroup } from './loadout-groups.js';
import type { LoadoutProgram } from './loadout-program.js';
import type { RowMeaning } from './loadout-rows.js';
import type { Question } from './question.js';

/** A step's proof in words of the board: tags on pedals and leads, and cases by units, pedals and leads of a supply. */
export function proofStep(
  question: Question,
  program: LoadoutProgram,
  objective: ScalarObjective,
  value: number,
  { scale, tree }: CoverProof,
): ProofStep {
  const tiers = objective.tiers.map(proofTier);
  return { tiers, value, scale, ...apartOf(program), tree: nodeOf(tree, [], { question, program }) };
}

function proofTier({ tier, unit, weight }: Digit): ProofTier {
  if (tier === 'sockets') throw new RangeError('no aim ranks mains sockets, so no proof can');
  return { tier, unit, weight };
}

/** Whether any tag of the tree is on something that is limited: units, leads, money, or pedals that may be left out. */
export function countsLimits(node: CoverNode, program: LoadoutProgram): boolean {
  const isLimit = ({ kind }: RowMeaning): boolean =>
    kind !== 'pedals' && kind !== 'leads' && kind !== 'inlets' && kind !== 'earlier';
  const here = program.meanings.some((meaning, row) => isLimit(meaning) && (node.duals?.rows[row] ?? 0) !== 0);
  return here || (node.branch ?? []).some((child) => countsLimits(child.node, program));
}

type Written = { readonly question: Question; readonly program: LoadoutProgram };

/** How many units of which groups are told apart; left out when there are none. */
function apartOf({ groups }: LoadoutProgram): Pick<ProofStep, 'apart'> {
  const apart = groups.flatMap(({ uses, owned, slot }) => {
    const units = groups.filter((other) => other.uses === uses && other.owned === owned && other.slot !== null).length;
    return slot === 1 ? [{ supply: uses.supply.id, source: sourceOf(owned), units }] : [];
  });
  return apart.length === 0 ? {} : { apart };
}

const sourceOf = (owned: boolean): 'owned' | 'bought' => (owned ? 'owned' : 'bought');

function nodeOf(node: CoverNode, path: readonly BranchingConstraint[], terms: Written): ProofNode {
  return {
    ...(node.duals === null ? {} : { tags: tagsOf(node.duals.rows, node.duals.conditions, path, terms) }),
    ...(node.branch === null ? {} : { branch: branchOf(node.branch, path, terms) }),
  };
}

function branchOf(
  branch: NonNullable<CoverNode['branch']>,
  path: readonly BranchingConstraint[],
  terms: Written,
): ProofBranch {
  const side = (sense: BranchingConstraint['sense']) => {
    const child = branch.find(({ condition }) => condition.sense === sense);
    if (child === undefined) throw new Error(`a case distinction without its "${sense}" side`);
    const { condition } = child;
    return {
      most: condition.sense === 'at most' ? condition.bound : condition.bound - 1,
      node: nodeOf(child.node, [...path, condition], terms),
      count: countOf(condition, terms),
      groups: condition.groups,
    };
  };
  const fewer = side('at most');
  const more = side('at least');
  const { count, groups } = more;
  const likewise =
    fewer.groups?.flatMap((group) => (groups?.includes(group) === true ? [] : slotOf(group, terms))) ?? [];
  return {
    ...count,
    most: fewer.most,
    ...(likewise.length === 0 ? {} : { likewise }),
    fewer: fewer.node,
    more: more.node,
  };
}

const slotOf = (group: number, { program }: Written): readonly number[] => {
  const slot = program.groups[group]?.slot ?? null;
  return slot === null ? [] : [slot];
};

function countOf({ feature, groups }: BranchingConstraint, { question, program }: Written): ProofCount {
  const { features } = program;
  const place = placeOf(groups?.flatMap((group) => program.groups[group] ?? []) ?? null);
  if (feature === features.unit) return { count: 'units', ...place };
  const sort = question.bench.classes[feature]?.inlet ?? null;
  if (sort !== null) return { count: 'inlets', ...place, of: suppliesOf(sort, question) };
  if (feature < features.leads) return { count: 'pedals', ...place, of: membersOf(feature, question) };
  return { count: 'leads', ...place, of: partsOf(feature - features.leads, question) };
}

/** One group, a set of them that holds all units of its supplies or all from one source, or all groups (null). */
function placeOf(groups: readonly UnitGroup[] | null): Omit<ProofCount, 'count' | 'of'> {
  if (groups === null) return { supply: null, source: null };
  const [one, ...others] = groups;
  if (one !== undefined && others.length === 0) {
    const { uses, owned, slot } = one;
    return {
      supply: uses.supply.id,
      source: sourceOf(owned),
      ...(uses.unit === null ? {} : { unit: uses.unit }),
      ...(slot === null ? {} : { slot }),
    };
  }
  const sources = new Set(groups.map(({ owned }) => sourceOf(owned)));
  const [source = null] = sources.size === 1 ? sources : [];
  return { supply: null, among: [...new Set(groups.map(({ uses }) => uses.supply.id))], source };
}

/** The supplies with an inlet of the sort; each once. */
const suppliesOf = (sort: InletSort, { supplies }: Question): readonly SupplyId[] => [
  ...new Set(supplies.flatMap(({ supply }) => (inletSortOf(supply) === sort ? [supply.id] : []))),
];

const membersOf = (pedal: number, { bench }: Question): readonly PedalId[] =>
  (bench.classes[pedal]?.members ?? []).map(({ id }) => id);

const partsOf = (kind: number, { bench }: Question): readonly PartId[] => [
  ...new Set((bench.kinds[kind]?.supplyOf ?? []).map(({ part }) => part)),
];

/**
 * Tags by what they belong to. Those of limits on the units of one group are left out: whoever checks counts a group's
 * loss at most so often, which is as good.
 */
function tagsOf(
  rows: Float64Array,
  conditions: Float64Array,
  path: readonly BranchingConstraint[],
  terms: Written,
): ProofTags {
  const { question, program } = terms;
  const { meanings, cover } = program;
  const tagged = <Kind extends RowMeaning['kind']>(kind: Kind) =>
    meanings.flatMap((meaning, row) =>
      meaning.kind === kind ? [{ meaning: meaning as Extract<RowMeaning, { kind: Kind }>, tag: rows[row] ?? 0 }] : [],
    );
  const [bricks] = tagged('bricks');
  const [sockets] = tagged('sockets');
  const [budget] = tagged('budget');
  const ofPedals = tagged('pedals').map(({ meaning: { pedal }, tag }) => ({
    pedal,
    tag,
    sort: question.bench.classes[pedal]?.inlet ?? null,
  }));
  const inlets = tagged('inlets').flatMap(({ meaning: { sort }, tag }) => {
    const supplies = suppliesOf(sort, question);
    const fed = ofPedals.find((each) => each.sort === sort)?.tag ?? 0;
    return supplies.length === 0 ? [] : [{ supplies, fed, paid: positive(-tag) }];
  });
  return {
    pedals: Object.fromEntries(
      ofPedals.flatMap(({ pedal, tag, sort }) =>
        sort === null ? membersOf(pedal, question).map((id) => [id, tag]) : [],
      ),
    ),
    leads: tagged('leads').map(({ meaning, tag }) => ({ parts: partsOf(meaning.lead, question), tag: positive(-tag) })),
    ...(inlets.length === 0 ? {} : { inlets }),
    ...(bricks === undefined ? {} : { bricks: bricks.tag }),
    ...(sockets === undefined ? {} : { sockets: sockets.tag }),
    ...(budget === undefined ? {} : { budget: budget.tag }),
    earlier: tagged('earlier').map(({ tag }) => tag),
    conditions: path.map((condition, index) => (limitsOne(condition, cover) ? 0 : positive(conditions[index] ?? 0))),
  };
}

/** The same number, but for a negative zero. */
const positive = (value: number): number => value + 0;
