import type { CoverColumn, PricingRequest, PricingAnswer } from '../../solver/cover/program.js';
import { perPedalTier } from '../domain/pedal-tier.js';
import { natureOf } from '../domain/source.js';
import type { Carrier } from '../loadout/best-loadout.js';
import type { Loadout } from '../loadout/loadout.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import type { Tags } from '../loadout/tags.js';
import { foldedValue, type Measures } from './fold.js';
import type { UnitGroup } from './loadout-groups.js';
import { loadoutMeasures } from './loadout-measures.js';
import { onePrice, type CoverBuilder } from './loadout-rows.js';

/** The best loadouts of a group under the program's tags. */
export function priced(
  { group, duals: tags, scale, floor, effort }: PricingRequest,
  groups: readonly UnitGroup[],
  builder: CoverBuilder,
  counts: readonly number[],
  carriers: (uses: SupplyUses) => Carrier,
): PricingAnswer<Loadout> {
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
  { uses, price }: UnitGroup,
  tags: Float64Array,
  scale: number,
  { question, fold, earlier, features }: CoverBuilder,
): Tags & { readonly unitCost: number } {
  const effective = (measure: Exclude<keyof Measures, 'money'>): number =>
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
  const { bricks, sockets } = natureOf(uses.supply.source);
  return {
    pedals: tags.subarray(0, features.leads),
    leads: Float64Array.from(
      question.bench.kinds,
      (kind) => parts + money(onePrice(kind)) - (tags[features.leads + kind.index] ?? 0),
    ),
    ...perPedalTier(effective),
    exposed: effective('exposed'),
    unitCost:
      bricks * (effective('bricks') - (tags[features.bricks] ?? 0)) +
      sockets * (effective('sockets') - (tags[features.sockets] ?? 0)) +
      money(price) -
      (tags[features.unit] ?? 0),
  };
}

function columnOf(
  loadout: Loadout,
  group: number,
  { price }: UnitGroup,
  { question, fold, earlier, features }: CoverBuilder,
): CoverColumn<Loadout> {
  const { pedals, leads, measures } = loadoutMeasures(loadout, question.bench);
  const direct = [...leads].reduce((sum, [kind, count]) => {
    const lead = question.bench.kinds[kind];
    return lead === undefined ? sum : sum + count * onePrice(lead);
  }, price);
  const all = { ...measures, money: direct, unpowered: 0 };
  const { bricks, sockets } = measures;
  return {
    group,
    cost: foldedValue(fold, all),
    amounts: [
      ...pedals,
      ...[...leads].map(([kind, count]) => [features.leads + kind, count] as const),
      [features.unit, 1],
      ...(bricks > 0 ? [[features.bricks, bricks] as const] : []),
      ...(sockets > 0 ? [[features.sockets, sockets] as const] : []),
      ...(direct > 0 ? [[features.money, direct] as const] : []),
      ...earlier.map((settled, step) => [features.earlier + step, foldedValue(settled.fold, all)] as const),
    ],
    content: loadout,
  };
}
