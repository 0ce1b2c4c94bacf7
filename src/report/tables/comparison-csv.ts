import { moneyText, type Currency } from '../../domain/money.js';
import type { Option, PlannedOption } from '../../planning/compare/comparison.js';
import type { ComparisonHandout } from '../words/comparison-handout.js';
import { csvText, type CsvCell } from './csv.js';
import { meterOf, percentOf } from '../words/words.js';

const columns = [
  ...['Rank', 'Asked for', 'Status', 'Buy', 'Supply ids', 'Price', 'Currency'],
  ...['Exposed', 'Supplies in use', 'Leads', 'Spare outputs', 'Fullest %', 'Note'],
  ...['Best at', 'Price of supplies', 'Price of leads', 'Over the budget', 'Who may hum'],
];

/** Purchases as a table, a row each, the best first. */
export const comparisonCsv = (handout: ComparisonHandout): string =>
  csvText(
    columns,
    handout.comparison.options.map((option, at) => row(handout, option, at)),
  );

function row({ speech: { board }, options }: ComparisonHandout, option: Option, at: number): readonly CsvCell[] {
  const { currency } = board;
  const words = options[at];
  const price = option.kind === 'plan' ? option.score.money : option.price;
  return [
    option.rank ?? '',
    option.asked ? 'yes' : 'no',
    statusOf(option),
    words?.bill.map(({ text }) => text).join('; ') ?? '',
    option.supplies.map(({ id, units }) => `${units} x ${id}`).join('; '),
    moneyText(price, currency),
    currency.code,
    ...figuresOf(option),
    words?.notes.map((note) => note.replace(/^\((.*)\)$/, '$1')).join('; ') ?? '',
    words?.label ?? '',
    ...(option.kind === 'plan' ? pricesOf(option, currency) : ['', '', '']),
    words?.noise.join(' ') ?? '',
  ];
}

const pricesOf = ({ prices, overBudget }: PlannedOption, currency: Currency): readonly CsvCell[] =>
  [prices.supplies, prices.leads, overBudget].map((amount) => moneyText(amount, currency));

/** Empty where there is no plan. */
function figuresOf(option: Option): readonly CsvCell[] {
  if (option.kind === 'fails') return ['', '', '', '', ''];
  const { score, figures } = option;
  const fullest = figures.tightest === null ? '' : percentOf(meterOf(figures.tightest.numbers));
  return [score.exposed, score.bricks, score.parts, figures.spareOutputs, fullest];
}

function statusOf(option: Option): string {
  if (option.kind === 'plan') return option.gap === null ? 'proven' : 'best found';
  return option.reasons.length === 0 ? 'stopped' : 'fails';
}
