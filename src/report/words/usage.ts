import type { Check } from '../../planning/check/check.js';

import type { Board } from '../../domain/board.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { compareExact } from '../../domain/load.js';
import type { LoadNumbers, OutletLoad } from '../../domain/load-numbers.js';
import type { Polarity, PolarityOrUnknown } from '../../domain/pedal.js';
import { everyFeed, leadsOf, readFeeds, type Feed, type ReadFeed } from '../../domain/plan.js';
import type { Millivolts } from '../../domain/quantities.js';
import { isOfOnePedal, natureOf } from '../../domain/source.js';
import type { Bank, Setting, Supply } from '../../domain/supply.js';
import { bankOf, unitName, type Inventory, type SupplyUnit } from './inventory.js';
import { meterOf, type Meter } from './words.js';

/** One output in use, or two joined ones, with everything that hangs on it. */
export type OutputUse = {
  readonly outputs: readonly number[];
  readonly settings: readonly Millivolts[];
  /** Several pedals only on a chain. */
  readonly feeds: readonly [Feed, ...Feed[]];
  /** Null for what a pedal came with, of which nothing is stated. */
  readonly meter: Meter | null;
  /** When all is switched on at once, where that asks for more than the planned load; null otherwise. */
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
  readonly totals: readonly TotalUse[];
};

/** A stated limit and what counts towards it; `peak` as of an output. */
export type TotalUse = { readonly bank: Bank | null; readonly meter: Meter } & Pick<OutputUse, 'peak'>;

/** Every supply unit in use, in the order of the gear and the catalogue, then of the unit numbers, as the audit measured it. */
export function unitUses({ owned }: Board, inventory: Inventory, plan: JudgedPlan): readonly UnitUse[] {
  return inventory.supplies.flatMap((supply) => {
    const outlets = plan.outlets.filter(({ place }) => place.supply === supply.id);
    const units = [...new Set(outlets.map(({ place }) => place.unit))].sort((first, second) => first - second);
    return units.map((unit): UnitUse => ({
      supply,
      unit,
      owned: unit <= (owned.supplies.get(supply.id) ?? 0),
      outputs: outlets
        .filter(({ place }) => place.unit === unit)
        .flatMap((outlet) => outputUse(supply, everyFeed(plan), outlet))
        .sort((first, second) => (first.outputs[0] ?? 0) - (second.outputs[0] ?? 0)),
      totals: plan.totals
        .filter(({ place }) => place.supply === supply.id && place.unit === unit)
        .map(({ of, place, numbers, startup }) => ({
          bank: of === 'supply' ? null : bankOf(supply, place.outputs[0] ?? 0),
          meter: meterOf(numbers),
          peak: peakOf(numbers, startup),
        })),
    }));
  });
}

/** Whether what hangs there has its ground to itself: the inlet of a fed supply, or a pedal of which nobody knows the ground. */
export const hasGroundAlone = (inventory: Inventory, { feeds }: OutputUse): boolean =>
  feeds.some(({ pedal }) => inventory.pedal(pedal).ground === 'unknown');

/** Nothing of an output that has no such setting: a broken rule says so. */
function outputUse(
  { source }: Supply,
  feeds: readonly Feed[],
  { place, pedals, current, startup }: OutletLoad,
): readonly OutputUse[] {
  const [first, ...others] = feeds.filter(({ pedal }) => pedals.includes(pedal));
  if (first === undefined) return [];
  if (isOfOnePedal(source))
    return [{ outputs: place.outputs, settings: [], feeds: [first, ...others], meter: null, peak: null }];
  if (current === null) return [];
  return [
    {
      outputs: place.outputs,
      settings: first.settings,
      feeds: [first, ...others],
      meter: meterOf(current),
      peak: peakOf(current, startup),
    },
  ];
}

/** What is asked for at switch-on, where that is more than the planned load. */
export const peakOf = ({ planned }: LoadNumbers, startup: LoadNumbers | null): Meter | null =>
  startup !== null && compareExact(startup.planned, planned) > 0 ? meterOf(startup) : null;

/** The supply's name, with the unit's number where these units could be mixed up. */
export const unitTitle = (inventory: Inventory, units: readonly UnitUse[], of: UnitUse): string =>
  unitName(inventory, units.map(unitOf), unitOf(of));

const unitOf = ({ supply, unit }: UnitUse): SupplyUnit => ({ supply: supply.id, unit });

/** How many mains sockets the units take. */
export const socketsTaken = (units: readonly UnitUse[]): number =>
  units.reduce((sum, { supply }) => sum + natureOf(supply.source).sockets, 0);

/** The bank's setting of these volts. @throws RangeError when it has none. */
export function settingOf(bank: Bank, at: Millivolts | undefined): Setting {
  const setting = bank.settings.find(({ millivolts }) => millivolts === at);
  if (setting === undefined) throw new RangeError(`output ${bank.firstOutput} has no setting of ${at ?? 'no'} mV`);
  return setting;
}

/** The feed's outputs that have a polarity switch; of two joined ones it may be one. */
export const switchedOutputs = (inventory: Inventory, feed: Feed): readonly number[] =>
  feed.outputs.filter((output) => bankOf(inventory.supply(feed.supply), output).polarity === 'either');

/** Where the polarity switch of the feed's output must stand: `unknown` is as the label says; null when it has none. */
export function switchPosition(inventory: Inventory, feed: Feed): PolarityOrUnknown | null {
  if (feed.polarity === null || switchedOutputs(inventory, feed).length === 0) return null;
  const [position = null, other] = new Set(readFeeds(feed).map((read) => positionFor(inventory, read)));
  return other === undefined ? position : 'unknown';
}

function positionFor(inventory: Inventory, feed: ReadFeed): Polarity | null {
  const reversed = leadsOf(feed).filter((id) => inventory.part(id).reverses).length % 2 === 1;
  if (!reversed || feed.polarity === null) return feed.polarity;
  return feed.polarity === 'centre-negative' ? 'centre-positive' : 'centre-negative';
}

/** The wiring without the pedals that a broken rule names, and without the inlets at whose outputs `inlet` is broken. */
export function soundWiring({ findings, wiring }: Check): JudgedPlan {
  const named = new Set(findings.flatMap(({ pedals }) => pedals));
  const places = findings.flatMap(({ rule, place }) => (rule === 'inlet' && place !== null ? [place] : []));
  const isBroken = ({ supply, unit, outputs }: Feed): boolean =>
    places.some((at) => at.supply === supply && at.unit === unit && outputs.every((one) => at.outputs.includes(one)));
  return {
    ...wiring,
    feeds: wiring.feeds.filter(({ pedal }) => !named.has(pedal)),
    inlets: wiring.inlets.filter((inlet) => !isBroken(inlet)),
  };
}
