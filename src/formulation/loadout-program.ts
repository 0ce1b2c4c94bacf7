import type { CoverColumn, CoverProgram, CoverRow, FixedColumn, PriceRequest, Priced } from '../../solver/cover/program.js';
import type { Carrier } from '../loadout/best-loadout.js';
import { allPedals, pedalsOf, type Bench } from '../loadout/bench.js';
import type { LeadKind } from '../loadout/lead-kinds.js';
import type { Loadout } from '../loadout/loadout.js';
import { feedable, type SupplyUses } from '../loadout/supply-uses.js';
import type { Tags } from '../loadout/tags.js';
import type { Fold } from './fold.js';
import { loadoutMeasures } from './loadout-measures.js';
import type { Question } from './question.js';
import { settle } from './settle.js';

/** Owned or bought units of one supply: one that is told apart from the others, by its number from 1, or all the rest. */
export type Group = {
  readonly uses: SupplyUses;
  readonly owned: boolean;
  readonly price: number;
  readonly slot: number | null;
  readonly most: number;
};

/** How many units are told apart, by supply, of the owned and of the bought ones. */
export type Slots = ReadonlyMap<string, number>;

export const slotKey = ({ uses, owned }: Pick<Group, 'uses' | 'owned'>): string =>
  `${owned ? 'owned' : 'bought'} ${uses.supply.id}`;

/** What earlier steps have settled: their numbers may not grow. */
export type Settled = { readonly fold: Fold; readonly value: number };

/** The program of one step, and what its rows and groups stand for. */
export type LoadoutProgram = {
  readonly cover: CoverProgram<Loadout>;
  readonly groups: readonly Group[];
  readonly meanings: readonly RowMeaning[];
  readonly features: Features;
};

/** What a row's tag belongs to. */
export type RowMeaning =
  | { readonly kind: 'pedals'; readonly pedal: number }
  | { readonly kind: 'leads'; readonly lead: number }
  | { readonly kind: 'units'; readonly group: number }
  | { readonly kind: 'pieces'; readonly lead: number; readonly source: number }
  | { readonly kind: 'left out'; readonly pedal: number }
  | { readonly kind: 'bricks' }
  | { readonly kind: 'budget' }
  | { readonly kind: 'earlier'; readonly step: number };

/** The numbers of the features: pedal classes first, then lead kinds, then these. */
export type Features = {
  readonly leads: number;
  readonly unit: number;
  readonly money: number;
  readonly earlier: number;
  /** How many pedals there are of the so many hungriest classes together: 1 class, 2 classes and so on. */
  readonly hungriest: number;
  readonly count: number;
  /** The classes by their draw, the hungriest first. */
  readonly byDraw: readonly number[];
};

/** How a lead of a kind is paid: at one price as often as one likes, or by a row of its own. */
const hasOnePrice = ({ supplyOf: [first] }: LeadKind): boolean => first?.pieces === Infinity;
const onePrice = ({ supplyOf: [first] }: LeadKind): number => (first?.pieces === Infinity ? first.price : 0);

/**
 * The board as a cover of its pedals by loadouts: minimise the step's number such that every class of pedals is fed, no
 * more units, leads, money and mains sockets are used than there are, and earlier steps keep what they reached.
 */
export function loadoutProgram(
  question: Question,
  supplies: readonly SupplyUses[],
  fold: Fold,
  earlier: readonly Settled[],
  carriers: (uses: SupplyUses) => Carrier,
  slots: Slots = new Map(),
): LoadoutProgram {
  const { bench } = question;
  const features = featuresOf(question, earlier);
  const groups = supplies.flatMap((uses) => groupsOf(uses, slots, bench));
  const { rows, meanings } = rowsOf(question, features, earlier, groups);
  const builder = { question, fold, earlier, features, rows, meanings };
  const counts = bench.classes.map(({ members }) => members.length);
  const cover: CoverProgram<Loadout> = {
    features: features.count,
    unit: features.unit,
    rows,
    fixed: [...leadColumns(builder), ...unpoweredColumns(builder)],
    groups: groups.map(({ uses, most }) => ({ name: uses.supply.id, most })),
    greatest: fold.greatest,
    branching: [
      // A single pedal seldom matters where others do as well; how many of the hungry ones there are does.
      features.byDraw.map((_, index) => features.hungriest + index),
      bench.classes.map((_, pedal) => pedal),
      bench.kinds.map(({ index }) => features.leads + index),
    ],
    price: (request) => priced(request, groups, builder, counts, carriers),
    complete: (columns) => settle(columns.map(({ content }) => content), question, supplies, fold, earlier),
  };
  return { cover, groups, meanings, features };
}

function featuresOf({ bench }: Question, earlier: readonly Settled[]): Features {
  const leads = bench.classes.length;
  const unit = leads + bench.kinds.length;
  const hungriest = unit + 2 + earlier.length;
  const draws = bench.classes.map(({ like }) =>
    like.draw.kind === 'flat' ? like.draw.microamps : Math.max(...like.draw.microamps.values()),
  );
  const byDraw = [...bench.classes.keys()].sort((a, b) => (draws[b] ?? 0) - (draws[a] ?? 0));
  return { leads, unit, money: unit + 1, earlier: unit + 2, hungriest, count: hungriest + byDraw.length, byDraw };
}

function groupsOf(uses: SupplyUses, slots: Slots, bench: Bench): readonly Group[] {
  const useful = pedalsOf(feedable(uses), bench);
  return [true, false].flatMap((owned): Group[] => {
    const most = Math.min(owned ? uses.owned : uses.forSale, useful);
    const kind = { uses, owned, price: owned ? 0 : (uses.supply.price ?? 0) };
    const apart = Math.min(slots.get(slotKey(kind)) ?? 0, most);
    const single = Array.from({ length: apart }, (_, index) => ({ ...kind, slot: index + 1, most: 1 }));
    return most > apart ? [...single, { ...kind, slot: null, most: most - apart }] : single;
  });
}

type Rows = { readonly rows: readonly CoverRow[]; readonly meanings: readonly RowMeaning[] };

function rowsOf(
  question: Question,
  features: Features,
  earlier: readonly Settled[],
  groups: readonly Group[],
): Rows {
  const { bench } = question;
  const rows: CoverRow[] = [];
  const meanings: RowMeaning[] = [];
  const add = (row: Omit<CoverRow, 'group'>, meaning: RowMeaning, group: number | null = null): void => {
    rows.push({ ...row, group });
    meanings.push(meaning);
  };
  for (const [pedal, { members }] of bench.classes.entries()) {
    add({ name: 'fed', feature: pedal, sense: 'at least', bound: members.length }, { kind: 'pedals', pedal });
  }
  for (const kind of bench.kinds) {
    if (hasOnePrice(kind)) continue;
    const feature = features.leads + kind.index;
    add({ name: 'leads', feature, sense: 'at most', bound: 0 }, { kind: 'leads', lead: kind.index });
  }
  const bricks = Math.min(bench.policy.bricks ?? Infinity, bench.policy.sockets ?? Infinity);
  if (bricks < allPedals(bench)) {
    add({ name: 'bricks', feature: features.unit, sense: 'at most', bound: bricks }, { kind: 'bricks' });
  }
  if (bench.policy.budget !== null) {
    add({ name: 'budget', feature: features.money, sense: 'at most', bound: bench.policy.budget }, { kind: 'budget' });
  }
  for (const [step, { value }] of earlier.entries()) {
    add({ name: 'earlier', feature: features.earlier + step, sense: 'at most', bound: value }, { kind: 'earlier', step });
  }
  for (const [group, { most }] of groups.entries()) {
    if (most >= allPedals(bench)) continue;
    add({ name: 'units', feature: features.unit, sense: 'at most', bound: most }, { kind: 'units', group }, group);
  }
  for (const { index, supplyOf } of bench.kinds.filter((kind) => !hasOnePrice(kind))) {
    for (const [source, { pieces }] of supplyOf.entries()) {
      if (pieces === Infinity) continue;
      add({ name: 'pieces', feature: -1, sense: 'at most', bound: pieces }, { kind: 'pieces', lead: index, source });
    }
  }
  for (const [pedal, required] of question.partial ? question.required : []) {
    const free = (bench.classes[pedal]?.members.length ?? 0) - required;
    if (required > 0 && free > 0) {
      add({ name: 'left out', feature: -1, sense: 'at most', bound: free }, { kind: 'left out', pedal });
    }
  }
  return { rows, meanings };
}

type Builder = Rows & {
  readonly question: Question;
  readonly fold: Fold;
  readonly earlier: readonly Settled[];
  readonly features: Features;
};

/** The sources of a lead kind with a row of its own: as many pieces as there are, each at its price. */
function leadColumns({ question, fold, earlier, rows, meanings }: Builder): readonly FixedColumn[] {
  return meanings.flatMap((meaning, row) => {
    if (meaning.kind !== 'leads') return [];
    const kind = question.bench.kinds[meaning.lead];
    return (kind?.supplyOf ?? []).map(({ price, pieces }, source) => ({
      name: 'leads',
      cost: (fold.weights.money * price) / fold.moneyUnit,
      most: pieces,
      entries: [
        { row, coefficient: -1 },
        ...rows.flatMap((_, at) => {
          const other = meanings[at];
          if (other?.kind === 'pieces' && other.lead === meaning.lead && other.source === source) {
            return [{ row: at, coefficient: 1 }];
          }
          if (other?.kind === 'budget') return [{ row: at, coefficient: price }];
          if (other?.kind !== 'earlier') return [];
          const settled = earlier[other.step];
          return settled === undefined
            ? []
            : [{ row: at, coefficient: (settled.fold.weights.money * price) / settled.fold.moneyUnit }];
        }),
      ].filter(({ coefficient }) => coefficient !== 0),
    }));
  });
}

function unpoweredColumns({ question, fold, earlier, meanings }: Builder): readonly FixedColumn[] {
  if (!question.partial) return [];
  return meanings.flatMap((meaning, row) => {
    if (meaning.kind !== 'pedals') return [];
    const members = question.bench.classes[meaning.pedal]?.members.length ?? 0;
    const free = members - (question.required.get(meaning.pedal) ?? 0);
    if (free <= 0) return [];
    const entries = [{ row, coefficient: 1 }];
    for (const [at, other] of meanings.entries()) {
      const weight = other.kind === 'earlier' ? (earlier[other.step]?.fold.weights.unpowered ?? 0) : 0;
      if (weight > 0) entries.push({ row: at, coefficient: weight });
      if (other.kind === 'left out' && other.pedal === meaning.pedal) entries.push({ row: at, coefficient: 1 });
    }
    return [{ name: 'unpowered', cost: fold.weights.unpowered, most: free, entries }];
  });
}

function priced(
  { group, tags, scale, floor, effort }: PriceRequest,
  groups: readonly Group[],
  builder: Builder,
  counts: readonly number[],
  carriers: (uses: SupplyUses) => Carrier,
): Priced<Loadout> {
  const asked = groups[group];
  if (asked === undefined) return { bound: 0, columns: [] };
  const { unitCost, ...prices } = pricesOf(asked, tags, scale, builder);
  const { bound, loadouts } = carriers(asked.uses).best(prices, counts, unitCost + floor, effort);
  const columns = loadouts
    .filter(({ value }) => value - unitCost > floor)
    .map(({ loadout }) => columnOf(loadout, group, asked, builder));
  return { bound: bound - unitCost, columns };
}

/** The tags of the program's features as what pedals are worth and leads, noise, volts and the unit itself cost. */
function pricesOf(
  { price }: Group,
  tags: Float64Array,
  scale: number,
  { question, fold, earlier, features }: Builder,
): Tags & { readonly unitCost: number } {
  const effective = (measure: 'exposed' | 'bricks' | 'parts' | 'offPreferred'): number =>
    earlier.reduce(
      (sum, settled, step) => sum - (tags[features.earlier + step] ?? 0) * settled.fold.weights[measure],
      scale * fold.weights[measure],
    );
  const money = (minorUnits: number): number =>
    earlier.reduce(
      (sum, settled, step) =>
        sum - ((tags[features.earlier + step] ?? 0) * settled.fold.weights.money * minorUnits) / settled.fold.moneyUnit,
      (scale * fold.weights.money * minorUnits) / fold.moneyUnit - (tags[features.money] ?? 0) * minorUnits,
    );
  const parts = effective('parts');
  return {
    pedals: pedalTags(tags, features),
    leads: Float64Array.from(
      question.bench.kinds,
      (kind) => parts + money(onePrice(kind)) - (tags[features.leads + kind.index] ?? 0),
    ),
    offPreferred: effective('offPreferred'),
    exposed: effective('exposed'),
    unitCost: effective('bricks') + money(price) - (tags[features.unit] ?? 0),
  };
}

/** A tag on the hungriest classes together is one on each of them. */
function pedalTags(tags: Float64Array, { leads, hungriest, byDraw }: Features): Float64Array {
  const pedals = tags.slice(0, leads);
  let together = 0;
  for (let index = byDraw.length - 1; index >= 0; index -= 1) {
    together += tags[hungriest + index] ?? 0;
    const pedal = byDraw[index] ?? 0;
    pedals[pedal] = (pedals[pedal] ?? 0) + together;
  }
  return pedals;
}

function columnOf(
  loadout: Loadout,
  group: number,
  { price }: Group,
  { question, fold, earlier, features }: Builder,
): CoverColumn<Loadout> {
  const { pedals, leads, measures } = loadoutMeasures(loadout, question.bench);
  const direct = [...leads].reduce((sum, [kind, count]) => {
    const lead = question.bench.kinds[kind];
    return lead === undefined ? sum : sum + count * onePrice(lead);
  }, price);
  const all = { ...measures, money: direct };
  const weighed = (by: Fold): number =>
    by.weights.money * (all.money / by.moneyUnit) +
    by.weights.exposed * all.exposed +
    by.weights.bricks +
    by.weights.parts * all.parts +
    by.weights.offPreferred * all.offPreferred;
  return {
    group,
    cost: weighed(fold),
    amounts: [
      ...pedals,
      ...[...leads].map(([kind, count]) => [features.leads + kind, count] as const),
      [features.unit, 1],
      ...(direct > 0 ? [[features.money, direct] as const] : []),
      ...earlier.map((settled, step) => [features.earlier + step, weighed(settled.fold)] as const),
      ...hungriestAmounts(pedals, features),
    ],
    content: loadout,
  };
}

function hungriestAmounts(pedals: ReadonlyMap<number, number>, { hungriest, byDraw }: Features): readonly (readonly [number, number])[] {
  let together = 0;
  return byDraw.flatMap((pedal, index) => {
    together += pedals.get(pedal) ?? 0;
    return together > 0 ? [[hungriest + index, together] as const] : [];
  });
}
