import { pedalTiers, type PerPedalTier } from '../../../../src/domain/pedal-tier.js';
import type { Board } from '../../../../src/domain/board.js';
import type { Part } from '../../../../src/domain/part.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import type { Supply } from '../../../../src/domain/supply.js';
import { hookupsOf, type Hookup } from '../../../support/brute-force-hookups.js';
import { countedOf } from '../../../support/brute-force-tiers.js';
import { domainsOf, fits, newUnit, withHookup, type Unit } from '../../../support/brute-force-unit.js';
import { subsetsOf } from '../../../support/subsets.js';

/** What one unit's content is judged by; costs that lower its worth. */
export type Worth = {
  readonly tag: (pedal: Pedal) => number;
  readonly lead: (part: Part) => number;
  readonly exposed: number;
  readonly counted: PerPedalTier<number>;
};

/** The most that one unit of the supply can carry, by trying every content with a pedal at least; null for none. */
export function mostByTrial(supply: Supply, board: Board, parts: readonly Part[], worth: Worth): number | null {
  let best: number | null = null;
  const known = new Map<string, readonly Hookup[]>();
  const hookups = (pedals: readonly Pedal[]): readonly Hookup[] => {
    const key = JSON.stringify(pedals.map(({ id }) => id));
    const found = known.get(key) ?? hookupsOf(pedals, supply, parts, board.policy);
    known.set(key, found);
    return found;
  };
  const search = (waiting: readonly Pedal[], unit: Unit): void => {
    if (unit.hookups.length > 0) best = Math.max(best ?? -Infinity, worthOf(unit, worth));
    const [pedal, ...rest] = waiting;
    if (pedal === undefined) return;
    search(rest, unit);
    for (const partners of subsetsOf(rest)) {
      const left = rest.filter((other) => !partners.includes(other));
      for (const hookup of hookups([pedal, ...partners]))
        if (fits(unit, hookup, board.policy)) search(left, withHookup(unit, hookup));
    }
  };
  search(board.pedals, newUnit(supply));
  return best;
}

function worthOf(unit: Unit, worth: Worth): number {
  const fed = unit.hookups.flatMap(({ pedals, volts }) => pedals.map((pedal) => ({ pedal, volts })));
  const leads = unit.hookups.flatMap(({ join, chain, tails }) => [
    ...(join === null ? [] : [join.lead]),
    ...(chain === null ? [] : [chain]),
    ...tails.flatMap(({ parts }) => parts),
  ]);
  const exposed = domainsOf(unit).flatMap((domain) =>
    domain.filter((pedal) => pedal.highGain && domain.some((other) => other !== pedal && other.digital)),
  );
  const counted = countedOf(unit.hookups);
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
  return (
    sum(fed.map(({ pedal }) => worth.tag(pedal))) -
    sum(leads.map(worth.lead)) -
    exposed.length * worth.exposed -
    sum(pedalTiers.map((tier) => counted[tier] * worth.counted[tier]))
  );
}
