/** One supply unit and what hangs on it. The outputs of a bank are alike, so that the next free one is always taken. */
import type { Policy } from '../../src/domain/board.js';
import type { Pedal } from '../../src/domain/pedal.js';
import type { Feed } from '../../src/domain/plan.js';
import type { Bank, Supply, Total } from '../../src/domain/supply.js';
import { exact, once, within, type Hookup } from './brute-force-hookups.js';

export type Unit = { readonly supply: Supply; readonly hookups: readonly Hookup[] };

export const newUnit = (supply: Supply): Unit => ({ supply, hookups: [] });

export const withHookup = (unit: Unit, hookup: Hookup): Unit => ({ ...unit, hookups: [...unit.hookups, hookup] });

/** True when the unit has outputs left for the hookup and keeps `setting`, `ground`, `total` and `startup` with it. */
export function fits(unit: Unit, hookup: Hookup, policy: Policy): boolean {
  const { supply, hookups } = withHookup(unit, hookup);
  return (
    supply.banks.every((bank, index) => {
      const taps = hookups.flatMap((one) => one.taps).filter((tap) => tap.bank === index);
      if (taps.length > bank.outputs) return false;
      if (bank.switching === 'together' && taps.some((tap) => tap.setting !== taps[0]?.setting)) return false;
      return keepsTotal(bank.total, hookups.map((one) => shareOfBank(one, index)).flat(), policy);
    }) &&
    keepsTotal(supply.total, hookups.flatMap(shareOfSupply), policy) &&
    lasts(supply, hookups.flatMap(shareOfSupply), policy) &&
    domainsOf({ supply, hookups }).every((domain) => new Set(domain.map((pedal) => pedal.ground)).size <= 1) &&
    domainsOf({ supply, hookups }).every(
      (domain) => domain.length < 2 || domain.every((pedal) => pedal.ground !== 'unknown'),
    )
  );
}

/** The pedals of every ground domain of the unit: each isolated output's, and the common ground's across all banks. */
export function domainsOf({ supply, hookups }: Unit): readonly (readonly Pedal[])[] {
  const isIsolated = (hookup: Hookup): boolean => hookup.taps.every((tap) => supply.banks[tap.bank]?.isolated === true);
  const common = hookups.filter((hookup) => !isIsolated(hookup)).flatMap((hookup) => hookup.pedals);
  return [...hookups.filter(isIsolated).map((hookup) => hookup.pedals), common];
}

/** What is taken, scaled as a hookup's load is, at the volts of the output that gives it. */
type Share = Pick<Hookup, 'load' | 'surge'> & { readonly volts: number };

/** A series join loads both of its outputs. A parallel one may load either with all it takes, but the bank only once. */
function shareOfBank({ taps, join, load, surge }: Hookup, bank: number): readonly Share[] {
  const own = taps.filter((tap) => tap.bank === bank);
  const shares = own.map((tap) => ({ load, surge, volts: tap.setting.millivolts }));
  return join?.mode === 'parallel' ? shares.slice(0, 1) : shares;
}

function shareOfSupply({ taps, join, load, surge }: Hookup): readonly Share[] {
  const shares = taps.map((tap) => ({ load, surge, volts: tap.setting.millivolts }));
  return join?.mode === 'parallel' ? shares.slice(0, 1) : shares;
}

/** The rules `total` and `startup`. */
function keepsTotal(total: Total | null, shares: readonly Share[], policy: Policy): boolean {
  if (total === null) return true;
  // Microamps times millivolts are nanowatts: a million of them make a milliwatt.
  const limit = total.kind === 'current' ? total.microamps : exact(total.milliwatts * 1_000_000);
  const sum = (of: 'load' | 'surge'): number =>
    shares.reduce((all, share) => exact(all + exact(share[of] * (total.kind === 'current' ? 1 : share.volts))), 0);
  const scale = policy.guess.denominator;
  return within(sum('load'), policy.headroom.supply, limit, scale) && within(sum('surge'), once, limit, scale);
}

/** The rule `runtime`: hours × watts ≤ usable × watt-hours, in big integers. */
function lasts({ source }: Supply, shares: readonly Share[], { guess, runtime }: Policy): boolean {
  if (source.kind !== 'charge' || runtime === null) return true;
  const { hours, usable } = runtime;
  const drawn = shares.reduce((all, { load, volts }) => all + BigInt(load) * BigInt(volts), 0n);
  const charge = BigInt(source.milliwattHours) * 1_000_000n * BigInt(guess.denominator);
  const needed = drawn * BigInt(hours.numerator) * BigInt(usable.denominator);
  return needed <= charge * BigInt(usable.numerator) * BigInt(hours.denominator);
}

/** The feeds of all units, units of one supply numbered in the order in which they stand. */
export function feedsOf(units: readonly Unit[]): readonly Feed[] {
  return units.flatMap((unit, index) => {
    const number = units.slice(0, index + 1).filter((other) => other.supply === unit.supply).length;
    const taken = unit.supply.banks.map(() => 0);
    return unit.hookups.flatMap((hookup) => {
      const outputs = hookup.taps.map((tap) => {
        const before = taken[tap.bank] ?? 0;
        taken[tap.bank] = before + 1;
        return bankAt(unit.supply, tap.bank).firstOutput + before;
      });
      return hookup.pedals.map((pedal, position) => feedOf(hookup, pedal, position, number, outputs));
    });
  });
}

function bankAt(supply: Supply, index: number): Bank {
  const bank = supply.banks[index];
  if (bank === undefined) throw new RangeError(`${supply.id} has no bank ${index}`);
  return bank;
}

function feedOf(hookup: Hookup, pedal: Pedal, position: number, unit: number, outputs: readonly number[]): Feed {
  const { join, chain, tails, taps, supply } = hookup;
  const { parts = [], readings = null } = tails[position] ?? {};
  return {
    pedal: pedal.id,
    supply: supply.id,
    unit,
    outputs,
    settings: taps.map((tap) => tap.setting.millivolts),
    polarity: pedal.polarity,
    join: join === null ? null : { mode: join.mode, part: join.lead.id },
    chain: chain?.id ?? null,
    adapters: parts.filter(({ role }) => role.kind !== 'battery').map((part) => part.id),
    ...(readings !== null && { readings }),
    ...(hookup.inletOf !== undefined && { inletOf: hookup.inletOf }),
  };
}
