import { gathered } from '../../solver/gathered.js';
import type { CoverProgram } from '../../solver/cover/program.js';
import { natureOf } from '../domain/source.js';
import type { LoadoutPricer } from '../loadout/best-loadout.js';
import type { LeadKind } from '../loadout/lead-kinds.js';
import type { Loadout } from '../loadout/loadout.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import type { ScalarObjective, SettledStep } from './scalar-objective.js';
import { featuresOf, takingPairs, type Features } from './loadout-features.js';
import { groupsOf, kindKey, type ToldApart, type UnitGroup } from './loadout-groups.js';
import { LoadoutPool } from './loadout-pool.js';
import { loadoutPricing } from './loadout-pricing.js';
import { leadColumns, leftOutColumns, rowsOf, type RowMeaning } from './loadout-rows.js';
import { possibleNumbers } from './possible-numbers.js';
import type { Question } from './question.js';
import { settle } from './settle.js';
import { knownColumns, startColumns } from './start-columns.js';
import { tierRanges, type Known } from './tier-ranges.js';
import { unitSets } from './unit-sets.js';

/** The program of one step, and what its rows and groups stand for. */
export type LoadoutProgram = {
  readonly cover: CoverProgram<Loadout>;
  readonly groups: readonly UnitGroup[];
  readonly meanings: readonly RowMeaning[];
  readonly features: Features;
};

/**
 * Which units are told apart, what the tiers of earlier steps come to, loadouts to begin with, whatever they cost here, and whether a proof
 * is to be written: that keeps to the budget as the board has it.
 */
type StepTerms = {
  readonly apart: ToldApart;
  readonly settled: Known;
  readonly pool: LoadoutPool;
  readonly isWritten: boolean;
};

/** What a unit costs with nothing on it. */
function leastCost({ supply }: SupplyUses, price: number, { weights, moneyUnit }: ScalarObjective): number {
  const { bricks, sockets } = natureOf(supply.source);
  return weights.bricks * bricks + weights.sockets * sockets + weights.money * (price / moneyUnit);
}

/**
 * The board as a cover of its pedals by loadouts: minimise the step's number such that every class of pedals is fed, no
 * more units, leads, money and mains sockets are used than there are, and earlier steps keep what they reached.
 */
export function loadoutProgram(
  question: Question,
  supplies: readonly SupplyUses[],
  objective: ScalarObjective,
  earlier: readonly SettledStep[],
  pricers: (uses: SupplyUses) => LoadoutPricer,
  { apart = new Set(), settled = new Map(), pool = new LoadoutPool(), isWritten = false }: Partial<StepTerms> = {},
): LoadoutProgram {
  const { bench } = question;
  // Whoever checks a proof does not count who takes which lead.
  const features = featuresOf(question, earlier, isWritten ? [] : takingPairs(question, supplies));
  const groups = gathered(supplies, (uses) => groupsOf(uses, apart, bench));
  const { rows, meanings } = rowsOf(question, features, earlier, groups, isWritten ? 1 : objective.moneyUnit);
  const builder = { question, objective, earlier, features, rows, meanings };
  const leadsOf = (kinds: readonly LeadKind[]): readonly number[] => kinds.map(({ index }) => features.leads + index);
  // Ways to pedals that take adapters or join leads for nothing are left out, so a plan could have more than are counted.
  const chainLeads = leadsOf(bench.kinds.filter(({ role }) => role.kind === 'chain'));
  // Most boards are solved before anything is branched on.
  let sets: ReturnType<typeof unitSets> | null = null;
  const cover: CoverProgram<Loadout> = {
    features: features.count,
    unit: features.unit,
    rows,
    fixed: [...leadColumns(builder), ...leftOutColumns(builder)],
    groups: groups.map((group) => ({
      name: group.uses.supply.id,
      most: group.most,
      leastCost: leastCost(group.uses, group.price, objective),
      alike: group.slot === null ? null : kindKey(group),
    })),
    start: [...startColumns(groups, builder, pricers), ...knownColumns(pool, groups, builder)],
    greatest: objective.greatest,
    branching: {
      inAll: chainLeads,
      sets: () => (sets ??= unitSets(groups)),
      withinGroups: [
        bench.classes.map((_, pedal) => pedal),
        leadsOf(bench.kinds),
        features.pairs.map((_, at) => features.taking + at),
      ],
    },
    capped: bench.classes.map((_, pedal) => pedal),
    possible: possibleNumbers(objective, tierRanges(question, groups), settled),
    price: loadoutPricing(groups, builder, pricers),
    complete: (columns) =>
      settle(
        columns.map(({ content }) => content),
        question,
        supplies,
        objective,
        earlier,
      ),
  };
  return { cover, groups, meanings, features };
}
