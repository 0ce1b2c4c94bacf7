import type { Polarity, Power } from './pedal.js';
import type { Microamps, Millivolts, Milliwatts, MinorUnits, SupplyId } from './quantities.js';
import type { Source } from './source.js';

/** Two outputs joined: in series the volts add, in parallel the milliamps add. */
export type JoinMode = 'series' | 'parallel';

export type Setting = {
  readonly millivolts: Millivolts;
  /** The most an output gives at this setting. */
  readonly rating: Microamps;
  /** The volts without a load; null for a regulated output, which holds its volts. */
  readonly openCircuit: Millivolts | null;
};

/** The most that a bank or a whole supply gives over all its outputs. */
export type Total =
  | { readonly kind: 'current'; readonly microamps: Microamps }
  | { readonly kind: 'power'; readonly milliwatts: Milliwatts };

/** Outputs of one supply that are alike and share a switch, a limit or a ground. */
export type Bank = {
  /** The number of its first output; the outputs of a supply are numbered 1, 2, 3 … through the banks in order. */
  readonly firstOutput: number;
  readonly outputs: number;
  /** Each output's ground is its own; otherwise all such outputs of the supply share one common ground. */
  readonly isolated: boolean;
  readonly power: Power;
  /** What the straight lead that comes with the supply offers a pedal. */
  readonly plug: string;
  /** `either`: every output has a polarity switch of its own. Null for AC. */
  readonly polarity: Polarity | 'either' | null;
  /** How the settings are chosen: `each` output by itself or all `together`. A bank with one setting is `each`. */
  readonly switching: 'each' | 'together';
  readonly settings: readonly Setting[];
  /** The joins that its maker allows. */
  readonly joins: readonly JoinMode[];
  readonly total: Total | null;
};

/** The fields that were left out of a supply and taken from the catalogue's `assume` block. */
export type AssumedOfSupply = {
  readonly power?: Power;
  readonly plug?: string;
  readonly polarity?: Polarity | 'either';
  readonly regulated?: boolean;
};

export type Supply = {
  readonly id: SupplyId;
  readonly name: string;
  /** The price of one unit; null for gear that is not for sale. */
  readonly price: MinorUnits | null;
  /** How many units can be bought; null is no limit. Gear has 0. */
  readonly stock: number | null;
  /** What it stands on. */
  readonly source: Source;
  readonly total: Total | null;
  readonly banks: readonly Bank[];
  readonly assumed: AssumedOfSupply;
};
