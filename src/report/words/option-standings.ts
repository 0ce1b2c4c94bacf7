import { minorUnits } from '../../domain/quantities.js';
import type { Comparison, Failure, FailedOption, Preference } from '../../planning/compare/comparison.js';
import { optionName } from './option-words.js';
import { sentence, type Speech } from './speech.js';
import { tierWords } from './tier-words.js';
import { capital, fullStop, listText, priceText } from './words.js';

/** What it would take for an option to be the best, or why it fails. */
export type OptionStanding = { readonly text: string; readonly tone: 'good' | 'plain' | 'caution' | 'bad' };

/** One an option, but for the best and for those of which it is not known. */
export const optionStandings = (speech: Speech, { options }: Comparison): readonly OptionStanding[] =>
  options.flatMap((option) =>
    option.kind === 'plan'
      ? preferenceStanding(speech, optionName(speech, option), option.preference)
      : [failureStanding(speech, option)],
  );

function preferenceStanding(speech: Speech, name: string, preference: Preference): readonly OptionStanding[] {
  const { board } = speech;
  switch (preference.kind) {
    case 'best':
    case 'unknown':
      return [];
    case 'as good':
      return [{ text: `${name} is as good as the best.`, tone: 'good' }];
    case 'price': {
      const [at, below] = [priceText(preference.at, board), priceText(preference.below, board)];
      return [
        { text: `${name} would be the best at ${at} or less for all of it: ${below} below its price.`, tone: 'plain' },
      ];
    }
    case 'never': {
      const behind = behindText(speech, preference);
      return [{ text: `${name} would not be the best even for nothing: ${behind}.`, tone: 'plain' }];
    }
  }
}

function behindText({ board }: Speech, { tier, behind }: Extract<Preference, { kind: 'never' }>): string {
  const { counted } = tierWords[tier];
  if (counted === null) {
    const alone = board.policy.supplyPrice === 0 ? 'leads and noise' : 'leads, noise and supplies in use';
    return `${alone} alone put it ${priceText(minorUnits(behind), board)} behind`;
  }
  return `it is behind by ${counted.so(behind)}`;
}

function failureStanding(speech: Speech, option: FailedOption): OptionStanding {
  const name = optionName(speech, option);
  if (option.reasons.length === 0)
    return { text: `${name}: the search stopped before a plan was found.`, tone: 'caution' };
  const reasons = option.reasons
    .map((reason) => fullStop(failureText(speech, reason)))
    .map((text, at) => (at === 0 ? text : capital(text)));
  return { text: `${name} cannot power the board: ${reasons.join(' ')}`, tone: 'bad' };
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
      return sentence(speech, reason.message);
  }
}
