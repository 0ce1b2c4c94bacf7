import { gathered } from '../../solver/gathered.js';
import type { CoverColumn } from '../../solver/cover/program.js';
import type { LoadoutPricer } from '../loadout/best-loadout.js';
import type { Loadout } from '../loadout/loadout.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import type { UnitGroup } from './loadout-groups.js';
import type { LoadoutPool } from './loadout-pool.js';
import { columnOf, pricesOf } from './loadout-pricing.js';
import { onePrice, type CoverBuilder } from './loadout-rows.js';

/**
 * For every class of pedals the cheapest loadout of one of them: without these all pedals look alike to the first dual
 * prices, which are what going without costs.
 */
export function startColumns(
  groups: readonly UnitGroup[],
  builder: CoverBuilder,
  pricers: (uses: SupplyUses) => LoadoutPricer,
): readonly CoverColumn<Loadout>[] {
  const prices = pricesOf(leadsPaid(builder), 1, builder);
  const cheapest = new Map<number, { readonly cost: number; readonly loadout: Loadout; readonly group: number }>();
  for (const [group, asked] of groups.entries()) {
    const unitCost = prices.unitCost(asked);
    for (const [pedal, { loadout, value }] of pricers(asked.uses).alone(prices.duals)) {
      const cost = unitCost - value;
      if (cost < (cheapest.get(pedal)?.cost ?? Infinity)) cheapest.set(pedal, { cost, loadout, group });
    }
  }
  return gathered([...cheapest.values()], ({ loadout, group }) => {
    const asked = groups[group];
    return asked === undefined ? [] : [columnOf(loadout, group, asked, builder)];
  });
}

/**
 * Loadouts of earlier questions as columns of every group that they fit, at what they cost and take in this program; of units told
 * apart the first one's alone, which the others take theirs from once it is in use.
 */
export const knownColumns = (
  pool: LoadoutPool,
  groups: readonly UnitGroup[],
  builder: CoverBuilder,
): readonly CoverColumn<Loadout>[] =>
  gathered(groups, (asked, group) =>
    (asked.slot ?? 1) > 1 ? [] : pool.fitting(asked.uses).map((loadout) => columnOf(loadout, group, asked, builder)),
  );

/** No dual prices but those of leads that are paid by a row of their own: what the first piece costs. */
function leadsPaid({ question, objective, features }: CoverBuilder): Float64Array {
  const duals = new Float64Array(features.count);
  for (const kind of question.bench.kinds) {
    const paid = (kind.supplyOf[0]?.price ?? 0) - onePrice(kind);
    duals[features.leads + kind.index] = (-paid * objective.weights.money) / objective.moneyUnit;
  }
  return duals;
}
