import type { Program } from '../../../solver/program.js';
import type { PerCountedTier } from '../../../src/domain/counted-tiers.js';
import type { GroundMode } from '../../../src/loadout/ground-mode.js';
import type { SupplyUses } from '../../../src/loadout/supply-uses.js';
import type { ChainPlace, ChainPool, SoloUse } from '../../../src/loadout/uses.js';
import type { Sum } from './program-builder.js';

/** Chains of one pool that share their rows: one chain told apart, or all the rest. */
export type ChainColumns = {
  readonly key: string;
  readonly pool: ChainPool;
  /** One chain with exact rows, or the pooled rest. */
  readonly single: boolean;
  /** How many chains, by the kind of chain lead. */
  readonly leads: readonly { readonly kind: number; readonly tails: number; readonly column: number }[];
  readonly places: readonly { readonly place: ChainPlace; readonly column: number }[];
};

/** Units of one supply that share their rows: one unit told apart, or all the rest. */
export type Block = {
  readonly uses: SupplyUses;
  readonly index: number;
  /** The most units that it stands for. */
  readonly units: number;
  /** How many units, by the mode of their common ground (null for supplies without one). */
  readonly counts: readonly { readonly mode: GroundMode | null; readonly column: number }[];
  /** `mode` is the common ground's where the use hangs on it, else null. */
  readonly solos: readonly { readonly use: SoloUse; readonly mode: GroundMode | null; readonly column: number }[];
  readonly chains: readonly ChainColumns[];
  /** How many pedals of a class stay where they are plugged today; empty for a block that is no such unit. */
  readonly kept: readonly { readonly pedal: number; readonly column: number }[];
};

/** An integer program and what its columns mean. */
export type Model = {
  readonly program: Program;
  readonly blocks: readonly Block[];
  /** What each thing that aims rank adds up to. */
  readonly measures: PerCountedTier<Sum> & {
    readonly unpowered: Sum;
    readonly money: Sum;
    readonly exposed: Sum;
    readonly bricks: Sum;
    readonly sockets: Sum;
    /** Of those exposed: pedals that are not exposed today. */
    readonly newlyExposed: Sum;
    readonly moved: Sum;
  };
};
