import { groupBy } from '../domain/group-by.js';
import type { Board, Catalogue } from '../domain/board.js';
import type { Pedal } from '../domain/pedal.js';
import type { Feed } from '../domain/plan.js';
import { millivolts, type Millivolts, type PedalId } from '../domain/quantities.js';
import type { Supply } from '../domain/supply.js';
import type { Violation } from '../domain/violation.js';
import type { Layout, Line, Parts, Supplies, Tap } from './line.js';
import { domainsOf } from './grounds.js';
import { fedBy } from './inlets.js';
import { loadOf } from './load.js';
import { misread } from './readings.js';
import { violation } from './violation.js';
import { unitPlace } from './words.js';

/** A feed that says nothing that could be plugged in: no such pedal, a pedal fed twice, numbers that are none. */
export type Malformation = { readonly pedals: readonly PedalId[]; readonly message: string };

type Resolution = {
  readonly layout: Layout;
  /** Feeds that name a supply, an output or a setting which does not exist. */
  readonly violations: readonly Violation[];
  readonly malformed: readonly Malformation[];
};

/** Looks up what each feed names. A feed whose pedal, supply or outputs cannot be found has no line in the layout. */
export function resolve(board: Board, catalogue: Catalogue | null, feeds: readonly Feed[]): Resolution {
  const supplies: Supplies = new Map(
    [...(catalogue?.supplies ?? []), ...board.gear.supplies].map((supply) => [supply.id, supply]),
  );
  const parts: Parts = new Map([...(catalogue?.parts ?? []), ...board.gear.parts].map((part) => [part.id, part]));
  const fed = fedBy(board, supplies);
  const violations: Violation[] = [];
  const malformed: Malformation[] = [...fedTwice(feeds)];
  const lines: { readonly line: Line; readonly rank: number }[] = [];
  for (const feed of feeds) {
    const found = fed(feed);
    if (found === undefined) {
      malformed.push({ pedals: [feed.pedal], message: nothingFed(feed) });
      continue;
    }
    const fault = faultOf(feed, found.pedal);
    if (fault !== null) {
      malformed.push({ pedals: [feed.pedal], message: fault });
      continue;
    }
    const result = lineOf(feed, found.pedal, supplies.get(feed.supply), board);
    violations.push(...result.violations);
    if (result.line !== null) lines.push({ line: result.line, rank: found.rank });
  }
  // The order of the feeds must not change what is found or how it is told.
  const unitOf = ({ line }: (typeof lines)[number]): number => line.feed.inletOf?.unit ?? 0;
  const sorted = lines
    .sort((first, second) => first.rank - second.rank || unitOf(first) - unitOf(second))
    .map((entry) => entry.line);
  return { layout: layoutOf(board, { supplies, parts }, sorted), violations, malformed };
}

const nothingFed = ({ pedal, inletOf }: Feed): string =>
  inletOf === undefined
    ? `the board has no pedal "${pedal}"`
    : `there is no supply "${inletOf.supply}" that hangs by an inlet of its own`;

function fedTwice(feeds: readonly Feed[]): readonly Malformation[] {
  return groupBy(feeds, (feed) => feed.pedal)
    .filter((group) => group.length > 1)
    .map(([feed, ...others]) => ({
      pedals: [feed.pedal],
      message: `the pedal "${feed.pedal}" has ${others.length + 1} feeds; it takes one`,
    }));
}

const isCount = (value: number): boolean => Number.isSafeInteger(value) && value >= 1;

/** What makes a feed's numbers meaningless, or null. */
function faultOf(feed: Feed, pedal: Pedal): string | null {
  const start = `the feed of "${feed.pedal}"`;
  if (!isCount(feed.inletOf?.unit ?? 1)) return `${start} is of no unit; units are numbered 1, 2, 3 …`;
  if (!isCount(feed.unit)) return `${start} names unit ${feed.unit}; units are numbered 1, 2, 3 …`;
  if (feed.outputs.length < 1 || feed.outputs.length > 2)
    return `${start} has ${feed.outputs.length} outputs; it takes one, or two that are joined`;
  const output = feed.outputs.find((number) => !isCount(number));
  if (output !== undefined) return `${start} names output ${output}; outputs are numbered 1, 2, 3 …`;
  if (feed.settings.length !== feed.outputs.length)
    return `${start} has ${feed.settings.length} settings for ${feed.outputs.length} outputs; each output takes one`;
  const setting = feed.settings.find((value) => !isCount(value));
  if (setting !== undefined) return `${start} has a setting of ${setting} mV; settings are whole positive millivolts`;
  const total = feed.settings.reduce((sum, value) => sum + value, 0);
  if (!Number.isSafeInteger(total)) return `${start} adds up to ${total} mV, which is beyond exact arithmetic`;
  const misreading = misread(feed, pedal.polarity === 'unknown');
  return misreading === null ? null : `${start}: ${misreading}`;
}

type LineResult = { readonly line: Line | null; readonly violations: readonly Violation[] };

function lineOf(feed: Feed, pedal: Pedal, supply: Supply | undefined, board: Board): LineResult {
  const place = { supply: feed.supply, unit: feed.unit, outputs: feed.outputs };
  if (supply === undefined) {
    const message = `${pedal.name} hangs on "${feed.supply}", a supply that is neither described nor for sale`;
    return { line: null, violations: [violation('stock', [pedal], message, { place })] };
  }
  const found = feed.outputs.map((output, index) => tapOf(supply, output, feed.settings[index]));
  const missing = feed.outputs.filter((_, index) => found[index] === null);
  const [first, ...others] = found.filter((tap) => tap !== null);
  if (first === undefined || missing.length > 0) {
    const outputs = supply.banks.reduce((total, bank) => total + bank.outputs, 0);
    const missed = `output ${missing.join(' and ')} of ${unitPlace(supply, feed.unit)}`;
    const message = `${pedal.name} hangs on ${missed}, which has outputs 1 to ${outputs} only`;
    return { line: null, violations: [violation('setting', [pedal], message, { place })] };
  }
  const taps = [first, ...others] as const;
  const reaching = reachingMillivolts(feed, taps);
  const load = loadOf(pedal, reaching, board.policy);
  return { line: { feed, pedal, supply, taps, millivolts: reaching, load }, violations: [] };
}

function tapOf(supply: Supply, output: number, setting: Millivolts | undefined): Tap | null {
  const bank = supply.banks.find(
    (candidate) => output >= candidate.firstOutput && output < candidate.firstOutput + candidate.outputs,
  );
  if (bank === undefined || setting === undefined) return null;
  const offered = bank.settings.find((candidate) => candidate.millivolts === setting) ?? null;
  return { output, bank, millivolts: setting, setting: offered };
}

/** In series the volts add; otherwise the pedal gets those of the output. */
function reachingMillivolts(feed: Feed, taps: readonly [Tap, ...Tap[]]): Millivolts {
  if (feed.join?.mode !== 'series') return taps[0].millivolts;
  return millivolts(taps.reduce((total, tap) => total + tap.millivolts, 0));
}

function layoutOf(board: Board, things: Pick<Layout, 'supplies' | 'parts'>, lines: readonly Line[]): Layout {
  const outlets = groupBy(lines, (line) =>
    JSON.stringify([line.supply.id, line.feed.unit, ...[...line.feed.outputs].sort((a, b) => a - b)]),
  );
  const units = groupBy(lines, (line) => JSON.stringify([line.supply.id, line.feed.unit]));
  return {
    policy: board.policy,
    ...things,
    lines,
    outlets: outlets.map((group) => ({ lines: group })),
    units: units.map((group) => ({ supply: group[0].supply, unit: group[0].feed.unit, lines: group })),
    domains: domainsOf(lines),
  };
}
