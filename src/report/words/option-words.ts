import type { Exposure, Purchase, Score } from '../../domain/plan.js';
import type { PartId, SupplyId } from '../../domain/quantities.js';
import type { Merit, Option, PlannedOption } from '../../planning/compare/comparison.js';
import { shoppingItems } from './purchases.js';
import type { Speech } from './speech.js';
import { capital, countText, listText, meterOf, percentOf, priceText } from './words.js';

/** A figure of each option. */
type OptionFigure = {
  readonly title: string;
  readonly width: number;
  readonly textOf: (option: PlannedOption) => string;
};

export const optionFigures: readonly OptionFigure[] = [
  { title: 'Exposed', width: 7, textOf: ({ score }) => String(score.exposed) },
  { title: 'Supplies', width: 8, textOf: ({ score }) => String(score.bricks) },
  { title: 'Leads', width: 5, textOf: ({ score }) => String(score.parts) },
  { title: 'Spare', width: 5, textOf: (option) => String(option.figures.spareOutputs) },
  { title: 'Fullest', width: 7, textOf: ({ figures }) => fullestText(figures) },
];

/** "None exposed to noise, 2 supplies and no extra leads in use, 3 outputs free, the fullest one in use at 88 %." */
export function figuresText({ score: { exposed, bricks, parts }, figures }: PlannedOption): string {
  const texts = [
    `${exposed === 0 ? 'None' : exposed} exposed to noise`,
    `${countText(bricks, 'supply', 'supplies')} and ${parts === 0 ? 'no extra leads' : countText(parts, 'extra lead')} in use`,
    `${figures.spareOutputs === 0 ? 'no output' : countText(figures.spareOutputs, 'output')} free`,
    ...(figures.tightest === null ? [] : [`the fullest one in use at ${fullestText(figures)}`]),
  ];
  return `${texts.join(', ')}.`;
}

/** A dash where no output has a limit. */
const fullestText = ({ tightest }: PlannedOption['figures']): string =>
  tightest === null ? '-' : `${percentOf(meterOf(tightest.numbers))} %`;

const figuresLegend =
  'Exposed: high-gain pedals that share a ground with a digital one. Supplies: in use, owned ones too; each on the mains ' +
  'takes a socket. Leads: chain leads, join leads and adapters in use. Spare: outputs that stay free. Fullest: the output nearest ' +
  'to its limit, reserve included.';

/** What a merit is called in front of a choice, and what its name leaves open; null where that is nothing. */
const meritWords: Readonly<
  Record<Exclude<Merit, 'between'>, { readonly name: string; readonly means: string | null }>
> = {
  aim: { name: 'best', means: null },
  quiet: { name: 'quietest', means: 'Quietest: the cheapest of those with the fewest exposed pedals.' },
  bricks: { name: 'fewest supplies', means: 'Fewest supplies: the cheapest of those.' },
  money: { name: 'cheapest', means: null },
  budget: { name: 'best within the budget', means: null },
};

/** What the titles of the figures, and the names of the choices, mean. */
export function legendText(options: readonly Option[]): string {
  const merits = new Set(options.flatMap((option) => (option.kind === 'plan' ? option.merits : [])));
  const meanings = [...merits].flatMap((merit) => (merit === 'between' ? [] : (meritWords[merit].means ?? [])));
  return [...meanings, figuresLegend].join(' ');
}

/** A line of a bill: "2 × Quay 6", and what that comes to. */
type BillLine = { readonly text: string; readonly price: string };

/** One purchase in words. */
export type OptionWords = {
  /** Its place among those that are listed, or a dash. */
  readonly mark: string;
  /** What it is best at, or that it was asked for. */
  readonly label: string;
  /** Every supply and lead that is bought; they add up to the price. */
  readonly bill: readonly BillLine[];
  /** "(asked for)", "(9.00 EUR over the budget)" and the like. */
  readonly notes: readonly string[];
  readonly price: string;
  /** In the order of `optionFigures`; null where there is no plan. */
  readonly figures: readonly string[] | null;
  /** Who may hum, and beside whom: "Tarn fuzz beside Estuary echo"; one a pedal. */
  readonly noise: readonly string[];
  readonly isBest: boolean;
};

export const optionWords = (speech: Speech, option: Option): OptionWords => ({
  mark: option.rank === null ? speech.marks.dash : String(option.rank),
  label: labelOf(option),
  bill: billOf(speech, option.supplies, option.kind === 'plan' ? option.wiring.buy.parts : []),
  notes: notesOn(speech, option),
  price: priceText(option.kind === 'plan' ? option.score.money : option.price, speech.board),
  figures: option.kind === 'plan' ? optionFigures.map(({ textOf }) => textOf(option)) : null,
  noise: option.kind === 'plan' ? option.wiring.exposures.map(noiseText(speech)) : [],
  isBest: option.kind === 'plan' && option.preference.kind === 'best',
});

const noiseText =
  ({ inventory }: Speech) =>
  ({ pedal, by }: Exposure): string =>
    `${inventory.pedalName(pedal)} beside ${listText(by.map(inventory.pedalName))}`;

function labelOf(option: Option): string {
  const merits = option.kind === 'plan' ? option.merits.map((merit) => meritName(merit, option.score)) : [];
  const asked = option.rank === null ? ['asked for'] : [];
  const names = [...asked, ...merits];
  return capital(names.length === 0 ? 'next best' : names.join(', '));
}

const meritName = (merit: Merit, { exposed, bricks }: Score): string =>
  merit === 'between'
    ? `cheapest with ${exposed === 0 ? 'none' : exposed} exposed, ${countText(bricks, 'supply', 'supplies')}`
    : meritWords[merit].name;

/** All that is bought, supplies first, each with its price. */
export function billOf(
  speech: Speech,
  supplies: readonly Purchase<SupplyId>[],
  parts: readonly Purchase<PartId>[],
): readonly BillLine[] {
  return shoppingItems(speech, { buy: { supplies, parts } }).map(({ units, text, together }) => ({
    text: `${units} ${speech.marks.times} ${text}`,
    price: together,
  }));
}

/** The number of one of the best, or what was asked for. */
export const optionName = (speech: Speech, { rank, supplies }: Option): string =>
  rank === null ? listText(purchaseTexts(speech, supplies)) : `Option ${rank}`;

/** "2 × Quay 6" for each supply. */
function purchaseTexts({ inventory, marks }: Speech, supplies: readonly Purchase<SupplyId>[]): readonly string[] {
  if (supplies.length === 0) return ['no supply'];
  return supplies.map(({ id, units }) => `${units} ${marks.times} ${inventory.supplyName(id)}`);
}

function notesOn(screen: Speech, option: Option): readonly string[] {
  const asked = option.asked && option.rank !== null ? ['(asked for)'] : [];
  if (option.kind === 'fails') return [...asked, option.reasons.length === 0 ? '(not known yet)' : '(fails)'];
  const idle = option.idle.length === 0 ? [] : [`(not needed: ${purchaseTexts(screen, option.idle).join(', ')})`];
  const over = option.overBudget === 0 ? [] : [`(${priceText(option.overBudget, screen.board)} over the budget)`];
  return [...asked, ...idle, ...over, ...(option.gap === null ? [] : ['(best found)'])];
}
