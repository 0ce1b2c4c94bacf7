import type { BatteryTerms } from '../../domain/board.js';
import { withGear } from '../../domain/changed-kit.js';
import { forSaleOf, type Kit } from '../../domain/kit.js';
import { loadAt, scaled, stepsUp, type Exact } from '../../domain/load.js';
import { takesNothingElse } from '../../domain/own-adapter.js';
import { ownBatteryOf } from '../../domain/own-battery.js';
import type { Part } from '../../domain/part.js';
import { lowestMillivolts, type OwnBattery, type Pedal } from '../../domain/pedal.js';
import { microampHours, millivolts, partId, type Millivolts, type PedalId } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { acceptsVolts } from '../../loadout/outlet.js';
import { noWays, waysFor, wayWith, type Battery, type Ways } from './way-out.js';

/** For each of these pedals: whether batteries that nobody has would do, as many of them as are paid for. */
export const missingBatteries = async (pedals: readonly PedalId[], kit: Kit, effort: Effort): Promise<Ways> =>
  waysFor(
    kit.board.pedals.filter(({ id }) => pedals.includes(id)),
    async (pedal) => {
      const found = soughtBattery(pedal, kit);
      if (found === null) return noWays;
      const { battery, count, pieces } = found;
      const set = ownBatteryOf(pedal, battery);
      const changed = withGear(kit, { supplies: set === null ? [] : [set], parts: [battery] }, pieces);
      return wayWith({ kind: 'battery', pedal: pedal.id, battery, count }, changed, effort);
    },
  );

export type SoughtBattery = {
  readonly battery: Battery;
  /** How many go in. */
  readonly count: number;
  /** How many are paid for. */
  readonly pieces: number;
};

/**
 * A battery that lasts in the pedal as long as is asked, of the fewest whole milliamp-hours that do. Null of a pedal that takes
 * none, where nobody has said how long, and where one that does can be bought without end.
 */
export function soughtBattery(pedal: Pedal, kit: Kit): SoughtBattery | null {
  const { batteries: terms, guess } = kit.board.policy;
  if (terms === null || pedal.battery === null || takesNothingElse(pedal)) return null;
  const known = batteriesOf(pedal.battery.type, kit);
  const each = voltsOfEach(pedal, pedal.battery, known);
  if (each === null) return null;
  const { type, count } = pedal.battery;
  const load = loadAt(pedal, millivolts(count * each), guess);
  const held = microampHours(1000 * Math.max(1, stepsUp(scaled(load, terms.change), 1000)));
  const does = ({ role }: Battery): boolean => role.millivolts === each && role.microampHours >= held;
  if (known.some((battery) => forSaleOf(battery) === Infinity && does(battery))) return null;
  const battery = batteryCalled(`no-such-battery-for-${pedal.id}`, { type, millivolts: each, microampHours: held });
  return { battery, count, pieces: count * setsFor(load, terms, held) };
}

/** ⌈pay × load ÷ mAh⌉. */
const setsFor = (load: Exact, { pay }: BatteryTerms, held: number): number => stepsUp(scaled(load, pay), held);

const batteriesOf = (type: string, { parts }: Kit): readonly Battery[] =>
  [...parts.values()].filter(isBattery).filter(({ role }) => role.type === type);

const isBattery = (part: Part): part is Battery => part.role.kind === 'battery';

/** What batteries of the type are known to give, else a share of what the pedal takes; null where that is no whole millivolts. */
function voltsOfEach(pedal: Pedal, { count }: OwnBattery, known: readonly Battery[]): Millivolts | null {
  if (known.length > 0)
    return (
      known.map(({ role }) => role.millivolts).find((each) => acceptsVolts(pedal, millivolts(count * each))) ?? null
    );
  const { accepts, prefers } = pedal;
  const lowest = Math.ceil(lowestMillivolts(accepts) / count) * count;
  const sets = [
    ...(prefers === null ? [] : [prefers]),
    lowest,
    ...(accepts.kind === 'listed' ? accepts.millivolts : []),
  ];
  const set = sets.find((all) => all % count === 0 && acceptsVolts(pedal, millivolts(all)));
  return set === undefined ? null : millivolts(set / count);
}

function batteryCalled(name: string, role: Omit<Battery['role'], 'kind'>): Battery {
  const id = partId(name);
  return {
    id,
    name: 'one more battery',
    price: null,
    stock: 0,
    fits: id,
    gives: id,
    reverses: false,
    role: { kind: 'battery', ...role },
  };
}
