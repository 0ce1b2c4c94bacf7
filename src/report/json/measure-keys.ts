import { perPedalTier, type PerPedalTier } from '../../domain/pedal-tier.js';
import type { Score } from '../../domain/plan.js';
import { at } from './codec.js';
import { count, money } from './values.js';

const aboutPedalTiers: PerPedalTier<string> = {
  offPreferred: 'Powered pedals that get other volts than they prefer.',
};

/** What every score is printed with. */
export const measureKeys = {
  unpowered: count('Pedals without power.'),
  money: money('What is to be bought costs this.'),
  exposed: count('High-gain pedals that share a ground with a digital one.'),
  bricks: count('Supply units in use, owned or bought.'),
  parts: count('Chain leads, join leads and adapters in use, owned or bought.'),
  ...perPedalTier((tier) => at(count(aboutPedalTiers[tier]), (score: Score) => score[tier])),
};
