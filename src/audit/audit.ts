import type { Board, Catalogue } from '../domain/board.js';
import type { JudgedPlan } from '../domain/judged-plan.js';
import { isInletFeed, type Feed } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import type { Violation } from '../domain/violation.js';
import { batteriesInUse, batteryViolations } from './batteries.js';
import { chainViolations } from './chains.js';
import { outletLoads, totalLoads } from './carried.js';
import { currentViolations } from './currents.js';
import { fedSupplyViolations } from './fed-supplies.js';
import { exposuresOf, groundDomains, groundViolations } from './grounds.js';
import { joinViolations } from './joins.js';
import type { Layout } from './line.js';
import { limitViolations, mainsViolations } from './limits.js';
import { changesOfToday } from './moves.js';
import { ownSupplyViolations } from './own-supplies.js';
import { plugViolations } from './plugs.js';
import { polarityViolations } from './polarity.js';
import { powerViolations, voltageViolations } from './power-and-volts.js';
import { resolve, type Malformation } from './resolve.js';
import { runtimesOf, runtimeViolations } from './runtimes.js';
import { scoreOf } from './score.js';
import { settingViolations } from './settings.js';
import { offersPlug, takesSocket } from './sources.js';
import { startupViolations } from './startups.js';
import { buyingOf, inUseOf, stockViolations, type InUse } from './stock.js';
import { totalViolations } from './totals.js';

export type AuditOptions = {
  /** Whether pedals may stay without power. */
  readonly partial: boolean;
  /** Whether the plan is measured against how the board is plugged today, too. Off when left out. */
  readonly moves?: boolean;
};

export type AuditReport = {
  /** Hard rules that are broken. */
  readonly violations: readonly Violation[];
  /** Feeds that say nothing that could be plugged in. */
  readonly malformed: readonly Malformation[];
  /** The pedals without power, unless the plan may be partial. */
  readonly missing: readonly PedalId[];
  /** Worked out from the feeds alone. It leaves out the feeds whose pedal, supply or outputs do not exist. */
  readonly wiring: JudgedPlan;
};

/**
 * Judges a finished wiring, the inlets of fed supplies among its feeds, by every hard rule, from the input alone. A plan is sound when `violations`, `malformed` and
 * `missing` are all empty.
 */
export function audit(
  board: Board,
  catalogue: Catalogue | null,
  feeds: readonly Feed[],
  options: AuditOptions,
): AuditReport {
  const { layout, violations, malformed } = resolve(board, catalogue, feeds);
  const inUse = inUseOf(layout);
  const measured = planOf(board, layout, inUse);
  const wiring = options.moves === true ? { ...measured, ...changesOfToday(board, catalogue, measured) } : measured;
  return {
    violations: [...violations, ...ruleViolations(layout), ...shareViolations(layout, inUse, board, wiring)],
    malformed,
    missing: options.partial ? [] : wiring.unpowered,
    wiring,
  };
}

/** Whether an audit found nothing wrong. */
export const isSound = (report: AuditReport): boolean =>
  report.violations.length === 0 && report.malformed.length === 0 && report.missing.length === 0;

/** The rules that speak of one unit and what hangs on it. */
function ruleViolations(layout: Layout): readonly Violation[] {
  const plugs = onPlugs(layout);
  return [
    powerViolations(plugs),
    voltageViolations(plugs),
    currentViolations(plugs),
    startupViolations(plugs),
    totalViolations(plugs),
    settingViolations(plugs),
    polarityViolations(plugs),
    plugViolations(plugs),
    groundViolations(layout),
    chainViolations(plugs),
    joinViolations(plugs),
    mainsViolations(layout),
    fedSupplyViolations(layout),
    runtimeViolations(layout),
    batteryViolations(layout),
    ownSupplyViolations(layout),
  ].flat();
}

/** What hangs on plugs, without what is right for its pedal by itself. */
const onPlugs = (layout: Layout): Layout => ({
  ...layout,
  lines: layout.lines.filter(offersPlug),
  outlets: layout.outlets.filter(({ lines: [line] }) => offersPlug(line)),
  units: layout.units.filter(offersPlug),
});

/** The rules that speak of the plan as a whole. */
function shareViolations(layout: Layout, inUse: InUse, board: Board, plan: JudgedPlan): readonly Violation[] {
  return [...stockViolations(layout, inUse, board.owned), ...limitViolations(board, plan)];
}

function planOf(board: Board, layout: Layout, inUse: InUse): JudgedPlan {
  const exposures = exposuresOf(layout);
  const powered = new Set(layout.lines.map((line) => line.pedal.id));
  const unpowered = board.pedals.map((pedal) => pedal.id).filter((id) => !powered.has(id));
  const exposed = exposures.map(({ pedal }) => pedal);
  const feeds = layout.lines.map((line) => line.feed);
  const buy = buyingOf(layout, inUse, board.owned);
  return {
    feeds: feeds.filter((feed) => !isInletFeed(feed)),
    inlets: feeds.filter(isInletFeed),
    unpowered,
    exposed,
    buy,
    score: scoreOf(layout, inUse, buy, unpowered, exposed),
    sockets: layout.units.filter(takesSocket).length,
    outlets: outletLoads(layout),
    totals: totalLoads(layout),
    runtimes: runtimesOf(layout),
    batteries: batteriesInUse(layout),
    grounds: groundDomains(layout),
    exposures,
  };
}
