import { groupBy } from '../../domain/group-by.js';
import { bankAt, isOwn, pluggedOf, type Kit } from '../../domain/kit.js';
import { feedMillivolts, isInletFeed, type Feed, type Place } from '../../domain/plan.js';
import type { Millivolts, PedalId } from '../../domain/quantities.js';
import { isSameFeed, isSameOutlet, isSameUnit, meet } from './places.js';
import { polaritySwitches, voltsSwitches, type PolaritySwitch, type VoltsSwitch } from './switches.js';

/** One unit of a supply. */
export type UnitPlace = Pick<Place, 'supply' | 'unit'>;

/** One thing to do. */
export type ReplugStep =
  /** Pull these units from the mains. */
  | { readonly kind: 'mains off'; readonly units: readonly UnitPlace[] }
  /** Pull the pedal's plug, and take off the leads that no other pedal hangs on. */
  | { readonly kind: 'pull'; readonly from: Feed }
  /** Take the batteries out of the pedal. */
  | { readonly kind: 'take out'; readonly from: Feed }
  | ({ readonly kind: 'set volts' } & VoltsSwitch)
  | ({ readonly kind: 'set polarity' } & PolaritySwitch)
  /** Lay the leads of an output, the plugs at the pedals' ends free; `chained` when its chain lead is there already. */
  | { readonly kind: 'lay'; readonly feeds: readonly [Feed, ...Feed[]]; readonly chained: boolean }
  /** Plug these units into the mains. */
  | { readonly kind: 'mains on'; readonly units: readonly UnitPlace[] }
  /** Hold a meter to the free plug: the pedal's volts, or the open-circuit volts of what is unregulated. */
  | { readonly kind: 'measure'; readonly feed: Feed; readonly reads: Millivolts }
  /** Put the plug into its pedal. */
  | { readonly kind: 'plug'; readonly feed: Feed }
  /** Put the batteries into the pedal. */
  | { readonly kind: 'put in'; readonly feed: Feed };

export type Steps = {
  /** Empty when there is nothing to do. */
  readonly steps: readonly ReplugStep[];
  /** The pedals of the plan whose plug is pulled or laid. */
  readonly touched: ReadonlySet<PedalId>;
};

/**
 * From today's wiring to the plan so that no pedal ever stands on volts that it is not made for: all that changes is pulled
 * while the mains are off, switches are turned while nothing hangs on them, each new plug is measured before its pedal goes
 * on, and the mains come last. Batteries go in when the old plug is out; where only batteries change, the mains stay on.
 */
export function stepsBetween(kit: Kit, today: readonly Feed[], planned: readonly Feed[]): Steps {
  const plan = pluggedOf(kit, planned);
  const volts = voltsSwitches(kit, today, plan);
  const touched = new Set(plan.filter((feed) => isTouched(feed, today, volts)).map(({ pedal }) => pedal));
  const staying = plan.filter(({ pedal }) => !touched.has(pedal));
  const isBattery = ({ supply }: Feed): boolean => kit.supplies.get(supply)?.source.kind === 'battery';
  const isLead = (feed: Feed): boolean => !isBattery(feed);
  const leaving = today.filter((feed) => staying.every(({ pedal }) => pedal !== feed.pedal));
  const coming = plan.filter(({ pedal }) => touched.has(pedal));
  const laid = outletsOf(coming.filter(isLead));
  const changesLeads = [...leaving, ...coming].some(isLead);
  const fresh = laid.flat();
  const feeders = new Map(plan.filter(isInletFeed).map((feed) => [JSON.stringify(feed.inletOf), feed]));
  // A battery in a pedal has no switch, and a fed supply is switched with what feeds it.
  const switched = (feeds: readonly Feed[]): readonly UnitPlace[] =>
    unitsOf(
      feeds
        .map((feed) => feeders.get(JSON.stringify({ supply: feed.supply, unit: feed.unit })) ?? feed)
        .filter(({ supply }) => !['battery', 'fed'].includes(kit.supplies.get(supply)?.source.kind ?? '')),
    );
  const polarities = polaritySwitches(kit, fresh).filter(({ place }) => !staying.some((feed) => meet(feed, place)));
  const mains = (kind: 'mains off' | 'mains on', feeds: readonly Feed[]): readonly ReplugStep[] =>
    switched(feeds).length === 0 || !changesLeads ? [] : [{ kind, units: switched(feeds) }];
  const measured = (feeds: readonly Feed[]): readonly ReplugStep[] => [
    ...mains('mains on', feeds),
    ...feeds
      // Of what a pedal came with nobody knows what a meter should show.
      .filter(({ supply }) => !isOwn(kit, supply))
      .map((feed) => ({ kind: 'measure', feed, reads: reading(feed, kit) }) as const),
    ...mains('mains off', feeds),
    ...feeds.map((feed) => ({ kind: 'plug', feed }) as const),
  ];
  return {
    touched,
    steps: [
      ...mains('mains off', today),
      ...leaving.filter(isLead).map((from) => ({ kind: 'pull', from }) as const),
      ...leaving.filter(isBattery).map((from) => ({ kind: 'take out', from }) as const),
      ...volts.map((each) => ({ kind: 'set volts', ...each }) as const),
      ...polarities.map((each) => ({ kind: 'set polarity', ...each }) as const),
      ...laid.map(
        (feeds) => ({ kind: 'lay', feeds, chained: staying.some((feed) => isSameOutlet(feed, feeds[0])) }) as const,
      ),
      // What fed supplies give can be measured when they are fed themselves.
      ...measured(fresh.filter(isInletFeed)),
      ...measured(fresh.filter((feed) => !isInletFeed(feed))),
      ...coming.filter(isBattery).map((feed) => ({ kind: 'put in', feed }) as const),
      ...mains('mains on', plan),
    ],
  };
}

/** Whether anything changes for the pedal, be it only a switch that has to be turned while nothing hangs on it. */
function isTouched(feed: Feed, today: readonly Feed[], volts: readonly VoltsSwitch[]): boolean {
  const before = today.find(({ pedal }) => pedal === feed.pedal);
  if (before === undefined || !isSameFeed(before, feed)) return true;
  return volts.some(({ place }) => meet(feed, place));
}

/** The feeds of each output, or of joined ones, in the order of supplies, units and outputs. */
function outletsOf(feeds: readonly Feed[]): readonly (readonly [Feed, ...Feed[]])[] {
  const outlets = groupBy(feeds, ({ supply, unit, outputs }) => JSON.stringify([supply, unit, outputs]));
  const order = unitsOf(feeds);
  const rank = (feed: Feed): number => order.findIndex((unit) => isSameUnit(unit, feed));
  return [...outlets].sort(
    ([first], [second]) => rank(first) - rank(second) || (first.outputs[0] ?? 0) - (second.outputs[0] ?? 0),
  );
}

function unitsOf(feeds: readonly Feed[]): readonly UnitPlace[] {
  const units = new Map(feeds.map(({ supply, unit }) => [JSON.stringify([supply, unit]), { supply, unit }]));
  return [...units.values()];
}

/** What a meter shows at a plug with nothing on it. */
function reading(feed: Feed, kit: Kit): Millivolts {
  const open = feed.outputs.map((output, at) => {
    const volts = feed.settings[at] ?? feedMillivolts(feed);
    const settings = bankAt(kit, feed.supply, output)?.settings ?? [];
    return settings.find(({ millivolts }) => millivolts === volts)?.openCircuit ?? volts;
  });
  const sum = open.reduce((total, each) => total + each, 0);
  return (feed.join?.mode === 'series' ? sum : Math.max(...open)) as Millivolts;
}
