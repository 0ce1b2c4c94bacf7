import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Pedal } from '../../domain/pedal.js';
import { feedMillivolts, leadsOf, type Feed } from '../../domain/plan.js';
import type { Millivolts } from '../../domain/quantities.js';
import type { Bank } from '../../domain/supply.js';
import { firstBankOf } from './inventory.js';
import type { Speech } from './speech.js';

/** What may do harm where a plug is taken for another one. Each has a shape and a word of its own, wherever it is shown. */
export type Hazard = keyof typeof hazardWords;

/** In the order in which they are told. */
export const hazardWords = {
  AC: 'AC',
  'over 9 V': 'over 9 V',
  'plus pin': 'plus on the pin',
  reverses: 'reverses',
  chain: 'chain',
  'positive ground': 'positive ground',
  'shared ground': 'shared ground',
  kept: 'kept place',
} as const;

/** What each means to a person with a plug in the hand. */
export const hazardMeanings: Readonly<Record<Hazard, string>> = {
  AC: 'alternating current, for pedals that ask for it alone',
  'over 9 V': 'more than the usual 9 V, which harms a pedal for 9 V',
  'plus pin': 'plus at the centre of the plug, where most pedals have minus',
  reverses: 'that lead swaps + and −; never use it elsewhere',
  chain: 'one lead for several pedals, which share its ground',
  'positive ground': 'never to share a ground with other pedals',
  'shared ground': 'tied to the ground of others: high gain may hum beside digital',
  kept: 'plug nothing in there yet',
};

const usualMillivolts = 9000;

/** All of them, in the order in which they are told. */
export const hazards = Object.keys(hazardWords) as readonly Hazard[];

const inOrder = (bites: Readonly<Record<Hazard, boolean>>): readonly Hazard[] =>
  hazards.filter((hazard) => bites[hazard]);

/** Those of a pedal's plug, of the way to it and of the pedal itself. */
export function feedHazards(
  { inventory }: Speech,
  { grounds }: Pick<JudgedPlan, 'grounds'>,
  feed: Feed,
): readonly Hazard[] {
  const pedal: Pedal = inventory.pedal(feed.pedal);
  const bank = firstBankOf(inventory.supply(feed.supply), feed);
  return inOrder({
    AC: bank.power === 'AC',
    'over 9 V': feedMillivolts(feed) > usualMillivolts,
    'plus pin': feed.polarity === 'centre-positive',
    reverses: leadsOf(feed).some((id) => inventory.part(id).reverses),
    chain: feed.chain !== null,
    'positive ground': pedal.ground === 'positive',
    'shared ground': grounds.some(({ pedals }) => pedals.length > 1 && pedals.includes(feed.pedal)),
    kept: pedal.kept !== null,
  });
}

/** Those of a lead with all that hangs on it; a kept place only where nothing else does. */
export function leadHazards(
  speech: Speech,
  wiring: Pick<JudgedPlan, 'grounds'>,
  feeds: readonly Feed[],
): readonly Hazard[] {
  const each = feeds.map((feed) => feedHazards(speech, wiring, feed));
  return hazards.filter((hazard) =>
    hazard === 'kept' ? each.every((all) => all.includes(hazard)) : each.some((all) => all.includes(hazard)),
  );
}

/** Those of an output, whatever hangs on it; `settings` are those that it may stand at. Shared grounds are told of all such outputs at once. */
export const outputHazards = (bank: Bank, settings: readonly Millivolts[]): readonly Hazard[] =>
  inOrder({
    AC: bank.power === 'AC',
    'over 9 V': settings.some((at) => at > usualMillivolts),
    'plus pin': bank.polarity === 'centre-positive',
    reverses: false,
    chain: false,
    'positive ground': false,
    'shared ground': false,
    kept: false,
  });
