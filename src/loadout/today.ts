import type { Board, WiredFeed } from '../domain/board.js';
import { unitOfInlet, type UnitRef } from '../domain/inlet.js';
import type { Millivolts, PedalId, SupplyId } from '../domain/quantities.js';
import type { Supply } from '../domain/supply.js';

/** Where a pedal is plugged today: a pedal that keeps all of this is not moved, whatever leads it gets. */
export type Berth = {
  readonly supply: SupplyId;
  readonly unit: number;
  /** One output, or the two of a join in rising order. */
  readonly outputs: readonly number[];
  /** What the pedal gets. */
  readonly millivolts: Millivolts;
};

/** How the board is plugged today, as far as a new plan is compared with it. */
export type Today = {
  readonly berths: ReadonlyMap<PedalId, Berth>;
  /** The pedals that are exposed as things are. */
  readonly exposed: ReadonlySet<PedalId>;
  /** Pedals that must stay where they are; inlets as well, by what stands for them, whose units are then in use. */
  readonly pinned: ReadonlySet<PedalId>;
};

/** Nothing is plugged in, or nobody asks what is. */
export const nothingToday: Today = { berths: new Map(), exposed: new Set(), pinned: new Set() };

export const berthsOf = (wiring: Board['wiring']): Today['berths'] =>
  new Map(wiring.map((feed: WiredFeed) => [feed.pedal, feed]));

/** The units whose inlets must stay where they are. */
export const unitsHeld = ({ pinned }: Pick<Today, 'pinned'>): readonly UnitRef[] =>
  [...pinned].flatMap((id) => unitOfInlet(id) ?? []);

/** Whether a unit by itself, as a group or a loadout has it, is that one. */
export const isUnit = ({ supply, unit }: UnitOf, one: UnitRef): boolean =>
  supply.id === one.supply && unit === one.unit;

type UnitOf = { readonly supply: Pick<Supply, 'id'>; readonly unit: number | null };

/** The units of a supply that something is plugged into today, or whose inlets must stay where they are. */
export const unitsInUse = (supply: Supply, today: Today): readonly number[] => [
  ...new Set(
    [...today.berths.values(), ...unitsHeld(today)].filter((one) => one.supply === supply.id).map(({ unit }) => unit),
  ),
];
