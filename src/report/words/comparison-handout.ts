import type { Kit } from '../../domain/kit.js';
import type { Comparison } from '../../planning/compare/comparison.js';
import { comparisonHead, type ComparisonHead } from './comparison-words.js';
import { optionStandings, type OptionStanding } from './option-standings.js';
import { legendText, optionWords, type OptionWords } from './option-words.js';
import { impossibleLead, reasonPassages, type Passage } from './reasons.js';
import type { Occasion } from './handout.js';
import { speechOf, type Speech } from './speech.js';
import { unbeatenWords, type UnbeatenWords } from './unbeaten-words.js';

/** What every report of a comparison is made from. */
export type ComparisonInput = {
  readonly kit: Kit;
  readonly comparison: Comparison;
  /** For whom and when a sheet is made; nothing is said of it where this is left out. */
  readonly occasion?: Occasion;
};

/** A comparison in words; every report of it is made from it. */
export type ComparisonHandout = {
  readonly speech: Speech;
  readonly comparison: Comparison;
  readonly head: ComparisonHead;
  readonly options: readonly OptionWords[];
  /** What the figures of the options mean. */
  readonly legend: string;
  readonly standings: readonly OptionStanding[];
  /** What else nothing beats; null where that is nothing. */
  readonly unbeaten: UnbeatenWords | null;
  /** Why no purchase can power the board; null where one can. */
  readonly impossible: { readonly lead: string; readonly passages: readonly Passage[] } | null;
};

export const comparisonHandout = ({ kit, comparison }: ComparisonInput): ComparisonHandout =>
  comparisonWords(speechOf(kit), comparison);

/** The same with the signs of this speech. */
export function comparisonWords(speech: Speech, comparison: Comparison): ComparisonHandout {
  const { options, reasons } = comparison;
  return {
    speech,
    comparison,
    head: comparisonHead(speech, comparison),
    options: options.map((option) => optionWords(speech, option)),
    legend: legendText(options),
    standings: optionStandings(speech, comparison),
    unbeaten: unbeatenWords(speech, comparison),
    impossible:
      reasons.length === 0
        ? null
        : { lead: impossibleLead(speech, reasons), passages: reasonPassages(speech, reasons) },
  };
}
