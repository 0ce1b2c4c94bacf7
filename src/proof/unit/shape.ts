import type { Policy } from '../../domain/board.js';
import type { Ground, Pedal } from '../../domain/pedal.js';
import { perPedalTier, type PerPedalTier } from '../../domain/pedal-tier.js';
import type { Bank } from '../../domain/supply.js';
import { judges } from '../pedal-tiers.js';
import type { StockLeadKind } from '../stock.js';
import type { AlikePedals } from './pedal-class.js';
import type { Routes } from './routes.js';
import type { ShapeTaken } from './totals.js';

/** What it takes to tell what a unit can carry, whatever the tags. */
export type ProofBench = {
  readonly policy: Policy;
  readonly classes: readonly AlikePedals[];
  readonly kinds: readonly StockLeadKind[];
  readonly routes: Routes;
};

/** An output in use: the bank's place in the supply and the setting's place in the bank. */
export type SeatShape = { readonly bank: number; readonly setting: number };

/** A pedal alone on an output or on two that are joined. */
export type PlaceShape = {
  /** The pedal's class. */
  readonly pedal: number;
  /** One, or the two of a join. */
  readonly seats: readonly SeatShape[];
  /** The number of the set of ways over adapters. */
  readonly route: number;
  /** The lead kind of the join; null for one output. */
  readonly join: number | null;
  /** In which tiers it counts. */
  readonly counts: PerPedalTier<boolean>;
  /** Whether it is plugged today and does not stay. */
  readonly moved: boolean;
  readonly burdens: readonly number[];
};

/** A pedal that can hang on a chain. */
export type LinkShape = ShapeTaken & {
  readonly pedal: number;
  readonly route: number;
  readonly counts: PerPedalTier<boolean>;
  readonly moved: boolean;
  readonly burdens: readonly number[];
};

/**
 * Chains on an output at one setting, whose tails offer one plug at one polarity, for pedals of one ground, that go on as one
 * and the same output of today or as none.
 */
export type ChainShape = {
  readonly seat: SeatShape;
  readonly ground: Ground;
  /** The most that the whole chain may take. */
  readonly most: ShapeTaken;
  /** The chain leads that serve. */
  readonly leads: readonly { readonly kind: number; readonly tails: number }[];
  readonly links: readonly LinkShape[];
  /** What the chain takes beside its pedals. */
  readonly burdens: readonly number[];
};

/** One unit of a supply, with everything that could hang on it. */
export type UnitShape = {
  readonly banks: readonly Bank[];
  /** What the totals allow, in the steps that burdens are counted in; then one for each output of today that is watched. */
  readonly caps: readonly number[];
  readonly places: readonly PlaceShape[];
  readonly chains: readonly ChainShape[];
};

/** A place or link before the burdens are brought to their steps, and before it is known who stays. */
export type Raw<Shape> = Omit<Shape, 'burdens' | 'moved'> & { readonly taken: readonly bigint[] };
/** At so many volts. */
export type RawPlace = Raw<PlaceShape> & { readonly volts: number };
export type RawChain = Omit<ChainShape, 'links' | 'burdens'> & {
  readonly volts: number;
  readonly links: readonly Raw<LinkShape>[];
};

export const countsOf = (pedal: Pedal, volts: number): PerPedalTier<boolean> =>
  perPedalTier((tier) => judges[tier].counts(pedal, volts));
