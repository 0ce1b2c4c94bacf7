import type { Kit } from '../../domain/kit.js';
import type { Comparison, TradeOff } from '../../planning/compare/comparison.js';
import { comparisonHead, nextText, tradeOffTitles, type ComparisonHead } from './comparison-words.js';
import { optionStandings, type OptionStanding } from './option-standings.js';
import { legendText, optionWords, type OptionWords } from './option-words.js';
import { impossibleLead, reasonPassages, type Passage } from './reasons.js';
import { speechOf, type Speech } from './speech.js';
import { tradeOffWords, type TradeOffWords } from './trade-off-words.js';

/** What every report of a comparison is made from. */
export type ComparisonInput = {
  readonly kit: Kit;
  readonly comparison: Comparison;
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
  readonly tradeOffs: readonly (TradeOffWords & { readonly title: string; readonly against: TradeOff['against'] })[];
  /** What comes before plugging; null without a plan. */
  readonly next: string | null;
  /** Why no purchase can power the board; null where one can. */
  readonly impossible: { readonly lead: string; readonly passages: readonly Passage[] } | null;
};

export function comparisonHandout({ kit, comparison }: ComparisonInput): ComparisonHandout {
  const speech = speechOf(kit);
  const { options, tradeOffs, reasons } = comparison;
  return {
    speech,
    comparison,
    head: comparisonHead(speech, comparison),
    options: options.map((option) => optionWords(speech, option)),
    legend: legendText(options),
    standings: optionStandings(speech, comparison),
    tradeOffs: tradeOffs.flatMap((tradeOff) => {
      const words = tradeOffWords(speech, tradeOff);
      return words === null ? [] : [{ ...words, title: tradeOffTitles[tradeOff.against], against: tradeOff.against }];
    }),
    next: nextText(speech, comparison),
    impossible:
      reasons.length === 0
        ? null
        : { lead: impossibleLead(speech, reasons), passages: reasonPassages(speech, reasons) },
  };
}
