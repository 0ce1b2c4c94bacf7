import { perPedalTier, type PerPedalTier } from '../../domain/pedal-tier.js';
import type { Score } from '../../domain/plan.js';
import { at } from './codec.js';
import { count, money } from './values.js';

const aboutPedalTiers: PerPedalTier<string> = {
  offPreferred: 'Powered pedals that get other volts than they prefer.',
};

/** What every score is printed with. */
export const measureKeys = {
  unpowered: at(count('Pedals without power.'), ({ unpowered }: Score) => unpowered),
  money: at(money('What is to be bought costs this.'), (score: Score) => score.money),
  exposed: at(count('High-gain pedals that share a ground with a digital one.'), ({ exposed }: Score) => exposed),
  bricks: at(count('Supply units in use, owned or bought.'), ({ bricks }: Score) => bricks),
  parts: at(count('Chain leads, join leads and adapters in use, owned or bought.'), ({ parts }: Score) => parts),
  ...perPedalTier((tier) => at(count(aboutPedalTiers[tier]), (score: Score) => score[tier])),
};
