import { countsLead, perLeadTier } from '../domain/counted-tiers.js';
import { perPedalTier, type PerPedalTier } from '../domain/pedal-tier.js';
import type { Score } from '../domain/plan.js';
import { minorUnits, type PedalId } from '../domain/quantities.js';
import type { Layout, Line } from './line.js';
import { isBrick } from './sources.js';
import type { Buying, InUse } from './stock.js';

/** Whether a pedal counts in a tier. */
const counts: PerPedalTier<(line: Line) => boolean> = {
  offPreferred: ({ pedal, millivolts }) => pedal.prefers !== null && pedal.prefers !== millivolts,
};

/** What a layout is measured by. `moved` is null: it is a matter of today's wiring. */
export function scoreOf(
  layout: Layout,
  inUse: InUse,
  buying: Buying,
  unpowered: readonly PedalId[],
  exposed: readonly PedalId[],
): Score {
  const leads = inUse.parts.map(({ id, used }) => ({ part: layout.parts.get(id), used }));
  return {
    ...perPedalTier((tier) => new Set(layout.lines.filter(counts[tier]).map(({ pedal }) => pedal.id)).size),
    unpowered: unpowered.length,
    money: moneyOf(buying),
    exposed: exposed.length,
    bricks: layout.units.filter(isBrick).length,
    ...perLeadTier((tier) =>
      leads.reduce((sum, { part, used }) => (part === undefined || countsLead(tier, part) ? sum + used : sum), 0),
    ),
    moved: null,
  };
}

/** @throws RangeError when the total is not a safe integer. */
function moneyOf(buying: Buying): Score['money'] {
  const total = [...buying.supplies, ...buying.parts].reduce(
    (money, { units, price }) => money + BigInt(units) * BigInt(price),
    0n,
  );
  return minorUnits(Number(total));
}
