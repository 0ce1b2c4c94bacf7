import type { Pedal } from '../domain/pedal.js';
import type { PerPedalTier } from '../domain/pedal-tier.js';

type Judge = {
  readonly counts: (pedal: Pedal, millivolts: number) => boolean;
  readonly mayCount: (pedal: Pedal) => boolean;
};

/** Which pedals count in a tier at so many volts, and which can at all. */
export const judges: PerPedalTier<Judge> = {
  offPreferred: {
    counts: ({ prefers }, millivolts) => prefers !== null && prefers !== millivolts,
    mayCount: ({ prefers }) => prefers !== null,
  },
};
