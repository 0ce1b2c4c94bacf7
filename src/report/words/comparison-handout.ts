import type { Kit } from '../../domain/kit.js';
import type { Comparison } from '../../planning/compare/comparison.js';
import { comparisonHead, nextAtHome, type ComparisonHead } from './comparison-words.js';
import { optionStandings, type OptionStanding } from './option-standings.js';
import { legendText, optionName, optionWords, type OptionWords } from './option-words.js';
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
  /** Who may hum, an option after the other; null where nobody does. */
  readonly noise: NoiseWords | null;
  /** What else nothing beats; null where that is nothing. */
  readonly unbeaten: UnbeatenWords | null;
  /** What comes before plugging; null without a plan. */
  readonly next: string | null;
  /** Why no purchase can power the board; null where one can. */
  readonly impossible: { readonly lead: string; readonly passages: readonly Passage[] } | null;
};

export function comparisonHandout({ kit, comparison }: ComparisonInput): ComparisonHandout {
  const speech = speechOf(kit);
  const { options, reasons } = comparison;
  return {
    speech,
    comparison,
    head: comparisonHead(speech, comparison),
    options: options.map((option) => optionWords(speech, option)),
    legend: legendText(options),
    standings: optionStandings(speech, comparison),
    noise: noiseWords(speech, comparison),
    unbeaten: unbeatenWords(speech, comparison),
    next: nextAtHome(speech, comparison),
    impossible:
      reasons.length === 0
        ? null
        : { lead: impossibleLead(speech, reasons), passages: reasonPassages(speech, reasons) },
  };
}

/** Who may hum: what that means, and a line an option. */
export type NoiseWords = { readonly lead: string; readonly lines: readonly string[] };

export function noiseWords(speech: Speech, { options }: Comparison): NoiseWords | null {
  const lines = options.flatMap((option) => {
    const { noise } = optionWords(speech, option);
    return noise.length === 0 ? [] : [`${optionName(speech, option)}: ${noise.join('; ')}.`];
  });
  if (lines.length === 0) return null;
  return { lead: 'High gain on one ground with digital will probably whine or hum.', lines };
}
