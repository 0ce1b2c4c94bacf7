import type { JudgedPlan } from '../../domain/judged-plan.js';
import { at, record } from './codec.js';
import { inlets } from './inlets-codec.js';
import { buy, feeds } from './shared-codecs.js';
import { count, money, pedals } from './values.js';

/** A plan in short, as explanations show one. */
export const plan = record<JudgedPlan>()('A plan in short.', {
  money: at(money('What is to be bought costs this.'), ({ score }) => score.money),
  buy,
  bricks: at(count('Supply units in use.'), ({ score }) => score.bricks),
  exposed: at(count('Exposed pedals.'), ({ score }) => score.exposed),
  unpowered: pedals('The pedals without power.'),
  feeds: at(feeds, (from) => from),
  inlets: at(inlets, (from) => from),
});
