import type { Board, Policy } from '../../domain/board.js';
import { compareExact, exactly, loadAt, scaled, sum, type Exact } from '../../domain/load.js';
import { feedMillivolts, type Feed, type Wiring } from '../../domain/plan.js';
import type { Millivolts, SupplyId } from '../../domain/quantities.js';
import type { Bank, Setting, Supply, Total } from '../../domain/supply.js';
import { bankOf, type Inventory } from './inventory.js';

/** How full something is: what is planned with its reserve against a limit, both in µA or both in mW. */
export type Meter = { readonly planned: Exact; readonly limit: number; readonly unit: 'mA' | 'W' };

/** One output in use, or two joined ones, with everything that hangs on it. */
export type OutputUse = {
  readonly outputs: readonly number[];
  readonly settings: readonly Millivolts[];
  /** Several pedals only on a chain. */
  readonly feeds: readonly [Feed, ...Feed[]];
  readonly meter: Meter;
  /** The worst moment of switching on, where it asks for more than the planned load; null otherwise. */
  readonly peak: Meter | null;
};

/** One supply unit in use. */
export type UnitUse = {
  readonly supply: Supply;
  readonly unit: number;
  readonly owned: boolean;
  /** In the order of their first outputs. */
  readonly outputs: readonly OutputUse[];
  /** The stated limits over several outputs; `bank` is null for the whole supply's. */
  readonly totals: readonly { readonly bank: Bank | null; readonly meter: Meter }[];
};

/** Every supply unit in use, in the order of the gear and the catalogue, then of the unit numbers. */
export function unitUses(board: Board, inventory: Inventory, wiring: Wiring): readonly UnitUse[] {
  return inventory.supplies.flatMap((supply) => {
    const feeds = wiring.feeds.filter((feed) => feed.supply === supply.id);
    const units = [...new Set(feeds.map(({ unit }) => unit))].sort((first, second) => first - second);
    return units.map((unit) =>
      unitUse(
        board,
        inventory,
        supply,
        unit,
        feeds.filter((feed) => feed.unit === unit),
      ),
    );
  });
}

/** How many units of a supply are in use. */
export const unitsInUse = (units: readonly UnitUse[], id: SupplyId): number =>
  units.filter(({ supply }) => supply.id === id).length;

function unitUse(board: Board, inventory: Inventory, supply: Supply, unit: number, feeds: readonly Feed[]): UnitUse {
  const owned = unit <= (board.owned.supplies.get(supply.id) ?? 0);
  const groups = new Map<string, [Feed, ...Feed[]]>();
  for (const feed of feeds) {
    const group = groups.get(feed.outputs.join('+'));
    if (group === undefined) groups.set(feed.outputs.join('+'), [feed]);
    else group.push(feed);
  }
  const outputs = [...groups.values()]
    .map((group) => outputUse(board.policy, inventory, supply, group))
    .sort((first, second) => (first.outputs[0] ?? 0) - (second.outputs[0] ?? 0));
  return { supply, unit, owned, outputs, totals: totalsOf(board.policy, inventory, supply, feeds) };
}

function outputUse(policy: Policy, inventory: Inventory, supply: Supply, feeds: readonly [Feed, ...Feed[]]): OutputUse {
  const [{ outputs, settings }] = feeds;
  const loads = feeds.map((feed) => feedLoad(policy, inventory, feed));
  const factor = feeds.length > 1 ? policy.headroom.chained : policy.headroom.alone;
  const limit = ratingOf(supply, feeds[0]);
  const meter: Meter = { planned: scaled(sum(loads), factor), limit, unit: 'mA' };
  return { outputs, settings, feeds, meter, peak: worstPeak(inventory, feeds, loads, meter) };
}

const feedLoad = (policy: Policy, inventory: Inventory, feed: Feed): Exact =>
  loadAt(inventory.pedal(feed.pedal), feedMillivolts(feed), policy.guess);

/** In microamps: of a parallel join the sum, of a series join the smaller one. */
function ratingOf(supply: Supply, feed: Feed): number {
  const ratings = feed.outputs.map((output, at) => settingOf(bankOf(supply, output), feed.settings[at]).rating);
  if (feed.join?.mode === 'parallel') return ratings.reduce((total, rating) => total + rating, 0);
  return Math.min(...ratings);
}

/** The bank's setting of these volts. @throws RangeError when it has none. */
export function settingOf(bank: Bank, at: Millivolts | undefined): Setting {
  const setting = bank.settings.find(({ millivolts }) => millivolts === at);
  if (setting === undefined) throw new RangeError(`output ${bank.firstOutput} has no setting of ${at ?? 'no'} mV`);
  return setting;
}

/** One pedal switching on while the others draw their load, for each pedal that states its start-up current. */
function worstPeak(inventory: Inventory, feeds: readonly Feed[], loads: readonly Exact[], meter: Meter): Meter | null {
  let worst: Exact | null = null;
  for (const [at, feed] of feeds.entries()) {
    const { startup } = inventory.pedal(feed.pedal);
    if (startup === null) continue;
    const peak = sum([exactly(startup), ...loads.filter((_, other) => other !== at)]);
    if (compareExact(peak, worst ?? meter.planned) > 0) worst = peak;
  }
  return worst === null ? null : { ...meter, planned: worst };
}

function totalsOf(policy: Policy, inventory: Inventory, supply: Supply, feeds: readonly Feed[]): UnitUse['totals'] {
  const meterOf = (total: Total, bank: Bank | null): Meter => {
    const loads = feeds.flatMap((feed) =>
      countedOutputs(supply, feed, bank).map((at) => share(policy, inventory, feed, at, total)),
    );
    const planned = scaled(sum(loads), policy.headroom.supply);
    return total.kind === 'current'
      ? { planned, limit: total.microamps, unit: 'mA' }
      : { planned, limit: total.milliwatts, unit: 'W' };
  };
  const banks = supply.banks.flatMap((bank) =>
    bank.total === null || !feeds.some((feed) => countedOutputs(supply, feed, bank).length > 0)
      ? []
      : [{ bank, meter: meterOf(bank.total, bank) }],
  );
  return supply.total === null ? banks : [...banks, { bank: null, meter: meterOf(supply.total, null) }];
}

/**
 * Which of a feed's outputs count towards a total, by their place in the feed: a series join loads both outputs, a parallel
 * one counts its whole load once in every bank that it touches and once in the supply.
 */
function countedOutputs(supply: Supply, feed: Feed, bank: Bank | null): readonly number[] {
  const places = feed.outputs.flatMap((output, at) => (bank === null || bankOf(supply, output) === bank ? [at] : []));
  return feed.join?.mode === 'parallel' ? places.slice(0, 1) : places;
}

/** The load through one output in the total's unit: µA, or mV × µA as mW. */
function share(policy: Policy, inventory: Inventory, feed: Feed, at: number, total: Total): Exact {
  const load = feedLoad(policy, inventory, feed);
  if (total.kind === 'current') return load;
  return scaled(load, { numerator: feed.settings[at] ?? 0, denominator: 1_000_000 });
}

/** The feed's outputs that have a polarity switch; of two joined ones it may be one. */
export const switchedOutputs = (inventory: Inventory, feed: Feed): readonly number[] =>
  feed.outputs.filter((output) => bankOf(inventory.supply(feed.supply), output).polarity === 'either');

/** Where the polarity switch of the feed's output must stand; null when it has none. */
export function switchPosition(inventory: Inventory, feed: Feed): 'centre-negative' | 'centre-positive' | null {
  if (feed.polarity === null || switchedOutputs(inventory, feed).length === 0) return null;
  const reversed = leadsOf(feed).filter((id) => inventory.part(id).reverses).length % 2 === 1;
  if (!reversed) return feed.polarity;
  return feed.polarity === 'centre-negative' ? 'centre-positive' : 'centre-negative';
}

/** All leads between the supply's own lead and the pedal, in order. */
export const leadsOf = (feed: Feed): readonly Feed['adapters'][number][] => [
  ...(feed.join === null ? [] : [feed.join.part]),
  ...(feed.chain === null ? [] : [feed.chain]),
  ...feed.adapters,
];
