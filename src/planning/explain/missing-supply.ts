import type { Runtime } from '../../domain/board.js';
import { drawAt, loadAt, scaled, stepsUp, sum } from '../../domain/load.js';
import { lowestMillivolts, type Pedal } from '../../domain/pedal.js';
import {
  microamps,
  millivolts,
  milliwattHours,
  supplyId,
  type Factor,
  type Millivolts,
  type PedalId,
} from '../../domain/quantities.js';
import type { MainsVolts, Source } from '../../domain/source.js';
import type { Supply } from '../../domain/supply.js';
import type { Effort } from '../../formulation/optimiser.js';
import { withGear } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { waysFor, wayWith, type Change, type Ways } from './way-out.js';
import { singleOutputFor } from '../../domain/single-output.js';

/** For each of these pedals: whether one more supply that is made for it, and for nothing else, would do. */
export const missingSupplies = async (pedals: readonly PedalId[], kit: Kit, effort: Effort): Promise<Ways> =>
  waysFor(
    kit.board.pedals.filter(({ id }) => pedals.includes(id)),
    (pedal) => withOneMore(pedal, kit, effort, (supply) => ({ kind: 'supply', supply, pedal: pedal.id })),
  );

/** A plan with the first of `suppliesFor` that does. */
export async function withOneMore(
  pedal: Pedal,
  kit: Kit,
  effort: Effort,
  changeWith: (supply: Supply) => Change,
): Promise<Ways> {
  let whole = true;
  for (const supply of suppliesFor(pedal, kit)) {
    const found = await wayWith(changeWith(supply), withGear(kit, { supplies: [supply] }), effort);
    if (found.ways.length > 0) return found;
    whole &&= found.whole;
  }
  return { ways: [], whole };
}

/**
 * What is just enough for the pedal, at the volts that it would rather have: one isolated output of the least rating that does,
 * on mains, or, where the board says how long it has to last, on a power bank.
 */
export function suppliesFor(pedal: Pedal, { board: { policy } }: Kit): readonly [Supply, ...Supply[]] {
  const at: Millivolts = pedal.prefers ?? millivolts(lowestMillivolts(pedal.accepts));
  const planned = stepsUp(scaled(loadAt(pedal, at, policy.guess), policy.headroom.alone), 1);
  const rating = microamps(Math.max(planned, pedal.startup ?? 0, drawAt(pedal, at)));
  const on = (source: Source, id: string): Supply =>
    singleOutputFor(pedal, {
      id: supplyId(`no-such-${id}-for-${pedal.id}`),
      name: `one more supply for ${pedal.name}`,
      source,
      setting: { millivolts: at, rating, openCircuit: null },
      otherwise: 'either',
    });
  const mains = on({ kind: 'mains', volts: spanOf(policy.mains) }, 'supply');
  return policy.runtime === null
    ? [mains]
    : [mains, on(chargeFor([{ pedal, at }], policy.guess, policy.runtime), 'bank')];
}

/** In tenths of a watt-hour, as they are printed. */
const milliwattHoursAStep = 100;

/** What a pedal, or an inlet, gets of a power bank. */
type Hanging = { readonly pedal: Pedal; readonly at: Millivolts };

/**
 * The least charge with which a power bank lasts, in steps of a tenth of a watt-hour.
 * Rule `runtime`: hours × Σ (volts × load) ÷ usable, in mV × µA = nW.
 */
export function chargeFor(hanging: readonly Hanging[], guess: Factor, { hours, usable }: Runtime): Charge {
  const power = sum(
    hanging.map(({ pedal, at }) => {
      const load = loadAt(pedal, at, guess);
      return { ...load, numerator: load.numerator * BigInt(at) };
    }),
  );
  const taken = scaled(scaled(power, hours), inverse(usable));
  const steps = Math.max(1, stepsUp(taken, milliwattHoursAStep * 1_000_000));
  return { kind: 'charge', milliwattHours: milliwattHours(steps * milliwattHoursAStep) };
}

type Charge = Extract<Source, { readonly kind: 'charge' }>;

const inverse = ({ numerator, denominator }: Factor): Factor => ({ numerator: denominator, denominator: numerator });

/** From the lowest to the highest; null of none. */
export const spanOf = (mains: readonly Millivolts[]): MainsVolts =>
  mains.length === 0 ? null : { from: millivolts(Math.min(...mains)), to: millivolts(Math.max(...mains)) };
