import { gathered } from '../../solver/gathered.js';
import type { Policy } from '../domain/board.js';
import type { Pedal } from '../domain/pedal.js';
import type { Supply, Total } from '../domain/supply.js';
import { milliwatts } from '../domain/quantities.js';
import { everyTaken, loadOf, outruns, type TakenLoad } from './load.js';

/** What a limit comes from: a stated total, on loads or at switch-on, or how long a power bank has to last. */
type LimitRule = 'total' | 'startup' | 'runtime';

/**
 * A limit on all that hangs on a bank or on a whole supply: Σ weight ≤ capacity, all in one integer unit. For the rule
 * `total` a weight is load × the `supply` factor, for the rule `startup` what is taken at switch-on, without a factor;
 * times the volts, for a total in watts. For the rule `runtime` it is load × volts × hours, for what is usable of the charge.
 */
export type TotalLimit = {
  readonly rule: LimitRule;
  /** The bank's place in the supply; null for the whole supply. */
  readonly bank: number | null;
  readonly total: Total;
  readonly capacity: bigint;
};

/** What a use takes of one of the supply's outputs. */
export type OutputTaken = TakenLoad & {
  readonly bank: number;
  readonly millivolts: number;
  /** The second output of a parallel join: what it takes was counted already, but not yet in another bank's total. */
  readonly repeats: boolean;
};

/** What an outlet's load takes of one output, at its volts. */
export const outputTaken = (bank: number, millivolts: number, taken: TakenLoad, repeats = false): OutputTaken => ({
  bank,
  millivolts,
  load: taken.load,
  surge: taken.surge,
  repeats,
});

/** The limits that a supply states; each also for switching on, where one of these pedals can outrun the `supply` factor. */
export function totalLimits(supply: Supply, policy: Policy, pedals: readonly Pedal[]): readonly TotalLimit[] {
  const { supply: factor } = policy.headroom;
  const surging = pedals.some((pedal) => everyTaken(pedal, policy).some((taken) => outruns(taken, factor)));
  const limits = (bank: number | null, total: Total | null): TotalLimit[] => {
    if (total === null) return [];
    const capacity = capacityOf(total, policy);
    return [
      { rule: 'total', bank, total, capacity: capacity * BigInt(factor.denominator) },
      ...(surging ? [{ rule: 'startup' as const, bank, total, capacity }] : []),
    ];
  };
  return [
    ...gathered(supply.banks, (bank, index) => limits(index, bank.total)),
    ...limits(null, supply.total),
    ...chargeLimits(supply, policy),
  ];
}

/** Rule `runtime`: hours × Σ load × volts ≤ usable × watt-hours, times both denominators. */
function chargeLimits({ source }: Supply, policy: Policy): readonly TotalLimit[] {
  const { runtime } = policy;
  if (source.kind !== 'charge' || runtime === null) return [];
  const { hours, usable } = runtime;
  const share = loadOf(source.milliwattHours, policy) * 1_000_000n * BigInt(usable.numerator);
  const most = (source.milliwattHours * usable.numerator * hours.denominator) / (usable.denominator * hours.numerator);
  return [
    {
      rule: 'runtime',
      bank: null,
      total: { kind: 'power', milliwatts: milliwatts(Math.floor(most)) },
      capacity: share * BigInt(hours.denominator),
    },
  ];
}

/** mV × µA = nW; a milliwatt is a million of them. */
function capacityOf(total: Total, policy: Policy): bigint {
  return total.kind === 'current' ? loadOf(total.microamps, policy) : loadOf(total.milliwatts, policy) * 1_000_000n;
}

/** An output by its bank, at its volts. */
type OutputVolts = Pick<OutputTaken, 'bank' | 'millivolts'>;

/** What a unit of load weighs on an output, or for the rule `startup` of what is taken at switch-on; nothing in another bank. */
function weightOfOne({ rule, bank, total }: TotalLimit, output: OutputVolts, policy: Policy): bigint {
  if (bank !== null && bank !== output.bank) return 0n;
  const factor = factorOf(rule, policy);
  return factor * (total.kind === 'power' ? BigInt(output.millivolts) : 1n);
}

function factorOf(rule: LimitRule, { headroom, runtime }: Policy): bigint {
  if (rule === 'startup') return 1n;
  if (rule === 'total') return BigInt(headroom.supply.numerator);
  return runtime === null ? 1n : BigInt(runtime.hours.numerator) * BigInt(runtime.usable.denominator);
}

/** The most that the limits of a rule leave one output: of load, or for the rule `startup` at switch-on; null for no limit. */
export function mostOn(
  output: OutputVolts,
  rule: TotalLimit['rule'],
  limits: readonly TotalLimit[],
  policy: Policy,
): bigint | null {
  let most: bigint | null = null;
  for (const limit of limits) {
    const weight = limit.rule === rule ? weightOfOne(limit, output, policy) : 0n;
    if (weight > 0n && (most === null || limit.capacity / weight < most)) most = limit.capacity / weight;
  }
  return most;
}

/** What a use adds to each of the limits, in their order. */
export function weightsOf(
  limits: readonly TotalLimit[],
  taken: readonly OutputTaken[],
  policy: Policy,
): readonly bigint[] {
  return limits.map((limit) => {
    const { rule, bank } = limit;
    let weight = 0n;
    let isCounted = false;
    for (const output of taken) {
      if (bank !== null && output.bank !== bank) continue;
      const again = output.repeats && (bank === null || isCounted);
      isCounted = true;
      const amount = rule === 'startup' ? output.surge : output.load;
      if (!again) weight += amount * weightOfOne(limit, output, policy);
    }
    return weight;
  });
}
