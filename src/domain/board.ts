import type { UnitRef } from './inlet.js';
import type { Currency } from './money.js';
import type { Part } from './part.js';
import type { Pedal } from './pedal.js';
import type { Factor, Millivolts, MinorUnits, PartId, PedalId, SupplyId } from './quantities.js';
import type { JoinMode, Supply } from './supply.js';

/** What is asked of a power bank. */
export type Runtime = {
  /** It must last so long; above 0. */
  readonly hours: Factor;
  /** The share of its watt-hours that arrives; above 0, at most 1. */
  readonly usable: Factor;
};

/** What is asked of batteries. */
export type BatteryTerms = {
  /** The hours that a set must last; above 0. */
  readonly change: Factor;
  /** The hours of playing whose sets are paid for; above 0. */
  readonly pay: Factor;
};

export type Policy = {
  /** Rated output over planned load; each factor is at least 1. */
  readonly headroom: { readonly alone: Factor; readonly chained: Factor; readonly supply: Factor };
  /** Multiplies a draw whose figure is a guess. */
  readonly guess: Factor;
  readonly chains: 'allow' | 'never';
  /** The money that one exposed pedal counts for. */
  readonly noisePrice: MinorUnits;
  /** The money that one supply in use fewer is worth. */
  readonly supplyPrice: MinorUnits;
  /** The volts of the mains at every venue, each once; none where they are not stated. */
  readonly mains: readonly Millivolts[];
  /** Null where power banks are not used. */
  readonly runtime: Runtime | null;
  /** Null where batteries are not used. */
  readonly batteries: BatteryTerms | null;
  /** Mains sockets at hand; null is no limit. */
  readonly sockets: number | null;
  /** The most that may be spent, without the noise price; null is no limit. */
  readonly budget: MinorUnits | null;
  /** The most supply units in use; null is no limit. */
  readonly bricks: number | null;
};

/** How one pedal is plugged today. */
export type WiredFeed = {
  readonly pedal: PedalId;
  readonly supply: SupplyId;
  readonly unit: number;
  /** One output, or the two that are joined. */
  readonly outputs: readonly number[];
  /** What the pedal gets: the sum of both outputs for a series join. */
  readonly millivolts: Millivolts;
  readonly join: { readonly mode: JoinMode; readonly part: PartId } | null;
  readonly chain: PartId | null;
  readonly adapters: readonly PartId[];
  /** The number of its lead for life, which all pedals of a chain share; absent where it has none yet. */
  readonly lead?: number;
  /** The letter of its tail of the chain lead, for life; there only with both. */
  readonly tail?: string;
  /** It is fed by the adapter that it came with; the file says neither output nor volts then. */
  readonly own?: true;
  /** It runs on this battery, as the file says in place of a supply. */
  readonly battery?: PartId;
};

/** How the inlet of a fed supply is plugged today; its id stands for a pedal's (`inletId`). */
export type WiredInlet = WiredFeed & { readonly inletOf: UnitRef };

export type Board = {
  readonly name: string;
  readonly currency: Currency;
  readonly policy: Policy;
  /** At least one; ids are unique. */
  readonly pedals: readonly Pedal[];
  /** Owned things that no catalogue lists: stock 0, price null. */
  readonly gear: { readonly supplies: readonly Supply[]; readonly parts: readonly Part[] };
  /** How many units of each supply and part are owned; every id is in the gear or the catalogue. */
  readonly owned: { readonly supplies: ReadonlyMap<SupplyId, number>; readonly parts: ReadonlyMap<PartId, number> };
  readonly wiring: readonly WiredFeed[];
  /** What fed supplies hang on today. */
  readonly inlets: readonly WiredInlet[];
  /** Whether the file says that nothing is plugged today, by a wiring without entries; absent where it says nothing of it. */
  readonly isUnplugged?: true;
};

/** All that is plugged today: pedals, then inlets. */
export const everyWired = ({ wiring, inlets }: Pick<Board, 'wiring' | 'inlets'>): readonly WiredFeed[] => [
  ...wiring,
  ...inlets,
];

export type Catalogue = {
  readonly name: string;
  /** The same as the board's. */
  readonly currency: Currency;
  readonly supplies: readonly Supply[];
  readonly parts: readonly Part[];
};
