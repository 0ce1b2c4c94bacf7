import type { PerPedalTier } from '../domain/pedal-tier.js';
import type { JoinMode } from '../domain/supply.js';
import type { Load, TakenLoad } from './load.js';
import type { Exit, Route } from './routes.js';
import type { GroundMode } from './ground-mode.js';

/** A pedal class by its place in the list of classes. */
type ClassIndex = number;

/** An output by its kind: which bank, at which of the bank's settings. */
export type OutputSetting = { readonly bank: number; readonly setting: number };

/** One pedal by itself on one output, or on two joined ones; and the tiers in which it counts there. */
export type SoloUse = PerPedalTier<boolean> & {
  readonly pedal: ClassIndex;
  /** One output, or both of a join. */
  readonly outputs: readonly OutputSetting[];
  readonly join: { readonly mode: JoinMode; readonly lead: number } | null;
  readonly exit: Exit;
  readonly route: Route;
  /** What it adds to each of the supply's limits. */
  readonly weights: readonly bigint[];
};

/** One pedal class's place in a chain, and the tiers in which it counts there. */
export type ChainPlace = PerPedalTier<boolean> &
  TakenLoad & {
    readonly pedal: ClassIndex;
    readonly route: Route;
    readonly weights: readonly bigint[];
  };

/** All chains that are alike: on outputs of one bank at one setting, behind chain leads with the same exit. */
export type ChainPool = {
  readonly output: OutputSetting;
  readonly exit: Exit;
  /** Of each chain: for an isolated output its own ground domain, else the mode of the supply's common ground. */
  readonly mode: GroundMode;
  /** The output's rating in units of load. */
  readonly rating: Load;
  /** The kinds of chain leads that make this exit, each with its number of tails. */
  readonly leads: readonly { readonly kind: number; readonly tails: number }[];
  readonly places: readonly ChainPlace[];
};
