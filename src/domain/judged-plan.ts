import { tierValue, type Criterion } from './aim.js';
import type { Policy, Runtime } from './board.js';
import type { Exact } from './load.js';
import type { OutletLoad, TotalLoad } from './load-numbers.js';
import type { Exposure, Wiring } from './plan.js';
import type { MilliwattHours, PedalId, SupplyId } from './quantities.js';

/** Pedals whose grounds are tied together by what feeds them. */
export type GroundDomain = {
  readonly supply: SupplyId;
  readonly unit: number;
  /** Null for a supply's common ground, else the isolated output or the joined ones, in rising order. */
  readonly outputs: readonly number[] | null;
  /** In the order of the board. */
  readonly pedals: readonly PedalId[];
};

/** How long a power bank lasts with all that hangs on it: an estimate by its watt-hours. */
export type BankRuntime = {
  readonly supply: SupplyId;
  readonly unit: number;
  readonly pedals: readonly PedalId[];
  readonly milliwattHours: MilliwattHours;
  /** What the policy asks for. */
  readonly asked: Runtime;
  /** Exact; never less than what is asked of it, unless the rule `runtime` is broken. */
  readonly hours: Exact;
};

/** A pedal on a set of batteries, and how long that lasts: an estimate by what it holds. */
export type BatteryInUse = {
  readonly pedal: PedalId;
  readonly supply: SupplyId;
  /** Exact; null where the pedal draws nothing. */
  readonly hours: Exact | null;
  /** How many batteries the hours of playing take that are paid for, owned ones among them; 0 where nobody says how long. */
  readonly pieces: number;
};

/** A wiring with all that the audit has measured of it: whoever shows it works nothing out again. */
export type JudgedPlan = Wiring & {
  /** How many mains sockets it takes. */
  readonly sockets: number;
  /** What hangs on every output in use, in the order of the board's pedals. */
  readonly outlets: readonly OutletLoad[];
  /** Every stated total that something counts towards, in the order of the units. */
  readonly totals: readonly TotalLoad[];
  /** Every power bank in use of which it is known how long it has to last, in the order of the units. */
  readonly runtimes: readonly BankRuntime[];
  /** Every pedal that runs on batteries, in the order of the board. */
  readonly batteries: readonly BatteryInUse[];
  /** Every ground domain in use, in the order of the board's pedals. */
  readonly grounds: readonly GroundDomain[];
  /** The exposed pedals, each with those that expose it. */
  readonly exposures: readonly Exposure[];
};

/** What a plan has of a criterion, the smaller the better. */
export const criterionValue = (criterion: Criterion, { score, sockets }: JudgedPlan, policy: Policy): number =>
  criterion === 'sockets' ? sockets : tierValue(criterion, score, policy);
