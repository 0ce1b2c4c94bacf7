import type { Polarity, Power } from '../../domain/pedal.js';
import type { PartId, PedalId, SupplyId } from '../../domain/quantities.js';
import type { Hazard } from '../words/hazards.js';

/** One unit of a supply. */
export type UnitId = { readonly supply: SupplyId; readonly unit: number };
/** One output of a unit. */
export type OutputId = UnitId & { readonly output: number };

/** What is drawn, in words and marks, before anything has a place: supplies, pedals, and the leads between them. */
export type DrawnBoard = {
  /** In the order of hooking up; batteries are drawn at their pedals. */
  readonly strips: readonly DrawnStrip[];
  /** In the order of the board, those without power among them. */
  readonly pedals: readonly DrawnPedal[];
  readonly leads: readonly DrawnLead[];
};

export type DrawnStrip = {
  readonly id: UnitId;
  readonly name: string;
  /** Whose it is and what it stands on. */
  readonly notes: readonly string[];
  /** Limits over several outputs. */
  readonly totals: readonly DrawnLoad[];
  /** All outputs in their true order, in stretches of one kind of ground. */
  readonly runs: readonly DrawnRun[];
};

export type DrawnRun = { readonly isIsolated: boolean; readonly outputs: readonly DrawnOutput[] };

/** How full something is: "216 of 400 mA", and in whole percent. */
export type DrawnLoad = { readonly text: string; readonly percent: number };

export type DrawnOutput = {
  readonly id: OutputId;
  readonly state: 'used' | 'kept' | 'free';
  /** "9 V"; of a free one all that it could give. */
  readonly gives: string;
  /** Null of what a pedal came with. */
  readonly power: Power | null;
  /** How its polarity switch must stand, and what it is joined with. */
  readonly notes: readonly string[];
  /** Null for a free one, and where nothing is compared. */
  readonly load: DrawnLoad | null;
  /** "410 mA at switch-on", where that is more than the load; else null. */
  readonly peak: string | null;
  readonly hazards: readonly Hazard[];
  /** The chain lead on it; null for none. */
  readonly chain: DrawnPart | null;
};

/** A lead between the straight one of the supply and a pedal; or what makes the set of batteries in a pedal. */
export type DrawnPart = {
  readonly id: PartId;
  readonly isBattery: boolean;
  readonly name: string;
  readonly notes: readonly string[];
  readonly hazards: readonly Hazard[];
};

export type DrawnPedal = {
  readonly id: PedalId;
  readonly name: string;
  readonly state: 'plugged' | 'kept' | 'off';
  /** What it gets: "9 V"; null without power. */
  readonly volts: string | null;
  /** Null where it is fed by what it came with. */
  readonly power: Power | null;
  /** What it draws there: "180 mA"; null where that is not stated. */
  readonly draw: string | null;
  /** What its plug has; null for AC, where its label decides, and without power. */
  readonly polarity: Polarity | null;
  readonly traits: readonly string[];
  /** To the noise of a digital one. */
  readonly isExposed: boolean;
  /** Those of its plug, its leads, its place and itself. */
  readonly hazards: readonly Hazard[];
  /** The join lead and the adapters before it, from the supply's side; or the batteries in it. */
  readonly parts: readonly DrawnPart[];
};

/** Everything between one output, or two joined ones, and its pedals. */
export type DrawnLead = {
  /** For life. */
  readonly number: number;
  readonly outputs: readonly OutputId[];
  /** Each with what is written on that end. */
  readonly ends: readonly { readonly pedal: PedalId; readonly mark: string }[];
  /** Whether it is only planned: nothing is plugged into it yet. */
  readonly isKept: boolean;
};

/** Whether it runs on batteries, and no lead comes to it. */
export const isOnBattery = ({ parts }: DrawnPedal): boolean => parts.some(({ isBattery }) => isBattery);

/** All outputs of a strip, in order. */
export const outputsOfStrip = ({ runs }: DrawnStrip): readonly DrawnOutput[] => runs.flatMap(({ outputs }) => outputs);

export const isSameUnit = (one: UnitId, other: UnitId): boolean =>
  one.supply === other.supply && one.unit === other.unit;
