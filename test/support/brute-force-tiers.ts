import { perLeadTier, type PerLeadTier } from '../../src/domain/counted-tiers.js';
import type { Part } from '../../src/domain/part.js';
import type { Pedal } from '../../src/domain/pedal.js';
import { perPedalTier, type PerPedalTier } from '../../src/domain/pedal-tier.js';
import type { Hookup } from './brute-force-hookups.js';

const counts: PerPedalTier<(pedal: Pedal, volts: number) => boolean> = {
  offPreferred: ({ prefers }, volts) => prefers !== null && prefers !== volts,
};

/** How many of the pedals that are plugged count in each tier. */
export const countedOf = (hookups: readonly Pick<Hookup, 'pedals' | 'volts'>[]): PerPedalTier<number> =>
  perPedalTier((tier) =>
    hookups.reduce((sum, { pedals, volts }) => sum + pedals.filter((pedal) => counts[tier](pedal, volts)).length, 0),
  );

const leads: PerLeadTier<(role: Part['role']) => boolean> = {
  parts: ({ kind }) => kind !== 'battery',
};

/** How many of the pieces in use count in each tier of leads. */
export const leadsCounted = (pieces: readonly Pick<Part, 'role'>[]): PerLeadTier<number> =>
  perLeadTier((tier) => pieces.filter(({ role }) => leads[tier](role)).length);
