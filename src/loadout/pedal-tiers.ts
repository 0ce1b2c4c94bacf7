import type { Pedal } from '../domain/pedal.js';
import { perPedalTier, type PerPedalTier } from '../domain/pedal-tier.js';
import type { Millivolts } from '../domain/quantities.js';

type Judge = {
  readonly counts: (pedal: Pedal, millivolts: Millivolts) => boolean;
  /** Whether it can at all: what plans can come to at the most follows. */
  readonly mayCount: (pedal: Pedal) => boolean;
};

/** Which pedals count in a tier, by the volts that reach them. */
export const pedalTierJudges: PerPedalTier<Judge> = {
  offPreferred: {
    counts: ({ prefers }, millivolts) => prefers !== null && prefers !== millivolts,
    mayCount: ({ prefers }) => prefers !== null,
  },
};

/** In which tiers a pedal counts that gets so many volts. */
export const tiersCounting = (pedal: Pedal, millivolts: Millivolts): PerPedalTier<boolean> =>
  perPedalTier((tier) => pedalTierJudges[tier].counts(pedal, millivolts));
