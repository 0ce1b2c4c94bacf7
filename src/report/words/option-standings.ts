import { minorUnits } from '../../domain/quantities.js';
import type { Comparison, Failure, FailedOption, PlannedOption } from '../../planning/compare/comparison.js';
import { billOf, optionName } from './option-words.js';
import { sentence, type Speech } from './speech.js';
import { capital, fullStop, listText, priceText } from './words.js';

/** What it would take for an option to be the best, or why it fails. */
export type OptionStanding = { readonly text: string; readonly tone: 'good' | 'plain' | 'caution' | 'bad' };

/** Only where a price cut of less than one part in so many would do it is it worth asking for. */
const worthAsking = 3;

/** What a cut of the price would do where it is worth asking for, what is as good as the best, and why others fail. */
export const optionStandings = (speech: Speech, { options }: Comparison): readonly OptionStanding[] =>
  options.flatMap((option) =>
    option.kind === 'plan' ? preferenceStanding(speech, option) : [failureStanding(speech, option)],
  );

function preferenceStanding(speech: Speech, option: PlannedOption): readonly OptionStanding[] {
  const { board } = speech;
  const { preference, score } = option;
  const name = optionName(speech, option);
  if (preference.kind === 'as good') return [{ text: `${name} is as good as the best.`, tone: 'good' }];
  if (preference.kind !== 'price' || preference.below * worthAsking >= score.money) return [];
  const [at, below] = [priceText(preference.at, board), priceText(preference.below, board)];
  return [
    { text: `${name} would be the best at ${at} or less for all of it: ${below} below its price.`, tone: 'plain' },
  ];
}

/** Why it fails, and what would do beside it. */
export function failureStanding(speech: Speech, option: FailedOption): OptionStanding {
  const name = optionName(speech, option);
  if (option.reasons.length === 0)
    return { text: `${name}: the search stopped before a plan was found.`, tone: 'caution' };
  const reasons = option.reasons
    .map((reason) => fullStop(failureText(speech, reason)))
    .map((text, at) => (at === 0 ? text : capital(text)));
  const text = [`${name} cannot power the board: ${reasons.join(' ')}`, ...besideTexts(speech, option)].join(' ');
  return { text, tone: 'bad' };
}

/** "Together with 1 × Shingle 9 it can: 68.50 EUR for all of it, 8.50 EUR over the budget." */
function besideTexts(speech: Speech, { beside }: FailedOption): readonly string[] {
  if (beside === null) return [];
  const { board } = speech;
  const bought = billOf(speech, beside.supplies, beside.parts).map(({ text }) => text);
  const over = beside.price - (board.policy.budget ?? Infinity);
  const costs = [
    `${priceText(beside.price, board)} for all of it`,
    ...(over > 0 ? [`${priceText(minorUnits(over), board)} over the budget`] : []),
  ];
  return [`Together with ${listText(bought)} it can: ${costs.join(', ')}.`];
}

function failureText(speech: Speech, reason: Failure): string {
  const { inventory } = speech;
  switch (reason.kind) {
    case 'pedal': {
      const [nearest] = reason.refusals;
      const name = inventory.pedalName(reason.pedal);
      if (nearest === undefined) return `nothing feeds ${name}`;
      return `nothing feeds ${name} (${nearest.rule}: ${sentence(speech, nearest.message)})`;
    }
    case 'together':
      return `${listText(reason.pedals.map(inventory.pedalName))}: ${sentence(speech, reason.message)}`;
    case 'limit':
    case 'stock':
    case 'request':
    case 'unowned':
      return sentence(speech, reason.message);
  }
}
