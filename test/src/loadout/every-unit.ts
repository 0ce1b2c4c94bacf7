/** All that one unit of a supply can carry, by trying everything, for a board of about four pedals. */
import { pedalTiers, type PerPedalTier } from '../../../src/domain/pedal-tier.js';
import type { Feed } from '../../../src/domain/plan.js';
import type { Pedal } from '../../../src/domain/pedal.js';
import type { Supply } from '../../../src/domain/supply.js';
import type { Question } from '../../../src/formulation/question.js';
import type { LoadoutDuals } from '../../../src/loadout/loadout-duals.js';
import { hookupsOf } from '../../support/brute-force-hookups.js';
import { fewestMovedOn } from '../../support/brute-force-moves.js';
import { countedOf } from '../../support/brute-force-tiers.js';
import { domainsOf, feedsOf, fits, newUnit, withHookup, type Unit } from '../../support/brute-force-unit.js';
import type { Case } from '../../support/arbitraries.js';
import { subsetsOf } from '../../support/subsets.js';

/** What a content takes, all that its worth depends on. */
export type Carried = PerPedalTier<number> & {
  readonly pedals: readonly number[];
  readonly leads: readonly number[];
  readonly exposed: number;
  readonly newlyExposed: number;
  readonly moved: number;
  readonly feeds: readonly Feed[];
};

/**
 * Every content of at least one pedal, each once, of the unit of a number, or of any that nothing is plugged into today. What
 * moves a pedal that must stay is none.
 */
export function everyUnit(
  supply: Supply,
  { board, catalogue }: Case,
  { bench, today }: Question,
  number: number | null = null,
): readonly Carried[] {
  const kindOf = new Map(bench.kinds.flatMap(({ index, supplyOf }) => supplyOf.map(({ part }) => [part, index])));
  const parts = [...board.gear.parts, ...catalogue.parts].filter(({ id }) => kindOf.has(id));
  const classOf = new Map(bench.classes.flatMap(({ members }, index) => members.map((pedal) => [pedal, index])));
  const found = new Map<string, Carried>();
  const wiring = board.wiring.filter(({ pedal }) => today.berths.has(pedal));
  const measured = (unit: Unit): Carried | null => {
    const { hookups } = unit;
    const moved = fewestMovedOn(unit, { number: number ?? 0, wiring, keep: [...today.pinned] });
    if (moved === null) return null;
    const leads = hookups.flatMap(({ join, chain, tails }) => [
      ...(join === null ? [] : [join.lead]),
      ...(chain === null ? [] : [chain]),
      ...tails.flatMap(({ parts }) => parts),
    ]);
    const exposed = domainsOf(unit).flatMap((domain) =>
      domain.filter((pedal) => pedal.highGain && domain.some((other) => other !== pedal && other.digital)),
    );
    return {
      pedals: hookups.flatMap(({ pedals }) => pedals.map((pedal) => classOf.get(pedal) ?? -1)).sort((a, b) => a - b),
      leads: leads.map(({ id }) => kindOf.get(id) ?? -1).sort((a, b) => a - b),
      exposed: exposed.length,
      newlyExposed: exposed.filter(({ id }) => !today.exposed.has(id)).length,
      moved,
      ...countedOf(hookups),
      feeds: feedsOf([unit]),
    };
  };
  const extend = (waiting: readonly Pedal[], unit: Unit): void => {
    const [pedal, ...rest] = waiting;
    if (pedal === undefined) {
      const carried = measured(unit);
      if (carried === null) return;
      const { feeds: _, ...measures } = carried;
      if (carried.pedals.length > 0) found.set(JSON.stringify(measures), carried);
      return;
    }
    extend(rest, unit);
    for (const others of subsetsOf(rest)) {
      const left = rest.filter((other) => !others.includes(other));
      for (const hookup of hookupsOf([pedal, ...others], supply, parts, board.policy)) {
        if (fits(unit, hookup, board.policy)) extend(left, withHookup(unit, hookup));
      }
    }
  };
  extend(board.pedals, newUnit(supply));
  return [...found.values()];
}

/** What a content is worth under the duals. */
export const worthOf = (
  { pedals, leads, exposed, newlyExposed, moved, ...counted }: Omit<Carried, 'feeds'>,
  duals: LoadoutDuals,
): number =>
  pedals.reduce((sum, pedal) => sum + (duals.pedals[pedal] ?? NaN), 0) -
  leads.reduce((sum, lead) => sum + (duals.leads[lead] ?? NaN), 0) -
  exposed * duals.exposed -
  newlyExposed * duals.newlyExposed -
  moved * duals.moved -
  pedalTiers.reduce((sum, tier) => sum + counted[tier] * duals[tier], 0);
