import { remembered } from '../../solver/remembered.js';
import type { CoverColumn, PricingRequest, PricingAnswer } from '../../solver/cover/program.js';
import { countsLead, leadTiers, perLeadTier } from '../domain/counted-tiers.js';
import { perPedalTier } from '../domain/pedal-tier.js';
import { natureOf } from '../domain/source.js';
import type { Supply } from '../domain/supply.js';
import type { LoadoutPricer } from '../loadout/best-loadout.js';
import { inletSorts } from '../loadout/inlet-classes.js';
import { inletSortOf } from '../loadout/inlet-sort.js';
import type { LeadKind } from '../loadout/lead-kinds.js';
import type { Loadout } from '../loadout/loadout.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import type { LoadoutDuals } from '../loadout/loadout-duals.js';
import { scalarValue, type Measures } from './scalar-objective.js';
import { takenIn, type Features } from './loadout-features.js';
import type { UnitGroup } from './loadout-groups.js';
import { loadoutMeasures } from './loadout-measures.js';
import { onePrice, type CoverBuilder } from './loadout-rows.js';
import type { Question } from './question.js';

/** Finds the best loadouts of a group under the program's dual prices. */
export function loadoutPricing(
  groups: readonly UnitGroup[],
  builder: CoverBuilder,
  pricers: (uses: SupplyUses) => LoadoutPricer,
): (request: PricingRequest) => PricingAnswer<Loadout> {
  const counts = builder.question.bench.classes.map(({ members }) => members.length);
  // Most groups are asked under the same prices.
  const known = new WeakMap<Float64Array, GroupPrices>();
  return ({ group, duals, scale, floor, caps, effort }) => {
    const asked = groups[group];
    if (asked === undefined) return { bound: 0, columns: [] };
    const prices = remembered(known, duals, () => pricesOf(duals, scale, builder));
    const unitCost = prices.unitCost(asked);
    const most = caps.size === 0 ? counts : counts.map((count, pedal) => Math.min(count, caps.get(pedal) ?? count));
    const { bound, loadouts } = pricers(asked.uses).best(prices.duals, most, unitCost + floor, effort);
    const columns = loadouts
      .filter(({ value }) => value - unitCost > floor)
      .map(({ loadout }) => columnOf(loadout, group, asked, builder));
    return { bound: bound - unitCost, columns };
  };
}

/** Dual prices of the program's features as what pedals are worth and leads, noise and volts cost, and what a unit itself costs. */
type GroupPrices = { readonly duals: LoadoutDuals; readonly unitCost: (group: UnitGroup) => number };

export function pricesOf(
  duals: Float64Array,
  scale: number,
  { question, objective, earlier, features }: CoverBuilder,
): GroupPrices {
  const effective = (measure: Exclude<keyof Measures, 'money'>): number =>
    earlier.reduce(
      (sum, settled, step) => sum - (duals[features.earlier + step] ?? 0) * settled.objective.weights[measure],
      scale * objective.weights[measure],
    );
  const money = (minorUnits: number): number =>
    earlier.reduce(
      (sum, settled, step) =>
        sum -
        ((duals[features.earlier + step] ?? 0) * settled.objective.weights.money * minorUnits) /
          settled.objective.moneyUnit,
      (scale * objective.weights.money * minorUnits) / objective.moneyUnit - (duals[features.money] ?? 0) * minorUnits,
    );
  const counted = perLeadTier(effective);
  const leadPrice = (kind: LeadKind): number =>
    leadTiers.reduce((sum, tier) => (countsLead(tier, kind) ? sum + counted[tier] : sum), 0) +
    money(onePrice(kind)) -
    (duals[features.leads + kind.index] ?? 0);
  const brick = effective('bricks') - (duals[features.bricks] ?? 0);
  const socket = effective('sockets') - (duals[features.sockets] ?? 0);
  return {
    duals: {
      pedals: duals.subarray(0, features.leads),
      leads: new Float64Array(question.bench.kinds.map(leadPrice)),
      taking: takingPrices(features, duals, question),
      ...perPedalTier(effective),
      exposed: effective('exposed'),
      newlyExposed: effective('newlyExposed'),
      moved: effective('moved'),
    },
    unitCost: ({ uses, price }) => {
      const { bricks, sockets } = natureOf(uses.supply.source);
      return (
        bricks * brick +
        sockets * socket +
        money(price) -
        (duals[features.unit] ?? 0) -
        fedFeatures(uses.supply, question, features).reduce((sum, feature) => sum + (duals[feature] ?? 0), 0)
      );
    },
  };
}

/** What conditions on who takes which lead are worth; undefined where that is nothing. */
function takingPrices({ taking, pairs }: Features, duals: Float64Array, { bench }: Question): LoadoutDuals['taking'] {
  const prices = new Map<number, Float64Array>();
  for (const [at, { pedal, lead }] of pairs.entries()) {
    const dual = duals[taking + at] ?? 0;
    if (dual === 0) continue;
    const own = prices.get(pedal) ?? new Float64Array(bench.kinds.length);
    own[lead] = dual;
    prices.set(pedal, own);
  }
  return prices.size === 0 ? undefined : prices;
}

/** What counts the units in use with an inlet like this supply's; nothing for one without. */
function fedFeatures(supply: Supply, { bench }: Question, { fed }: CoverBuilder['features']): readonly number[] {
  const sort = inletSortOf(supply);
  return sort === null ? [] : [fed + inletSorts(bench).indexOf(sort)];
}

export function columnOf(
  loadout: Loadout,
  group: number,
  { uses, price }: UnitGroup,
  { question, objective, earlier, features }: CoverBuilder,
): CoverColumn<Loadout> {
  const { pedals, leads, measures } = loadoutMeasures(loadout, question.bench);
  const amounts: [feature: number, amount: number][] = [...pedals, [features.unit, 1]];
  const note = (feature: number, amount: number): void => {
    if (amount > 0) amounts.push([feature, amount]);
  };
  let direct = price;
  for (const [kind, count] of leads) {
    const lead = question.bench.kinds[kind];
    if (lead !== undefined) direct += count * onePrice(lead);
    note(features.leads + kind, count);
  }
  const all = { money: direct, unpowered: 0, ...measures };
  for (const feature of fedFeatures(uses.supply, question, features)) note(feature, 1);
  note(features.bricks, measures.bricks);
  note(features.sockets, measures.sockets);
  note(features.money, direct);
  for (const [step, settled] of earlier.entries()) note(features.earlier + step, scalarValue(settled.objective, all));
  for (const [feature, amount] of takenIn(loadout, features)) note(feature, amount);
  return { group, cost: scalarValue(objective, all), amounts, content: loadout };
}
