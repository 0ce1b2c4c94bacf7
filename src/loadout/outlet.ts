import { isAccepted, type Pedal, type Polarity, type Power } from '../domain/pedal.js';
import { takesNothingElse } from '../domain/own-adapter.js';
import type { Policy } from '../domain/board.js';
import type { Microamps, Millivolts } from '../domain/quantities.js';
import type { Bank, Setting } from '../domain/supply.js';
import { loadOf, takenBy, withinFactor, type TakenLoad } from './load.js';
import type { Exit } from './routes.js';

/** What one output, or two joined ones, offer a pedal at given settings. */
export type Outlet = {
  readonly power: Power;
  readonly millivolts: Millivolts;
  /** The volts without a load; null when they hold. */
  readonly openCircuit: Millivolts | null;
  readonly rating: Microamps;
};

/** An output by itself at one of its settings. */
export const outletOf = (bank: Bank, setting: Setting): Outlet => ({
  power: bank.power,
  millivolts: setting.millivolts,
  openCircuit: setting.openCircuit,
  rating: setting.rating,
});

/** Two outputs in series: volts add, with and without a load; the weaker one's rating holds. */
export function inSeries(first: Outlet, second: Outlet): Outlet {
  const unregulated = first.openCircuit !== null || second.openCircuit !== null;
  const open = (first.openCircuit ?? first.millivolts) + (second.openCircuit ?? second.millivolts);
  return {
    power: first.power,
    millivolts: (first.millivolts + second.millivolts) as Millivolts,
    openCircuit: unregulated ? (open as Millivolts) : null,
    rating: Math.min(first.rating, second.rating) as Microamps,
  };
}

/** Two outputs of the same volts in parallel: ratings add; the higher open-circuit volts count. */
export function inParallel(first: Outlet, second: Outlet): Outlet {
  const unregulated = first.openCircuit !== null || second.openCircuit !== null;
  const open = Math.max(first.openCircuit ?? first.millivolts, second.openCircuit ?? second.millivolts);
  return {
    power: first.power,
    millivolts: first.millivolts,
    openCircuit: unregulated ? (open as Millivolts) : null,
    rating: (first.rating + second.rating) as Microamps,
  };
}

/** Whether the pedal's maker allows these volts. */
export const acceptsVolts = ({ accepts }: Pedal, volts: Millivolts): boolean => isAccepted(accepts, volts);

/**
 * Rules `power` and `voltage`: right kind of current, accepted volts, and open-circuit volts accepted or survived; never for
 * a pedal of which it is not stated what it takes.
 */
export function voltsSuit(pedal: Pedal, outlet: Outlet): boolean {
  if (takesNothingElse(pedal) || pedal.power !== outlet.power || !acceptsVolts(pedal, outlet.millivolts)) return false;
  const open = outlet.openCircuit;
  return open === null || acceptsVolts(pedal, open) || (pedal.survives !== null && open <= pedal.survives);
}

/** What the pedal takes there, if it may hang there by itself: rules `power`, `voltage`, `current` and `startup`. */
export function takenAlone(pedal: Pedal, outlet: Outlet, policy: Policy): TakenLoad | null {
  return takenWithin(pedal, outlet, policy, policy.headroom.alone);
}

/** What the pedal takes there, if it may hang there in a chain with others whose load is as good as nothing. */
export function takenInChain(pedal: Pedal, outlet: Outlet, policy: Policy): TakenLoad | null {
  return pedal.alone || pedal.power === 'AC' ? null : takenWithin(pedal, outlet, policy, policy.headroom.chained);
}

function takenWithin(
  pedal: Pedal,
  outlet: Outlet,
  policy: Policy,
  factor: Policy['headroom']['alone'],
): TakenLoad | null {
  if (!voltsSuit(pedal, outlet)) return null;
  const taken = takenBy(pedal, outlet.millivolts, policy);
  const rating = loadOf(outlet.rating, policy);
  return taken !== undefined && withinFactor(taken.load, factor, rating) && taken.surge <= rating ? taken : null;
}

/** What stands at the end of a bank's own straight lead. */
export const exitOf = (bank: Bank): Exit => ({ plug: bank.plug, polarities: polaritiesOf(bank) });

/** The polarities that an output of the bank can have; none for AC. */
export function polaritiesOf(bank: Bank): readonly Polarity[] {
  if (bank.polarity === null) return [];
  return bank.polarity === 'either' ? ['centre-negative', 'centre-positive'] : [bank.polarity];
}
