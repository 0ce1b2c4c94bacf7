import { perCountedTier, type PerCountedTier } from '../../domain/counted-tiers.js';
import type { Score } from '../../domain/plan.js';
import { at } from './codec.js';
import { count, money } from './values.js';

const aboutCounted: PerCountedTier<string> = {
  parts: 'Chain leads, join leads and adapters in use, owned or bought.',
  offPreferred: 'Powered pedals that get other volts than they prefer.',
};

/** What every score is printed with. */
export const measureKeys = {
  unpowered: count('Pedals without power.'),
  money: money('What is to be bought costs this.'),
  exposed: count('High-gain pedals that share a ground with a digital one.'),
  bricks: count('Supply units in use, owned or bought.'),
  ...perCountedTier((tier) => at(count(aboutCounted[tier]), (score: Score) => score[tier])),
};
