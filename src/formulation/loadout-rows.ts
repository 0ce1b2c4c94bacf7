import { gathered } from '../../solver/gathered.js';
import type { CoverRow, FixedColumn } from '../../solver/cover/program.js';
import type { UnitRef } from '../domain/inlet.js';
import { mostUnits } from '../loadout/bench.js';
import { classesOfSort, inletSorts } from '../loadout/inlet-classes.js';
import { hasOnePrice, type LeadKind } from '../loadout/lead-kinds.js';
import { isUnit, unitsHeld } from '../loadout/today.js';
import type { ScalarObjective, SettledStep } from './scalar-objective.js';
import type { Features } from './loadout-features.js';
import type { UnitGroup } from './loadout-groups.js';
import { mostLeftOut, type Question } from './question.js';

/** What a row's dual price is a price of. */
export type RowMeaning =
  | { readonly kind: 'pedals'; readonly pedal: number }
  | { readonly kind: 'leads'; readonly lead: number }
  | { readonly kind: 'inlets'; readonly sort: string }
  | { readonly kind: 'units'; readonly group: number }
  | { readonly kind: 'held'; readonly unit: UnitRef }
  | { readonly kind: 'pieces'; readonly lead: number; readonly source: number }
  | { readonly kind: 'left out'; readonly pedal: number }
  | { readonly kind: 'bricks' }
  | { readonly kind: 'sockets' }
  | { readonly kind: 'budget' }
  | { readonly kind: 'earlier'; readonly step: number };

/** What a lead of a kind costs that can be had as often as one likes at one price; nothing where a row of its own pays it. */
export const onePrice = (kind: LeadKind): number => (hasOnePrice(kind) ? (kind.supplyOf[0]?.price ?? 0) : 0);

export type Rows = { readonly rows: readonly CoverRow[]; readonly meanings: readonly RowMeaning[] };

/** A row with what it means. */
type Meant = {
  readonly row: Omit<CoverRow, 'groups'> & Partial<Pick<CoverRow, 'groups'>>;
  readonly meaning: RowMeaning;
};

/**
 * The rows of a program: pedals are fed; leads, bricks, sockets, money and units are limited; earlier steps keep what they reached. Money
 * is spent in multiples of `moneyUnit`.
 */
export function rowsOf(
  question: Question,
  features: Features,
  earlier: readonly SettledStep[],
  groups: readonly UnitGroup[],
  moneyUnit: number,
): Rows {
  const all = [
    ...fedRows(question),
    ...inletRows(question, features),
    ...leadRows(question, features),
    ...limitRows(question, features, moneyUnit),
    ...earlier.map(({ value }, step): Meant => {
      const feature = features.earlier + step;
      return { row: { name: 'earlier', feature, sense: 'at most', bound: value }, meaning: { kind: 'earlier', step } };
    }),
    ...unitRows(features, groups),
    ...heldRows(question, features, groups),
  ];
  return {
    rows: all.map(({ row }) => ({ groups: null, ...row })),
    meanings: all.map(({ meaning }) => meaning),
  };
}

/** Every class of pedals is fed, or left out no more often than it may be. */
const fedRows = (question: Question): readonly Meant[] =>
  gathered(question.bench.classes, ({ members }, pedal): Meant[] => {
    const fed: Meant = {
      row: { name: 'fed', feature: pedal, sense: 'at least', bound: members.length },
      meaning: { kind: 'pedals', pedal },
    };
    const free = mostLeftOut(question, pedal);
    if (free <= 0 || free === members.length) return [fed];
    const row = { name: 'left out', feature: -1, sense: 'at most' as const, bound: free };
    return [fed, { row, meaning: { kind: 'left out', pedal } }];
  });

/**
 * Rule `inlet`: as many inlets of a sort are fed as units with such an inlet are in use, so those in use and the inlets that
 * are left out (`leftOutColumns`) are no more than there are.
 */
const inletRows = ({ bench }: Question, features: Features): readonly Meant[] =>
  inletSorts(bench).map((sort, index): Meant => {
    const bound = classesOfSort(bench, sort).reduce((sum, each) => sum + (bench.classes[each]?.members.length ?? 0), 0);
    const row = { name: 'inlets', feature: features.fed + index, sense: 'at most' as const, bound };
    return { row, meaning: { kind: 'inlets', sort } };
  });

/** Leads that are limited, or of several prices, come from their sources, of which each has so many pieces. */
const leadRows = ({ bench }: Question, features: Features): readonly Meant[] =>
  gathered(
    bench.kinds.filter((kind) => !hasOnePrice(kind)),
    ({ index, supplyOf }): Meant[] => [
      {
        row: { name: 'leads', feature: features.leads + index, sense: 'at most', bound: 0 },
        meaning: { kind: 'leads', lead: index },
      },
      ...gathered(supplyOf, ({ pieces }, source): Meant[] => {
        const row = { name: 'pieces', feature: -1, sense: 'at most' as const, bound: pieces };
        return pieces === Infinity ? [] : [{ row, meaning: { kind: 'pieces', lead: index, source } }];
      }),
    ],
  );

/**
 * Rule `limit`, where it can bind: every unit in use feeds something. Of the budget only what can be spent counts: without that a plan
 * that is a cent too dear is so little beyond it that no tags can tell.
 */
function limitRows({ bench }: Question, features: Features, moneyUnit: number): readonly Meant[] {
  const limits = [
    { kind: 'bricks', feature: features.bricks, enough: mostUnits(bench) },
    { kind: 'sockets', feature: features.sockets, enough: mostUnits(bench) },
    { kind: 'budget', feature: features.money, enough: Infinity },
  ] as const;
  return gathered(limits, ({ kind, feature, enough }): Meant[] => {
    const limit = bench.policy[kind];
    if (limit === null || limit >= enough) return [];
    const bound = kind === 'budget' ? limit - (limit % moneyUnit) : limit;
    return [{ row: { name: kind, feature, sense: 'at most', bound }, meaning: { kind } }];
  });
}

/** Rule `stock` for units, where it can bind. */
const unitRows = (features: Features, groups: readonly UnitGroup[]): readonly Meant[] =>
  gathered(groups, ({ most, scarce }, group): Meant[] => {
    const row = { name: 'units', feature: features.unit, sense: 'at most' as const, bound: most, groups: [group] };
    return scarce ? [{ row, meaning: { kind: 'units', group } }] : [];
  });

/** A unit whose inlet must stay where it is is in use; a row without a group is kept by none. */
const heldRows = ({ today }: Question, features: Features, groups: readonly UnitGroup[]): readonly Meant[] =>
  unitsHeld(today).map((unit): Meant => {
    const of = gathered(groups, ({ uses }, group) => (isUnit(uses, unit) ? [group] : []));
    const row = { name: 'held', feature: features.unit, sense: 'at least' as const, bound: 1, groups: of };
    return { row, meaning: { kind: 'held', unit } };
  });

/** All that the columns of a program are made with. */
export type CoverBuilder = Rows & {
  readonly question: Question;
  readonly objective: ScalarObjective;
  readonly earlier: readonly SettledStep[];
  readonly features: Features;
};

/** The sources of a lead kind with a row of its own: as many pieces as there are, each at its price. */
export function leadColumns({ question, objective, earlier, rows, meanings }: CoverBuilder): readonly FixedColumn[] {
  return gathered(meanings, (meaning, row) => {
    if (meaning.kind !== 'leads') return [];
    const kind = question.bench.kinds[meaning.lead];
    return (kind?.supplyOf ?? []).map(({ price, pieces }, source) => ({
      name: 'leads',
      cost: (objective.weights.money * price) / objective.moneyUnit,
      most: pieces,
      entries: [
        { row, coefficient: -1 },
        ...gathered(rows, (_, at) => {
          const other = meanings[at];
          if (other?.kind === 'pieces' && other.lead === meaning.lead && other.source === source) {
            return [{ row: at, coefficient: 1 }];
          }
          if (other?.kind === 'budget') return [{ row: at, coefficient: price }];
          if (other?.kind !== 'earlier') return [];
          const settled = earlier[other.step];
          return settled === undefined
            ? []
            : [{ row: at, coefficient: (settled.objective.weights.money * price) / settled.objective.moneyUnit }];
        }),
      ].filter(({ coefficient }) => coefficient !== 0),
    }));
  });
}

/** Pedals that are left out, where a plan may be partial, and inlets whose units are not in use. */
export function leftOutColumns({ question, objective, earlier, meanings }: CoverBuilder): readonly FixedColumn[] {
  return gathered(meanings, (meaning, row) => {
    if (meaning.kind !== 'pedals') return [];
    const free = mostLeftOut(question, meaning.pedal);
    const { berth = null, inlet = null } = question.bench.classes[meaning.pedal] ?? {};
    if (free <= 0) return [];
    // An inlet that is not fed costs nothing, but a unit that is not in use.
    const isPedal = inlet === null;
    // What is left without power does not stay where it is.
    const weighed = ({ weights }: ScalarObjective): number =>
      isPedal ? weights.unpowered + (berth === null ? 0 : weights.moved) : 0;
    const entries = [{ row, coefficient: 1 }];
    for (const [at, other] of meanings.entries()) {
      const settled = other.kind === 'earlier' ? earlier[other.step] : undefined;
      const weight = settled === undefined ? 0 : weighed(settled.objective);
      if (weight > 0) entries.push({ row: at, coefficient: weight });
      if (other.kind === 'inlets' && other.sort === inlet) entries.push({ row: at, coefficient: 1 });
      if (other.kind === 'left out' && other.pedal === meaning.pedal) entries.push({ row: at, coefficient: 1 });
    }
    return [{ name: isPedal ? 'unpowered' : 'inlet left out', cost: weighed(objective), most: free, entries }];
  });
}
