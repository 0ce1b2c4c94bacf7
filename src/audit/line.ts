import type { Policy } from '../domain/board.js';
import type { Part } from '../domain/part.js';
import type { Pedal } from '../domain/pedal.js';
import type { Feed } from '../domain/plan.js';
import type { Millivolts, PartId, SupplyId } from '../domain/quantities.js';
import type { Bank, JoinMode, Setting, Supply } from '../domain/supply.js';
import type { Ratio } from './exact.js';
import { outputPlace } from './words.js';

/** One output that a feed draws from. */
export type Tap = {
  readonly output: number;
  readonly bank: Bank;
  readonly millivolts: Millivolts;
  /** Null when the bank has no setting of these volts. */
  readonly setting: Setting | null;
};

/** A feed whose pedal, supply and outputs exist. */
export type Line = {
  readonly feed: Feed;
  readonly pedal: Pedal;
  readonly supply: Supply;
  readonly taps: readonly [Tap, ...Tap[]];
  /** What reaches the pedal. */
  readonly millivolts: Millivolts;
  /** Microamps: the draw at these volts, times the guess factor where the figure is a guess. */
  readonly load: Ratio;
};

/** Everything that hangs on the same output, or on the same two outputs. */
export type OutletInUse = { readonly lines: readonly [Line, ...Line[]] };

/** One unit of a supply that feeds something. */
export type UnitInUse = { readonly supply: Supply; readonly unit: number; readonly lines: readonly [Line, ...Line[]] };

/** All lines on one ground. */
export type Domain = readonly Line[];

/** In the order of the files. */
export type Supplies = ReadonlyMap<SupplyId, Supply>;
export type Parts = ReadonlyMap<PartId, Part>;

/** All that the rules look at. */
export type Layout = {
  readonly policy: Policy;
  readonly supplies: Supplies;
  readonly parts: Parts;
  /** In the order of the board's pedals. */
  readonly lines: readonly Line[];
  readonly outlets: readonly OutletInUse[];
  readonly units: readonly UnitInUse[];
  readonly domains: readonly Domain[];
};

export const joinOf = (line: Line): JoinMode | null => line.feed.join?.mode ?? null;

export const pedalsOf = (lines: readonly Line[]): readonly Pedal[] => lines.map((line) => line.pedal);

/** "output 3 of Quay 6 (unit 1)". */
export const placeOf = (line: Line): string =>
  outputPlace(
    line.supply,
    line.feed.unit,
    line.taps.map((tap) => tap.output),
  );

/** The lines of one unit by the outputs that they draw from; a line on two outputs stands under both. */
export function linesByOutput(unit: UnitInUse): ReadonlyMap<number, readonly Line[]> {
  const outputs = new Set(unit.lines.flatMap((line) => line.taps.map((tap) => tap.output)));
  return new Map([...outputs].map((output) => [output, unit.lines.filter((line) => drawsFrom(line, output))]));
}

const drawsFrom = (line: Line, output: number): boolean => line.taps.some((tap) => tap.output === output);
