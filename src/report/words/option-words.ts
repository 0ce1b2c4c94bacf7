import type { Purchase } from '../../domain/plan.js';
import type { SupplyId } from '../../domain/quantities.js';
import type { Option, PlannedOption } from '../../planning/compare/comparison.js';
import type { Speech } from './speech.js';
import { listText, meterOf, percentOf, priceText } from './words.js';

/** A figure of each option. */
export type OptionFigure = {
  readonly title: string;
  readonly width: number;
  readonly textOf: (option: PlannedOption) => string;
};

export const optionFigures: readonly OptionFigure[] = [
  { title: 'Exposed', width: 7, textOf: ({ score, unbeaten }) => marked(score.exposed, unbeaten.exposed) },
  { title: 'Supplies', width: 8, textOf: ({ score, unbeaten }) => marked(score.bricks, unbeaten.bricks) },
  { title: 'Leads', width: 5, textOf: ({ score }) => String(score.parts) },
  { title: 'Spare', width: 5, textOf: (option) => String(option.figures.spareOutputs) },
  { title: 'Fullest', width: 7, textOf: (option) => `${percentOf(meterOf(option.figures.tightest.numbers))} %` },
];

/** The mark stands in front, where it moves no digit. */
const marked = (amount: number, unbeaten: boolean | null): string => `${unbeaten === true ? '*' : ''}${amount}`;

const plainLegend =
  'Exposed: high-gain pedals that share a ground with a digital one. Supplies: in use, owned ones too; each takes a mains ' +
  'socket. Leads: chain leads, join leads and adapters in use. Spare: outputs that stay free. Fullest: the output nearest ' +
  'to its limit, reserve included.';

const markLegend = ' *: nothing that could be bought has less of it for the same money, or as little for less.';

const isMarked = (option: Option): boolean =>
  option.kind === 'plan' && (option.unbeaten.exposed === true || option.unbeaten.bricks === true);

/** What the titles of the figures, and the mark where there is one, mean. */
export const legendText = (options: readonly Option[]): string =>
  options.some(isMarked) ? `${plainLegend}${markLegend}` : plainLegend;

/** One purchase in words. */
export type OptionWords = {
  /** Its place among the best, or a dash. */
  readonly mark: string;
  /** "2 × Quay 6" for each supply. */
  readonly purchase: readonly string[];
  /** "(asked for)" and the like. */
  readonly notes: readonly string[];
  readonly price: string;
  /** In the order of `optionFigures`; null where there is no plan. */
  readonly figures: readonly string[] | null;
  readonly isBest: boolean;
};

export const optionWords = (speech: Speech, option: Option): OptionWords => ({
  mark: option.rank === null ? speech.marks.dash : String(option.rank),
  purchase: purchaseTexts(speech, option.supplies),
  notes: notesOn(speech, option),
  price: priceText(option.kind === 'plan' ? option.score.money : option.price, speech.board),
  figures: option.kind === 'plan' ? optionFigures.map(({ textOf }) => textOf(option)) : null,
  isBest: option.kind === 'plan' && option.preference.kind === 'best',
});

/** The number of one of the best, or what was asked for. */
export const optionName = (speech: Speech, { rank, supplies }: Option): string =>
  rank === null ? listText(purchaseTexts(speech, supplies)) : `Option ${rank}`;

/** "2 × Quay 6" for each supply. */
export function purchaseTexts(
  { inventory, marks }: Speech,
  supplies: readonly Purchase<SupplyId>[],
): readonly string[] {
  if (supplies.length === 0) return ['no supply'];
  return supplies.map(({ id, units }) => `${units} ${marks.times} ${inventory.supplyName(id)}`);
}

function notesOn(screen: Speech, option: Option): readonly string[] {
  const asked = option.asked ? ['(asked for)'] : [];
  if (option.kind === 'fails') return [...asked, option.reasons.length === 0 ? '(not known yet)' : '(fails)'];
  const idle = option.idle.length === 0 ? [] : [`(not needed: ${purchaseTexts(screen, option.idle).join(', ')})`];
  const over = option.overBudget === 0 ? [] : [`(${priceText(option.overBudget, screen.board)} over the budget)`];
  return [...asked, ...idle, ...over, ...(option.gap === null ? [] : ['(best found)'])];
}
