/** What one output, or one pair of joined outputs, can feed: all rules that need no look at the rest of the supply. */
import type { Policy } from '../../src/domain/board.js';
import type { UnitRef } from '../../src/domain/inlet.js';
import type { Part } from '../../src/domain/part.js';
import type { Pedal, Polarity, Power } from '../../src/domain/pedal.js';
import type { Factor, Millivolts } from '../../src/domain/quantities.js';
import type { Bank, JoinMode, Setting, Supply } from '../../src/domain/supply.js';
import { behind, tailsTo, type Tail } from './brute-force-leads.js';
import { mayBeUsed } from './brute-force-sources.js';

/** One output in use: the index of its bank in the supply, and how it is set. */
export type Tap = { readonly bank: number; readonly setting: Setting };

export type Hookup = {
  readonly supply: Supply;
  readonly pedals: readonly Pedal[];
  /** One output, or the two of a join with the earlier bank first. */
  readonly taps: readonly Tap[];
  readonly join: { readonly mode: JoinMode; readonly lead: Part } | null;
  readonly chain: Part | null;
  /** Each pedal's own adapters, in the order of `pedals`. */
  readonly tails: readonly Tail[];
  /** What reaches the pedals; the sum for a series join. */
  readonly volts: number;
  /** In microamps times the guess factor's denominator, so that it is whole. */
  readonly load: number;
  /** When all start at once, in the same unit: each pedal's startup, or its load where that is more. */
  readonly surge: number;
  /** There only where it is the inlet of this fed unit that hangs there, as a pedal. */
  readonly inletOf?: UnitRef;
};

/** @throws RangeError when the value is not a safe integer, so that no comparison is ever inexact. */
export function exact(value: number): number {
  if (!Number.isSafeInteger(value)) throw new RangeError(`${value} is not a safe integer`);
  return value;
}

/** The factor of what is taken at switch-on. */
export const once: Factor = { numerator: 1, denominator: 1 };

/** True when load × factor ≤ limit; the load counts in 1/scale of the limit's unit. */
export const within = (load: number, factor: Factor, limit: number, scale: number): boolean =>
  exact(load * factor.numerator) <= exact(exact(limit * scale) * factor.denominator);

/** Every way to hang exactly these pedals on one output or one joined pair of the supply. */
export function hookupsOf(
  pedals: readonly Pedal[],
  supply: Supply,
  parts: readonly Part[],
  policy: Policy,
): readonly Hookup[] {
  const [pedal] = pedals;
  if (pedal === undefined || !mayBeUsed(supply, policy)) return [];
  if (supply.source.kind === 'battery') return pedals.length > 1 ? [] : ownBattery(pedal, supply, parts, policy);
  if (supply.source.kind === 'adapter') return pedals.length > 1 ? [] : ownAdapter(pedal, supply);
  if (pedals.length > 1) return chained(pedals, supply, parts, policy);
  return [...direct(pedal, supply, parts, policy), ...joined(pedal, supply, parts, policy)];
}

/** The adapter that a pedal came with goes into that pedal, whatever is stated of the two. */
function ownAdapter(pedal: Pedal, supply: Supply): readonly Hookup[] {
  const setting = supply.banks[0]?.settings[0];
  if (setting === undefined || pedal.adapter?.supply !== supply.id) return [];
  const readings = { 'centre-negative': [], 'centre-positive': [] };
  return [
    {
      supply,
      pedals: [pedal],
      taps: [{ bank: 0, setting }],
      join: null,
      chain: null,
      tails: [{ parts: [], readings: pedal.polarity === 'unknown' ? readings : null }],
      volts: setting.millivolts,
      load: 0,
      surge: 0,
    },
  ];
}

/** The rule `battery`, in big integers; the sets that are paid for are pieces of the pedal's tail. */
function ownBattery(pedal: Pedal, supply: Supply, parts: readonly Part[], policy: Policy): readonly Hookup[] {
  const { source } = supply;
  const setting = supply.banks[0]?.settings[0];
  const { batteries, guess } = policy;
  if (source.kind !== 'battery' || setting === undefined || batteries === null || source.pedal !== pedal.id) return [];
  const part = parts.find(({ id }) => id === source.battery);
  const volts = setting.millivolts;
  if (part === undefined || pedal.adapter?.only === true || !acceptsVolts(pedal, volts)) return [];
  const load = BigInt(loadOf(pedal, volts, policy));
  const held = BigInt(source.microampHours) * BigInt(guess.denominator);
  if (load * BigInt(batteries.change.numerator) > held * BigInt(batteries.change.denominator)) return [];
  let sets = 0n;
  while (sets * held * BigInt(batteries.pay.denominator) < load * BigInt(batteries.pay.numerator)) sets += 1n;
  const readings = { 'centre-negative': [], 'centre-positive': [] };
  const tail = {
    parts: new Array<Part>(Number(sets) * source.count).fill(part),
    readings: pedal.polarity === 'unknown' ? readings : null,
  };
  const tap = { bank: 0, setting };
  return [{ supply, pedals: [pedal], taps: [tap], join: null, chain: null, tails: [tail], volts, load: 0, surge: 0 }];
}

/** What an output or a joined pair is to the pedals on it. */
type Source = {
  readonly power: Power;
  readonly volts: number;
  readonly openCircuit: number;
  readonly rating: number;
};

const openCircuitOf = (setting: Setting): number => setting.openCircuit ?? setting.millivolts;

function sourceOf(bank: Bank, setting: Setting): Source {
  return {
    power: bank.power,
    volts: setting.millivolts,
    openCircuit: openCircuitOf(setting),
    rating: setting.rating,
  };
}

function sourceOfJoin(mode: JoinMode, power: Power, first: Setting, second: Setting): Source {
  if (mode === 'series')
    return {
      power,
      volts: first.millivolts + second.millivolts,
      openCircuit: openCircuitOf(first) + openCircuitOf(second),
      rating: Math.min(first.rating, second.rating),
    };
  return {
    power,
    volts: first.millivolts,
    openCircuit: Math.max(openCircuitOf(first), openCircuitOf(second)),
    rating: first.rating + second.rating,
  };
}

function direct(pedal: Pedal, supply: Supply, parts: readonly Part[], policy: Policy): readonly Hookup[] {
  return supply.banks.flatMap((bank, index) =>
    bank.settings.flatMap((setting) => {
      const source = sourceOf(bank, setting);
      if (!carries(source, [pedal], policy)) return [];
      return tailsTo(pedal, bank.plug, polaritiesOf(bank), parts).map((tail) => ({
        supply,
        pedals: [pedal],
        taps: [{ bank: index, setting }],
        join: null,
        chain: null,
        tails: [tail],
        volts: source.volts,
        ...taken([pedal], source.volts, policy),
      }));
    }),
  );
}

function joined(pedal: Pedal, supply: Supply, parts: readonly Part[], policy: Policy): readonly Hookup[] {
  return parts.flatMap((lead) => {
    if (lead.role.kind !== 'join') return [];
    const { mode } = lead.role;
    return pairsOf(supply, mode).flatMap(({ taps, bank, partner }) => {
      const source = sourceOfJoin(mode, bank.power, taps[0].setting, taps[1].setting);
      if (lead.fits !== bank.plug || !carries(source, [pedal], policy)) return [];
      const offered = polaritiesOf(bank)
        .filter((polarity) => polaritiesOf(partner).includes(polarity))
        .map((polarity) => behind(lead, polarity));
      return tailsTo(pedal, lead.gives, offered, parts).map((tail) => ({
        supply,
        pedals: [pedal],
        taps,
        join: { mode, lead },
        chain: null,
        tails: [tail],
        volts: source.volts,
        ...taken([pedal], source.volts, policy),
      }));
    });
  });
}

/** The pairs of outputs, with their settings, that may be joined in this mode. */
function pairsOf(supply: Supply, mode: JoinMode): readonly { taps: readonly [Tap, Tap]; bank: Bank; partner: Bank }[] {
  return supply.banks.flatMap((bank, first) =>
    supply.banks.slice(first).flatMap((partner, offset) => {
      const second = first + offset;
      if (first === second && bank.outputs < 2) return [];
      if (![bank, partner].every(({ isolated, joins }) => isolated && joins.includes(mode))) return [];
      if (bank.power !== partner.power || bank.plug !== partner.plug) return [];
      return bank.settings.flatMap((setting, position) =>
        partner.settings
          .filter((other, otherPosition) => {
            if (mode === 'parallel' && setting.millivolts !== other.millivolts) return false;
            if (first !== second) return true;
            return bank.switching === 'together' ? position === otherPosition : position <= otherPosition;
          })
          .map((other) => ({
            taps: [
              { bank: first, setting },
              { bank: second, setting: other },
            ] as const,
            bank,
            partner,
          })),
      );
    }),
  );
}

function chained(pedals: readonly Pedal[], supply: Supply, parts: readonly Part[], policy: Policy): readonly Hookup[] {
  if (policy.chains === 'never' || pedals.some((pedal) => pedal.alone || pedal.power === 'AC')) return [];
  if (new Set(pedals.map((pedal) => pedal.ground)).size > 1 || pedals[0]?.ground === 'unknown') return [];
  return supply.banks.flatMap((bank, index) =>
    bank.settings.flatMap((setting) => {
      const source = sourceOf(bank, setting);
      if (!carries(source, pedals, policy)) return [];
      return parts.flatMap((chain) => {
        if (chain.role.kind !== 'chain' || chain.role.tails < pedals.length || chain.fits !== bank.plug) return [];
        const ways = polaritiesOf(bank).flatMap((polarity) =>
          product(pedals.map((pedal) => tailsTo(pedal, chain.gives, [behind(chain, polarity)], parts))),
        );
        return ways.map((tails) => ({
          supply,
          pedals,
          taps: [{ bank: index, setting }],
          join: null,
          chain,
          tails,
          volts: source.volts,
          ...taken(pedals, source.volts, policy),
        }));
      });
    }),
  );
}

/** What an output of the bank can offer at its plug. */
function polaritiesOf(bank: Bank): readonly (Polarity | null)[] {
  return bank.polarity === 'either' ? ['centre-negative', 'centre-positive'] : [bank.polarity];
}

/** One choice from each list, in every combination. */
const product = <Item>(lists: readonly (readonly Item[])[]): readonly (readonly Item[])[] =>
  lists.reduce<readonly (readonly Item[])[]>(
    (ways, list) => ways.flatMap((way) => list.map((item) => [...way, item])),
    [[]],
  );

/** The rules `power`, `voltage`, `current` and `startup`. */
function carries(source: Source, pedals: readonly Pedal[], policy: Policy): boolean {
  if (pedals.some(({ adapter }) => adapter?.only === true)) return false;
  if (!pedals.every((pedal) => pedal.power === source.power && acceptsSource(pedal, source))) return false;
  const scale = policy.guess.denominator;
  const { load, surge } = taken(pedals, source.volts, policy);
  const factor = pedals.length === 1 ? policy.headroom.alone : policy.headroom.chained;
  return within(load, factor, source.rating, scale) && within(surge, once, source.rating, scale);
}

function acceptsSource(pedal: Pedal, source: Source): boolean {
  if (!acceptsVolts(pedal, source.volts)) return false;
  if (acceptsVolts(pedal, source.openCircuit)) return true;
  return pedal.survives !== null && source.openCircuit <= pedal.survives;
}

function acceptsVolts({ accepts }: Pedal, volts: number): boolean {
  if (accepts.kind === 'range') return accepts.from <= volts && volts <= accepts.to;
  return accepts.millivolts.some((accepted) => accepted === volts);
}

/** The pedal's load at volts that it accepts, in microamps times the guess factor's denominator. */
function loadOf(pedal: Pedal, volts: number, policy: Policy): number {
  const { draw, figure } = pedal;
  const microamps = draw.kind === 'flat' ? draw.microamps : draw.microamps.get(volts as Millivolts);
  if (microamps === undefined) throw new RangeError(`${pedal.id} has no draw at ${volts} mV`);
  return exact(microamps * (figure === 'guess' ? policy.guess.numerator : policy.guess.denominator));
}

/** What pedals take together: running, and when all start at once. */
function taken(pedals: readonly Pedal[], volts: number, policy: Policy): Pick<Hookup, 'load' | 'surge'> {
  let [load, surge] = [0, 0];
  for (const pedal of pedals) {
    const own = loadOf(pedal, volts, policy);
    load = exact(load + own);
    surge = exact(surge + Math.max(own, exact((pedal.startup ?? 0) * policy.guess.denominator)));
  }
  return { load, surge };
}
