import type { Board, Catalogue } from '../domain/board.js';
import type { OutletLoad, TotalLoad } from '../domain/load-numbers.js';
import type { Exposure, Feed, Wiring } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import type { Violation } from '../domain/violation.js';
import { chainViolations } from './chains.js';
import { currentViolations, startupViolations } from './currents.js';
import { exposuresOf, groundViolations } from './grounds.js';
import { joinViolations } from './joins.js';
import type { Layout } from './line.js';
import { limitViolations, mainsViolations } from './limits.js';
import { plugViolations } from './plugs.js';
import { outletLoads } from './outlet-loads.js';
import { polarityViolations } from './polarity.js';
import { powerViolations, voltageViolations } from './power-and-volts.js';
import { resolve, type Malformation } from './resolve.js';
import { scoreOf } from './score.js';
import { settingViolations } from './settings.js';
import { buyingOf, stockViolations } from './stock.js';
import { totalLoads, totalViolations } from './totals.js';

export type AuditOptions = {
  /** Whether pedals may stay without power. */
  readonly partial: boolean;
};

export type AuditReport = {
  /** Hard rules that are broken. */
  readonly violations: readonly Violation[];
  /** Feeds that say nothing that could be plugged in. */
  readonly malformed: readonly Malformation[];
  /** The pedals without power, unless the plan may be partial. */
  readonly missing: readonly PedalId[];
  /** Worked out from the feeds alone. It leaves out the feeds whose pedal, supply or outputs do not exist. */
  readonly wiring: Wiring;
  /** What hangs on every outlet, in the order of the board's pedals. */
  readonly outlets: readonly OutletLoad[];
  /** Every stated total that something counts towards. */
  readonly totals: readonly TotalLoad[];
  /** The exposed pedals, each with those that expose it. */
  readonly exposures: readonly Exposure[];
};

/**
 * Judges a finished wiring by every hard rule, from the input alone. A plan is sound when `violations`, `malformed` and
 * `missing` are all empty. The score's `moved` is null.
 */
export function audit(
  board: Board,
  catalogue: Catalogue | null,
  feeds: readonly Feed[],
  options: AuditOptions,
): AuditReport {
  const { layout, violations, malformed } = resolve(board, catalogue, feeds);
  const exposures = exposuresOf(layout);
  const wiring = wiringOf(board, layout, exposures);
  return {
    violations: [...violations, ...ruleViolations(layout), ...shareViolations(layout, board, wiring)],
    malformed,
    missing: options.partial ? [] : wiring.unpowered,
    wiring,
    outlets: outletLoads(layout),
    totals: totalLoads(layout),
    exposures,
  };
}

/** Whether an audit found nothing wrong. */
export const isSound = (report: AuditReport): boolean =>
  report.violations.length === 0 && report.malformed.length === 0 && report.missing.length === 0;

/** The rules that speak of one unit and what hangs on it. */
function ruleViolations(layout: Layout): readonly Violation[] {
  return [
    powerViolations,
    voltageViolations,
    currentViolations,
    startupViolations,
    totalViolations,
    settingViolations,
    polarityViolations,
    plugViolations,
    groundViolations,
    chainViolations,
    joinViolations,
    mainsViolations,
  ].flatMap((rule) => rule(layout));
}

/** The rules that speak of the plan as a whole. */
function shareViolations(layout: Layout, board: Board, wiring: Wiring): readonly Violation[] {
  return [...stockViolations(layout, board.owned), ...limitViolations(board, wiring.score)];
}

function wiringOf(board: Board, layout: Layout, exposures: readonly Exposure[]): Wiring {
  const powered = new Set(layout.lines.map((line) => line.pedal.id));
  const unpowered = board.pedals.map((pedal) => pedal.id).filter((id) => !powered.has(id));
  const exposed = exposures.map(({ pedal }) => pedal);
  const buy = buyingOf(layout, board.owned);
  return {
    feeds: layout.lines.map((line) => line.feed),
    unpowered,
    exposed,
    buy,
    score: scoreOf(layout, buy, unpowered, exposed),
  };
}
