import { banksOf, type Kit } from '../../domain/kit.js';
import { audit } from '../../audit/audit.js';
import { everyWired, type WiredFeed } from '../../domain/board.js';
import { unitOfInlet } from '../../domain/inlet.js';
import type { Polarity } from '../../domain/pedal.js';
import type { Feed } from '../../domain/plan.js';
import type { Millivolts, PedalId } from '../../domain/quantities.js';
import { wiredPolarity } from './wired-readings.js';
import { offeredPolarities } from './wired-polarities.js';

/** A series join whose outputs make its volts in several ways, and the way that it counts as being set. */
export type OpenSplit = { readonly pedal: PedalId; readonly settings: readonly Millivolts[] };

/** Today's wiring as feeds, in the order of the board file, then what inlets hang on. */
export type WiredFeeds = { readonly feeds: readonly Feed[]; readonly splits: readonly OpenSplit[] };

/** The most ways of setting series joins that are looked at; hardly a board has more than two. */
const mostReadings = 200;

/**
 * A board file says what reaches each pedal, and leaves two things open: how a polarity switch stands, and which of two
 * outputs in series gives which volts. Both count as being set in the way that breaks the fewest rules, so that a wiring is
 * called broken only where no switch can mend it.
 */
export function wiredFeeds(kit: Kit): WiredFeeds {
  const offered = offeredPolarities(kit);
  const ways = everyWired(kit.board).map((wired, index) => waysOf(wired, offered[index] ?? null, kit));
  const open = ways.flatMap((each, index) => (each.length > 1 ? [{ index, ways: each }] : []));
  const first = ways.flatMap((each) => each.slice(0, 1));
  const readings = combinations(open).map((chosen) => first.map((feed, index) => chosen.get(index) ?? feed));
  const feeds = fewestFaults(readings, kit);
  const splits = open.flatMap(({ index }) => feeds.slice(index, index + 1));
  return { feeds, splits: splits.map(({ pedal, settings }) => ({ pedal, settings })) };
}

/** At least one way; its settings are none that exist where the wiring counts on such. */
function waysOf(wired: WiredFeed, offered: Polarity | null, kit: Kit): readonly Feed[] {
  const { pedal, supply, unit, outputs, join, chain, adapters } = wired;
  const inletOf = unitOfInlet(pedal);
  const inlet = wiredPolarity(wired, offered, kit);
  return settingsOf(wired, kit).map((settings) => ({
    pedal,
    supply,
    unit,
    outputs,
    settings,
    ...inlet,
    join,
    chain,
    adapters,
    ...(inletOf !== null && { inletOf }),
  }));
}

/** What the outputs may be set to. */
function settingsOf(wired: WiredFeed, kit: Kit): readonly (readonly Millivolts[])[] {
  const stated = wired.outputs.map(() => wired.millivolts);
  const [first, second] = banksOf(kit, wired);
  if (wired.join?.mode !== 'series' || first === undefined || second === undefined) return [stated];
  const splits = first.settings.flatMap((one) => {
    const left = wired.millivolts - one.millivolts;
    const other = second.settings.find((setting) => setting.millivolts === left);
    return other === undefined ? [] : [[one.millivolts, other.millivolts]];
  });
  return splits.length === 0 ? [stated] : splits;
}

type Open = { readonly index: number; readonly ways: readonly Feed[] };

/** One way of each open feed by its index, in every combination, as far as they are looked at. */
function combinations(open: readonly Open[]): readonly ReadonlyMap<number, Feed>[] {
  return open.reduce<readonly ReadonlyMap<number, Feed>[]>(
    (all, { index, ways }) =>
      all.flatMap((chosen) => ways.map((way) => new Map([...chosen, [index, way]]))).slice(0, mostReadings),
    [new Map()],
  );
}

/** The first of those that are as good. */
function fewestFaults(readings: readonly (readonly Feed[])[], { board, catalogue }: Kit): readonly Feed[] {
  const [first = []] = readings;
  if (readings.length < 2) return first;
  let best = { feeds: first, faults: Infinity };
  for (const feeds of readings) {
    const faults = audit(board, catalogue, feeds, { partial: true }).violations.length;
    if (faults < best.faults) best = { feeds, faults };
    if (faults === 0) break;
  }
  return best.feeds;
}
