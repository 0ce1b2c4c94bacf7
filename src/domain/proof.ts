/**
 * A proof that no plan is better, as the file format `boardfeed/proof/2` keeps it: price tags and a tree of cases. Whoever
 * writes one and whoever checks one share nothing but these types.
 */
import type { Aim, Tier } from './aim.js';
import type { MinorUnits, PartId, PedalId, SupplyId } from './quantities.js';

export const proofFormat = 'boardfeed/proof/2';

/** One entry of the aim, counted in whole `unit`s (1 except for money and cost, in minor units), each worth `weight`. */
export type ProofTier = { readonly tier: Tier; readonly unit: number; readonly weight: number };

/** What an inlet that is fed is worth, and what a unit in use costs that has such an inlet; each at least 0. */
type ProofInletTag = { readonly supplies: readonly SupplyId[]; readonly fed: number; readonly paid: number };

/**
 * Integers in `scale`-ths of the step's number; any that keep to their signs are sound. What is left out is 0.
 */
export type ProofTags = {
  /** What each pedal that is fed is worth, of any sign. */
  readonly pedals: Readonly<Record<PedalId, number>>;
  /** What one piece of each kind of lead costs, at least 0; the parts of a kind serve alike. */
  readonly leads?: readonly { readonly parts: readonly PartId[]; readonly tag: number }[];
  /** Of the inlets of fed supplies, those that are alike together. */
  readonly inlets?: readonly ProofInletTag[];
  /** At most 0: of the limit on supplies in use, per brick. */
  readonly bricks?: number;
  /** At most 0: of the limit on mains sockets, per socket taken. */
  readonly sockets?: number;
  /** At most 0: of the budget, per minor unit. */
  readonly budget?: number;
  /** At most 0: of what each earlier step has proven, per 1 of its number. */
  readonly earlier?: readonly number[];
  /** Of each condition on the way from the root: at most 0 for "at most", at least 0 for "at least". */
  readonly conditions?: readonly number[];
};

/** Whether what is counted belongs to the owned units of a supply or to the bought ones. */
export type ProofSource = 'owned' | 'bought';

/**
 * Which number of a plan a case distinction goes by. A supply of null means the units of all supplies, or of those of a set;
 * a source of null owned and bought ones.
 */
export type ProofCount = {
  readonly count: 'units' | 'pedals' | 'inlets' | 'leads';
  readonly supply: SupplyId | null;
  /** The supplies of a set; absent for those of all, and where one is named. */
  readonly among?: readonly SupplyId[];
  readonly source: ProofSource | null;
  /** The number of a unit that something is plugged into today, where plans are compared with that; absent for all others. */
  readonly unit?: number;
  /** The number of a unit that is told apart; absent for the others of the group, and where none is. */
  readonly slot?: number;
  /** The pedals, the supplies whose inlets, or the parts that serve as leads, that are counted; absent for units. */
  readonly of?: readonly (PedalId | SupplyId | PartId)[];
};

/** Either at most `most`, or more. */
export type ProofBranch = ProofCount & {
  readonly most: number;
  /**
   * Numbers of further units that are told apart, about which nothing else is decided than about that one: as units can be numbered
   * at will, where it has none of what is counted, none of these has any either. Absent where there are no such units.
   */
  readonly likewise?: readonly number[];
  readonly fewer: ProofNode;
  readonly more: ProofNode;
};

/** A case: closed by its tags, or split in two. */
export type ProofNode = { readonly tags?: ProofTags; readonly branch?: ProofBranch };

/** So many units of a group are told apart, each by a number from 1; a plan may number its units as it likes. */
export type ProofApart = { readonly supply: SupplyId; readonly source: ProofSource; readonly units: number };

/** No plan that keeps what the earlier steps have proven has a smaller number than `value`. */
export type ProofStep = {
  readonly tiers: readonly ProofTier[];
  readonly value: number;
  /** At least 1. */
  readonly scale: number;
  /** Groups of which units are told apart: each of these is a group of its own, with at most one unit. */
  readonly apart?: readonly ProofApart[];
  readonly tree: ProofNode;
};

/** What plans must keep to beside what the board says. */
export type ProofWishes = {
  /** The pedals that stay where they are plugged today. */
  readonly keep?: readonly PedalId[];
  /** Nothing is bought. */
  readonly buy?: 'never';
  /** The most that is spent, in minor units, in place of the board's own budget. */
  readonly budget?: MinorUnits;
};

export type Proof = {
  readonly format: typeof proofFormat;
  /** The board's name. */
  readonly board: string;
  readonly aim: Aim;
  /** Whether it speaks of plans that may leave pedals without power, too. */
  readonly partial: boolean;
  /** It proves that no plan powers every pedal: each leaves at least `value` of the only step without power. */
  readonly impossible?: boolean;
  /** Of the aim `moves`: it speaks of plans alone that keep to these wishes. */
  readonly wishes?: ProofWishes;
  readonly steps: readonly ProofStep[];
};
