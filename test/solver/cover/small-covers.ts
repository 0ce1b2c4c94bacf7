/** Covering programs whose columns are all listed, small enough to try everything. */
import fc from 'fast-check';

import type {
  Completed,
  CoverColumn,
  CoverProgram,
  CoverRow,
  FixedColumn,
  PossibleCosts,
  PricingRequest,
} from '../../../solver/cover/program.js';

export type Column = CoverColumn<number>;

export type SmallCover = {
  readonly demands: readonly number[];
  readonly columns: readonly Column[];
  readonly groups: readonly { readonly name: string; readonly most: number; readonly alike?: string }[];
  /** At most so much of a feature in all: of the pedals' features none, of `resource` some. */
  readonly resource: { readonly bound: number; readonly rented: readonly number[] } | null;
  /** At most so many columns in all. */
  readonly units: number | null;
  /** What going without one of each demand costs, and how often that may be; null where it may not. */
  readonly without: readonly ({ readonly cost: number; readonly most: number } | null)[];
};

export const smallCovers: fc.Arbitrary<SmallCover> = fc
  .record({ demands: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 4 }), groups: groups() })
  .chain(({ demands, groups: known }) =>
    fc.record({
      demands: fc.constant(demands),
      groups: fc.constant(known),
      columns: fc
        .array(columnOf(demands.length, known.length), { minLength: 2, maxLength: 9 })
        .map((columns) => columns.map((column, content) => ({ ...column, content }))),
      resource: fc.option(
        fc.record({
          bound: fc.integer({ min: 0, max: 4 }),
          rented: fc.array(fc.integer({ min: 0, max: 8 }), { maxLength: 2 }),
        }),
      ),
      units: fc.option(fc.integer({ min: 1, max: 5 }), { freq: 2 }),
      without: fc.tuple(
        ...demands.map((demand) =>
          fc.option(fc.record({ cost: fc.integer({ min: 5, max: 40 }), most: fc.integer({ min: 1, max: demand }) }), {
            freq: 3,
          }),
        ),
      ),
    }),
  );

function groups() {
  return fc.array(fc.record({ name: fc.constant('group'), most: fc.constantFrom(1, 1, 2, 3) }), {
    minLength: 1,
    maxLength: 3,
  });
}

function columnOf(demands: number, groupCount: number): fc.Arbitrary<Omit<Column, 'content'>> {
  return fc
    .record({
      group: fc.nat(groupCount - 1),
      cost: fc.integer({ min: 0, max: 20 }),
      fed: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: demands, maxLength: demands }),
      resource: fc.integer({ min: 0, max: 2 }),
    })
    .map(({ group, cost, fed, resource }) => ({
      group,
      cost,
      amounts: [...fed, resource, 1].flatMap((amount, feature) => (amount > 0 ? [[feature, amount] as const] : [])),
    }));
}

/** The greatest cost that any solution of these programs has. */
const greatest = 1_000;

/** The program; features are the demands, the resource and the unit, in this order. */
export function programOf(cover: SmallCover, price?: CoverProgram<number>['price']): CoverProgram<number> {
  const { demands, columns, groups: known, resource, units } = cover;
  const unit = demands.length + 1;
  const rows: CoverRow[] = demands.map((bound, feature) => ({
    name: 'demand',
    feature,
    groups: null,
    sense: 'at least',
    bound,
  }));
  const fixed: FixedColumn[] = [];
  if (resource !== null) {
    const row =
      rows.push({ name: 'resource', feature: unit - 1, groups: null, sense: 'at most', bound: resource.bound }) - 1;
    // More of the resource can be had: two of it at the first price, one at each of the others.
    for (const [index, cost] of resource.rented.entries()) {
      fixed.push({ name: 'rent', cost, most: index === 0 ? 2 : 1, entries: [{ row, coefficient: -1 }] });
    }
  }
  if (units !== null) rows.push({ name: 'units', feature: unit, groups: null, sense: 'at most', bound: units });
  known.forEach(({ most }, group) =>
    rows.push({ name: 'group', feature: unit, groups: [group], sense: 'at most', bound: most }),
  );
  for (const [demand, without] of cover.without.entries()) {
    if (without === null) continue;
    fixed.push({ name: 'without', ...without, entries: [{ row: demand, coefficient: 1 }] });
  }
  for (const column of fixed) {
    const row = rows.push({ name: 'most', feature: -1, groups: null, sense: 'at most', bound: column.most }) - 1;
    (column.entries as { row: number; coefficient: number }[]).push({ row, coefficient: 1 });
  }
  return {
    features: unit + 1,
    unit,
    rows,
    fixed,
    groups: known.map(({ name, most, alike = null }, group) => ({
      name,
      most,
      alike,
      leastCost: Math.min(...columns.filter((column) => column.group === group).map(({ cost }) => cost), greatest),
    })),
    start: [],
    greatest,
    branching: {
      inAll: [unit - 1],
      sets: () => pairsOf(known.length),
      withinGroups: [[...demands.keys()], [unit - 1]],
    },
    capped: [...demands.keys()],
    possible: anyCost,
    price: price ?? ((request) => exactPrice(columns, request)),
    complete: (chosen) =>
      completed(
        chosen.map(({ content }) => content),
        cover,
      ),
  };
}

/** Every whole number. */
export const anyCost: PossibleCosts = { below: (cost) => cost - 1, from: (cost) => cost };

/** All pairs of more than two groups. */
const pairsOf = (count: number): readonly (readonly number[])[] =>
  count === 3
    ? [
        [0, 1],
        [0, 2],
        [1, 2],
      ]
    : [];

/** What a column is worth under the duals. */
export const worthOf = ({ cost, amounts }: Column, { duals, scale }: Pick<PricingRequest, 'duals' | 'scale'>): number =>
  amounts.reduce((sum, [feature, amount]) => sum + amount * (duals[feature] ?? 0), -scale * cost);

/** The best listed column of the group that keeps the caps, if it is worth more than the floor, and exactly what it is worth. */
export function exactPrice(columns: readonly Column[], request: PricingRequest) {
  let best: { readonly column: Column; readonly worth: number } | null = null;
  for (const column of columns) {
    const worth = worthOf(column, request);
    if (column.amounts.some(([feature, amount]) => amount > (request.caps.get(feature) ?? Infinity))) continue;
    if (column.group === request.group && worth > (best?.worth ?? -Infinity)) best = { column, worth };
  }
  return best === null
    ? { bound: -Infinity, columns: [] }
    : { bound: best.worth, columns: best.worth > request.floor ? [best.column] : [] };
}

/** What these columns cost with the cheapest of the rest that completes them; null when nothing does. */
export function completed(contents: readonly number[], cover: SmallCover) {
  const { demands, columns, groups: known, resource, units, without } = cover;
  const chosen = contents.flatMap((content) => columns[content] ?? []);
  if (units !== null && chosen.length > units) return null;
  if (known.some(({ most }, group) => chosen.filter((column) => column.group === group).length > most)) return null;
  const amountOf = (feature: number): number =>
    chosen.reduce((sum, { amounts }) => sum + (amounts.find(([each]) => each === feature)?.[1] ?? 0), 0);
  let value = chosen.reduce((sum, { cost }) => sum + cost, 0);
  if (resource !== null) {
    const rents = resource.rented.flatMap((cost, index) => (index === 0 ? [cost, cost] : [cost])).sort((a, b) => a - b);
    const missing = Math.max(0, amountOf(demands.length) - resource.bound);
    if (missing > rents.length) return null;
    value += rents.slice(0, missing).reduce((sum, cost) => sum + cost, 0);
  }
  for (const [feature, demand] of demands.entries()) {
    const missing = Math.max(0, demand - amountOf(feature));
    const free = without[feature];
    if (missing > (free?.most ?? 0)) return null;
    value += missing * (free?.cost ?? 0);
  }
  return { value, contents };
}

/** A cheapest solution by trying every number of every column; null when there is none. */
export function cheapest(cover: SmallCover): Completed<number> | null {
  let best: Completed<number> | null = null;
  const used = cover.groups.map(() => 0);
  const extend = (from: number, contents: readonly number[]): void => {
    const found = completed(contents, cover);
    if (found !== null && (best === null || found.value < best.value)) best = found;
    for (let index = from; index < cover.columns.length; index += 1) {
      const group = cover.columns[index]?.group ?? 0;
      if ((used[group] ?? 0) >= (cover.groups[group]?.most ?? 0)) continue;
      used[group] = (used[group] ?? 0) + 1;
      extend(index, [...contents, index]);
      used[group] = (used[group] ?? 0) - 1;
    }
  };
  extend(0, []);
  return best;
}

export const leastCost = (cover: SmallCover): number | null => cheapest(cover)?.value ?? null;
