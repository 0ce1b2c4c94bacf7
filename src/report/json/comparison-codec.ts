import type * as z from 'zod/mini';

import { choosingAims, isMoney, type ChoosingAim, tiers } from '../../domain/aim.js';
import type { Kit } from '../../domain/kit.js';
import type { Score } from '../../domain/plan.js';
import type {
  Beside,
  Comparison,
  FailedOption,
  Merit,
  Option,
  PlannedOption,
  Preference,
  Tightest,
  TradeOff,
  TradeOffPoint,
  Unbeaten,
  UnbeatenPoint,
} from '../../planning/compare/comparison.js';
import { at, list, oneOf, orNull, record, word } from './codec.js';
import { measureKeys } from './measure-keys.js';
import { aboutStatus, planCodec, statuses } from './plan-codec.js';
import { printed, printedObject } from './printed.js';
import { failures, reasons } from './reason-codec.js';
import { boardName, buy, currency, format, loadKeys, placeKeys, supplyPurchases } from './shared-codecs.js';
import { amountOrCount, choice, count, money, numbered, text, whole, yes } from './values.js';

type PreferenceOf<Kind extends Preference['kind']> = Extract<Preference, { readonly kind: Kind }>;

const plainly = <Kind extends 'best' | 'as good' | 'unknown'>(kind: Kind, about: string) =>
  record<PreferenceOf<Kind>>()(about, { kind: word(kind, about) });

const preference = oneOf<Preference>('What it would take for the option to be the best.', {
  best: plainly('best', 'It is the best.'),
  'as good': plainly('as good', 'It is as good as the best.'),
  unknown: plainly('unknown', 'That was not proven in time.'),
  price: record<PreferenceOf<'price'>>()('A lower price for all of it.', {
    kind: word('price', 'A lower price.'),
    at: money('The price at which it is the best.'),
    below: money('So much is that below its own.'),
  }),
  never: record<PreferenceOf<'never'>>()('Not even for nothing.', {
    kind: word('never', 'Not even for nothing.'),
    tier: choice(tiers, 'The measure in which the best would still be ahead.'),
    behind: at(amountOrCount('By so much.'), ({ tier, behind }) => ({ amount: behind, isMoney: isMoney(tier) })),
  }),
});

const score = record<Score>()('What it comes to, by each measure; money counts all that is bought.', measureKeys);

const merits = ['aim', 'quiet', 'bricks', 'money', 'budget', 'between'] as const satisfies readonly Merit[];

const aboutMerits =
  '`aim`: the best under the aim. `quiet`: the cheapest of those with the fewest exposed pedals. `bricks`: the cheapest of those ' +
  'with the fewest supplies in use. `money`: the cheapest. `budget`: the best within the budget. `between`: the cheapest of ' +
  'those with no more exposed pedals and no more supplies in use.';

const unbeaten = (about: string) => orNull(`${about} Null while that is not known.`, yes(about));

/** An option with the aim that it was wired for. */
type Aimed<Of extends Option> = Of & { readonly aim: ChoosingAim };

/** The keys that a purchase with a plan and one without have in common. */
const bundleKeys = {
  rank: orNull(
    'Its place among those that are listed, the best first; null when it was only asked for.',
    numbered('From 1.'),
  ),
  asked: yes('Whether it was asked for.'),
};

const planned = record<Aimed<PlannedOption>>()('A purchase with its best wiring.', {
  ...bundleKeys,
  status: at(choice(['proven', 'best found'], 'Whether no wiring of it is better.'), ({ gap }) =>
    gap === null ? 'proven' : 'best found',
  ),
  buy: at(buy, ({ supplies, wiring }) => ({ supplies, parts: wiring.buy.parts })),
  price: at(money('What all of it costs.'), (from) => from.score.money),
  idle: supplyPurchases,
  score,
  sockets: at(count('Mains sockets that it takes.'), ({ figures }) => figures.sockets),
  spareOutputs: at(count('Outputs that stay free.'), ({ figures }) => figures.spareOutputs),
  tightest: at(
    orNull(
      'The output that is nearest to its limit; null where none has one, with adapters that pedals came with and batteries alone.',
      record<Tightest>()('The output that is nearest to its limit.', {
        ...placeKeys((from: Tightest) => from.place),
        moment: choice(['load', 'startup'], 'Running, or when all is switched on.'),
        ...loadKeys((from: Tightest) => from.numbers),
      }),
    ),
    ({ figures }) => figures.tightest,
  ),
  prefer: at(preference, (from) => from.preference),
  unbeaten: record<PlannedOption['unbeaten']>()('Whether nothing beats it on money and the other figure at once.', {
    exposed: unbeaten('On money and exposed pedals.'),
    bricks: unbeaten('On money and supplies in use.'),
  }),
  plan: at(planCodec, ({ wiring, gap, aim }) => ({ kind: 'plan', aim, wiring, gap, reasons: [] }) as const),
  bestAt: at(
    list('What nothing that could be bought is better at.', choice(merits, aboutMerits)),
    (from) => from.merits,
  ),
  suppliesPrice: at(money('What its supplies cost.'), ({ prices }) => prices.supplies),
  leadsPrice: at(money('What its leads cost.'), ({ prices }) => prices.leads),
  overBudget: money('By so much its price is over the budget; nothing where there is none.'),
});

const beside = record<Beside>()('What is bought beside it for the board to have power, leads included.', {
  status: at(choice(['proven', 'best found'], 'Whether nothing better could be bought beside it.'), ({ isProven }) =>
    isProven ? 'proven' : 'best found',
  ),
  buy: at(buy, (from) => from),
  price: money('What all of it costs, with what was asked for.'),
});

const failed = record<FailedOption>()('A purchase without a plan.', {
  ...bundleKeys,
  status: at(choice(['fails', 'stopped'], 'Whether it fails, or the time ran out first.'), (from) =>
    from.reasons.length === 0 ? 'stopped' : 'fails',
  ),
  buy: at(buy, ({ supplies }) => ({ supplies, parts: [] })),
  price: money('What the supplies cost, without leads.'),
  reasons: failures,
  beside: orNull('What would do beside it; null where nothing was found.', beside),
});

const point = record<TradeOffPoint>()('A plan that no other beats on both figures.', {
  money: money('What is bought costs this.'),
  exposed: at(count('Exposed pedals.'), ({ wiring }) => wiring.score.exposed),
  bricks: at(count('Supply units in use.'), ({ wiring }) => wiring.score.bricks),
  parts: at(count('Leads in use.'), ({ wiring }) => wiring.score.parts),
  buy: at(buy, ({ wiring }) => wiring.buy),
});

const tradeOff = record<TradeOff>()('What money buys.', {
  against: choice(['exposed', 'bricks'], 'The figure that money is held against.'),
  exact: at(yes('True when none is missing.'), ({ complete }) => complete),
  points: list('The cheapest first.', point),
});

const unbeatenPoint = record<UnbeatenPoint>()(
  'A plan that no other beats on money, exposed pedals and supplies at once.',
  {
    status: at(choice(['proven', 'best found'], 'Whether it is proven that nothing beats it.'), ({ isProven }) =>
      isProven ? 'proven' : 'best found',
    ),
    money: money('What is bought costs this.'),
    exposed: count('Exposed pedals.'),
    bricks: count('Supply units in use.'),
    parts: at(count('Leads in use.'), ({ wiring }) => wiring.score.parts),
    buy: at(buy, ({ wiring }) => wiring.buy),
  },
);

const unbeatenCodec = record<Unbeaten>()(
  'What no other plan beats on money, exposed pedals and supplies in use at once.',
  {
    exact: at(yes('True when none is missing.'), ({ complete }) => complete),
    points: list('The cheapest first.', unbeatenPoint),
  },
);

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const comparisonCodec = record<Comparison>()('Purchases side by side.', {
  format: format('boardfeed/comparison/1'),
  board: boardName(),
  catalogue: at(orNull('The name of the catalogue.', text('The name of the catalogue.')), (_, { kit }) =>
    kit.catalogue === null ? null : kit.catalogue.name,
  ),
  aim: choice(choosingAims, 'What was taken to be best.'),
  status: at(choice(statuses, aboutStatus), statusOf),
  currency: currency(),
  wanted: at(whole('How many purchases are listed at the most, besides those asked for.'), ({ best }) => best.wanted),
  end: at(
    choice(
      ['enough', 'all', 'stopped'],
      '`enough`: as many were found. `all`: there are no others. `stopped`: no time.',
    ),
    ({ best }) => best.end,
  ),
  options: at(
    list(
      'The best first; those without a plan last.',
      oneOf<Aimed<Option>>('One purchase.', { plan: planned, fails: failed }),
    ),
    ({ options, aim }) => options.map((option) => ({ ...option, aim })),
  ),
  tradeOffs: list('What money buys; empty when no plan exists.', tradeOff),
  reasons,
  listing: choice(
    ['kinds', 'best'],
    '`kinds`: the options are choices that differ in what they give. `best`: the best different purchases, one after the other.',
  ),
  budget: at(
    orNull('What was to be spent at the most; it rules out nothing.', money('The budget.')),
    (_, { kit }) => kit.board.policy.budget,
  ),
  unbeaten: unbeatenCodec,
});

/** `proven` when everything that is said is; `impossible` when no purchase can power the board. */
function statusOf({ isProven, reasons: why }: Comparison): (typeof statuses)[number] {
  if (!isProven) return 'best found';
  return why.length > 0 ? 'impossible' : 'proven';
}

type ComparisonObject = z.input<typeof comparisonCodec.schema>;

/** The comparison as an object, for results of many boards. */
export const comparisonObject = (kit: Kit, comparison: Comparison): ComparisonObject =>
  printedObject(comparisonCodec, kit, comparison);

/** Purchases side by side as one JSON object with a line break at its end. */
export const comparisonJson = (kit: Kit, comparison: Comparison): string => printed(comparisonCodec, kit, comparison);
