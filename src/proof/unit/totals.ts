import type { Policy } from '../../domain/board.js';
import type { JoinMode, Supply, Total } from '../../domain/supply.js';

/** One output in use: its bank's place in the supply and the volts it is set to. */
export type ShapeTap = { readonly bank: number; readonly volts: number };

/** What a pedal takes in microamps × the guess's denominator: running, and at switch-on, which is never less. */
export type ShapeTaken = { readonly load: number; readonly surge: number };

/** A limit on what a bank or the whole supply gives: on loads, or on what is taken when all pedals start at once. */
export type Limit = {
  readonly on: keyof ShapeTaken;
  /** The bank's place; null for the whole supply. */
  readonly bank: number | null;
  readonly counts: Total['kind'];
  /** The most of it, or of it × millivolts for a total in watts. */
  readonly most: bigint;
};

export function limitsOf({ banks, total, source }: Supply, policy: Policy): readonly Limit[] {
  const ofBanks = banks.flatMap((bank, index) => (bank.total === null ? [] : limitsFor(bank.total, index, policy)));
  const ofAll = total === null ? [] : limitsFor(total, null, policy);
  return [...ofBanks, ...ofAll, ...(source.kind === 'charge' ? lasting(source.milliwattHours, policy) : [])];
}

/** The rule `runtime`: so much may be drawn all the time, in millivolts × microamps × the guess's denominator, rounded down. */
function lasting(milliwattHours: number, { guess, runtime }: Policy): readonly Limit[] {
  if (runtime === null) return [];
  const { hours, usable } = runtime;
  const charge = BigInt(milliwattHours) * 1_000_000n * BigInt(guess.denominator) * BigInt(usable.numerator);
  const most = (charge * BigInt(hours.denominator)) / (BigInt(usable.denominator) * BigInt(hours.numerator));
  return [{ on: 'load', bank: null, counts: 'power', most }];
}

/** The rules `total` and `startup`; a milliwatt is a million millivolts × microamps. */
function limitsFor(total: Total, bank: number | null, { guess, headroom }: Policy): readonly Limit[] {
  const amount = total.kind === 'current' ? BigInt(total.microamps) : BigInt(total.milliwatts) * 1_000_000n;
  const surge = amount * BigInt(guess.denominator);
  const { numerator, denominator } = headroom.supply;
  const load = (surge * BigInt(denominator)) / BigInt(numerator);
  return [
    { on: 'load', bank, counts: total.kind, most: load },
    { on: 'surge', bank, counts: total.kind, most: surge },
  ];
}

/**
 * How often what is taken counts in a limit, times millivolts for one in watts. In series it counts on both outputs; in parallel
 * once, as it may all fall on one of them.
 */
export function weightIn({ bank, counts }: Limit, taps: readonly ShapeTap[], join: JoinMode | null): number {
  const shares = taps
    .filter((tap) => bank === null || tap.bank === bank)
    .map((tap) => (counts === 'current' ? 1 : tap.volts));
  return join === 'parallel' ? Math.max(0, ...shares) : shares.reduce((sum, share) => sum + share, 0);
}

/** What loads take of each limit, in whole numbers small enough to be added up, and the limits in the same steps. */
type Burdens = {
  readonly caps: readonly number[];
  readonly of: (taken: readonly bigint[]) => readonly number[];
};

/** Up to this, sums of burdens are exact. */
const largest = 2n ** 44n;

/**
 * Takes out what all burdens of a limit have in common. What is still too large then is rounded down, limit and burdens
 * alike: that never forbids what the limit allows. Limits that nothing can reach, or that another
 * one implies, are left out.
 */
export function burdensIn(limits: readonly Limit[], all: readonly (readonly bigint[])[], pedals: number): Burdens {
  const kept = unimplied(limits, all).flatMap((index) => {
    const most = limits[index]?.most ?? 0n;
    const taken = all.map((burden) => burden[index] ?? 0n);
    const heaviest = taken.reduce((heavy, value) => (value > heavy ? value : heavy), 0n);
    if (heaviest * BigInt(pedals) <= most) return [];
    const common = taken.reduce(greatestCommonDivisor, 0n);
    const step = most / common < largest ? common : most / largest + 1n;
    return [{ index, step, cap: Number(most / step) }];
  });
  return {
    caps: kept.map(({ cap }) => cap),
    of: (taken) => kept.map(({ index, step }) => Number((taken[index] ?? 0n) / step)),
  };
}

/** The places of the limits without those that another one implies, as nothing takes a larger share of them than of that one. */
function unimplied(limits: readonly Limit[], all: readonly (readonly bigint[])[]): readonly number[] {
  const implies = (one: number, other: number): boolean => {
    const [most, otherMost] = [limits[one]?.most ?? 0n, limits[other]?.most ?? 0n];
    return most > 0n && all.every((taken) => (taken[other] ?? 0n) * most <= (taken[one] ?? 0n) * otherMost);
  };
  return limits.reduce<readonly number[]>(
    (left, _, index) =>
      left.some((one) => one !== index && implies(one, index)) ? left.filter((each) => each !== index) : left,
    limits.map((_, index) => index),
  );
}

function greatestCommonDivisor(first: bigint, second: bigint): bigint {
  let [larger, smaller] = [first, second];
  while (smaller !== 0n) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}
