import type { PerPedalTier } from '../domain/pedal-tier.js';

/**
 * The dual prices as one unit sees them: what pedals are worth and what leads cost while it is being filled, integers in one
 * unit of value. Under a pedal tier's
 * name stands what a pedal costs that counts in it; not negative.
 */
export type LoadoutDuals = PerPedalTier<number> & {
  /** By pedal class; may be negative. */
  readonly pedals: Float64Array;
  /** By lead kind, for every use; may be negative. */
  readonly leads: Float64Array;
  /** What is gained on top where a pedal of a class takes a lead of a kind, by class, then by kind; nothing when left out. */
  readonly taking?: ReadonlyMap<number, Float64Array> | undefined;
  /** What an exposed pedal costs; not negative. */
  readonly exposed: number;
  /** What one costs on top that is not exposed today; not negative. */
  readonly newlyExposed: number;
  /** What a pedal costs that is plugged in today and does not stay; not negative. */
  readonly moved: number;
};
