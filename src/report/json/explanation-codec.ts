import { choosingAims, isMoney, tiers } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Conflict } from '../../planning/conflict/conflict.js';
import type { Fact } from '../../planning/conflict/facts.js';
import type { Argument, UnitCount } from '../../planning/explain/argument.js';
import type { TierDifference } from '../../planning/explain/difference.js';
import type { Explanation } from '../../planning/explain/explain.js';
import type { Cheaper, Forced } from '../../planning/explain/purchases.js';
import type { Elsewhere, SeatExplanation, SeatVerdict } from '../../planning/explain/seats.js';
import { argumentTexts } from '../words/explain-argument.js';
import { way } from './change-codec.js';
import { at, list, oneOf, orNull, record, word } from './codec.js';
import { printed } from './printed.js';
import { refusal } from './reason-codec.js';
import { boardName, currency, feed, finding, format } from './shared-codecs.js';
import { amountOrCount, choice, count, id, money, numbered, outputs, pedals, sentence, whole, yes } from './values.js';
import { plan } from './wiring-codec.js';

const factWords: Readonly<Record<Fact['kind'], true>> = {
  mains: true,
  plug: true,
  polarity: true,
  setting: true,
  ground: true,
  startup: true,
  total: true,
  runtime: true,
  battery: true,
  'headroom chained': true,
  alone: true,
  guess: true,
  'headroom supply': true,
  'headroom alone': true,
  chains: true,
  sockets: true,
  bricks: true,
  budget: true,
  stock: true,
};

const fact = record<Fact>()('Something that the board, the shop or a rule asks for.', {
  fact: at(choice(Object.keys(factWords), 'What it is.'), ({ kind }) => kind),
  of: at(orNull('Of stock: of what.', choice(['supply', 'part'], 'Of what.')), (from) =>
    from.kind === 'stock' ? from.of : null,
  ),
  id: at(orNull('Of stock: the id of the thing.', id('The id.')), (from) => (from.kind === 'stock' ? from.id : null)),
});

const facts = list('What cannot hold together with their power.', fact);

const unitCount = record<UnitCount>()('What one supply can do for these pedals.', {
  supply: id('The id of the supply.'),
  units: orNull('How many there can be; null is any number.', count('How many.')),
  most: orNull('The most of them that one unit feeds; null if not settled.', count('The most.')),
});

const feeder = record<Argument['feeders'][number]>()('Which supplies have an output for these pedals.', {
  pedals: pedals('Pedals that the same supplies feed.'),
  supplies: list('These supplies.', id('The id of a supply.')),
});

const conflict = record<Argument>()('Pedals and facts that cannot hold together.', {
  pedals: at(pedals('These pedals.'), (from) => from.conflict.pedals),
  facts: at(facts, (from) => from.conflict.facts),
  size: at(
    choice(['smallest', 'irreducible', 'open'], 'What is shown of its size.'),
    (from): Conflict['size'] => from.conflict.size,
  ),
  argument: at(list('Why, in sentences.', sentence), (from, told) => argumentTexts(told, from)),
  feeders: list('Who has an output for them.', feeder),
  units: list('Of the few supplies that come into question, what each can do.', unitCount),
  needed: at(
    record<Argument['least']>()('What these pedals take at the least when a limit is lifted; null if not asked.', {
      budget: at(orNull('Money.', money('Money.')), ({ budget = null }) => budget),
      bricks: at(orNull('Supplies in use.', count('Supplies in use.')), ({ bricks = null }) => bricks),
      sockets: at(orNull('Mains sockets.', count('Mains sockets.')), ({ sockets = null }) => sockets),
    }),
    ({ least }) => least,
  ),
  refusals: list(
    'Of the pedals that no supply can feed: the nearest misses.',
    record<Argument['refusals'][number]>()('The nearest misses of one pedal.', {
      pedal: id('The id of the pedal.'),
      refusals: list('For every rule in the way the nearest miss.', refusal),
    }),
  ),
});

const difference = record<TierDifference>()('A measure in which two plans differ.', {
  tier: choice(tiers, 'The measure.'),
  from: at(amountOrCount('Of the best plan.'), ({ tier, from }) => ({ amount: from, isMoney: isMoney(tier) })),
  to: at(amountOrCount('Of the other.'), ({ tier, to }) => ({ amount: to, isMoney: isMoney(tier) })),
  exposed: at(
    whole('Of the cost: so many exposed pedals more, or fewer when below zero.'),
    ({ exposed = 0 }) => exposed,
  ),
  supplies: at(
    whole('Of money in which supplies in use count: so many more of them, or fewer when below zero.'),
    ({ supplies = 0 }) => supplies,
  ),
});

const differences = list('Where it differs from the best plan, the most important first.', difference);

const forced = record<Forced>()('Why something is bought.', {
  of: at(choice(['supply', 'part'], 'Of what.'), ({ bought }) => bought.of),
  id: at(id('The id of the thing.'), ({ bought }) => bought.id),
  units: at(numbered('How many are bought.'), ({ bought }) => bought.units),
  without: record<Forced['without']>()('The best plan without it.', {
    answer: at(choice(['plan', 'impossible', 'unknown'], 'Whether there is one.'), (from) =>
      from === null ? 'impossible' : from === 'unknown' ? from : 'plan',
    ),
    differences: at(differences, (from) => (from === null || from === 'unknown' ? [] : from)),
  }),
  pedals: pedals('A smallest set that cannot be powered without it.'),
});

const cheaper = record<Cheaper>()('The best that less money can do.', {
  answer: at(choice(['worse', 'too little'], 'Whether every pedal has power all the same.'), ({ kind }) => kind),
  plan: at(plan, ({ wiring }): JudgedPlan => wiring),
  differences: at(differences, (from) => (from.kind === 'worse' ? from.differences : [])),
  pedals: at(pedals('A smallest set that less money cannot power.'), (from) =>
    from.kind === 'worse' ? [] : from.pedals,
  ),
});

type Place = { readonly [Kind in SeatVerdict['kind']]: PlaceOf<Kind> }[SeatVerdict['kind']];
type PlaceOf<Kind extends SeatVerdict['kind']> = {
  readonly kind: Kind;
  readonly at: Elsewhere;
  readonly verdict: Extract<SeatVerdict, { readonly kind: Kind }>;
};

const placeKeys = <Kind extends SeatVerdict['kind']>(kind: Kind) => ({
  supply: at(id('The id of the supply.'), (from: PlaceOf<Kind>) => from.at.supply),
  bank: at(orNull('Which bank, from 1; null for the whole supply.', numbered('From 1.')), (from: PlaceOf<Kind>) =>
    from.at.bank === null ? null : from.at.bank + 1,
  ),
  outputs: at(outputs('The outputs.'), (from: PlaceOf<Kind>) => from.at.outputs),
  answer: word(kind, 'What it would take to have the pedal there.'),
});

const elsewhere = oneOf<Place>('Another place for the pedal.', {
  plan: record<PlaceOf<'plan'>>()('The best plan with it there.', {
    ...placeKeys('plan'),
    differences: at(differences, ({ verdict }) => verdict.differences),
    plan: at(plan, ({ verdict }) => verdict.wiring),
  }),
  forbidden: record<PlaceOf<'forbidden'>>()('It cannot hang there.', {
    ...placeKeys('forbidden'),
    findings: at(list('Why not.', finding), ({ verdict }) => verdict.findings),
  }),
  impossible: record<PlaceOf<'impossible'>>()('There it leaves no plan.', {
    ...placeKeys('impossible'),
    pedals: at(pedals('These cannot all be powered then.'), ({ verdict }) => verdict.conflict?.pedals ?? []),
    facts: at(facts, ({ verdict }) => verdict.conflict?.facts ?? []),
  }),
  unknown: record<PlaceOf<'unknown'>>()('It was not settled in time.', placeKeys('unknown')),
});

const seat = record<SeatExplanation>()('Why a pedal sits where it does.', {
  feed,
  alike: outputs('Outputs of its bank that would do as well.'),
  elsewhere: at(list('Every other place.', elsewhere), (from) =>
    from.elsewhere.map((each) => ({ kind: each.verdict.kind, at: each, verdict: each.verdict }) as Place),
  ),
  unfit: list('Supplies that have no output for it.', id('The id of a supply.')),
});

/** An explanation, with the pedal that was asked about. */
type Explained = { readonly explanation: Explanation; readonly pedal: PedalId | null };

const ofPlan = ({ explanation }: Explained) => (explanation.kind === 'plan' ? explanation : null);
const ofImpossible = ({ explanation }: Explained) => (explanation.kind === 'impossible' ? explanation : null);

const statuses = { plan: 'proven', impossible: 'impossible', stopped: 'stopped' } as const;

/** Keys and their order are a promise to programs that read it: new keys come after those that are there. */
export const explanationCodec = record<Explained>()('Why there is no plan, or why a plan is as it is.', {
  format: format('boardfeed/explain/1'),
  board: boardName(),
  aim: at(choice(choosingAims, 'What was taken to be best.'), ({ explanation }) => explanation.aim),
  status: at(
    choice(['proven', 'impossible', 'stopped'], '`stopped`: there was no proven plan in time.'),
    ({ explanation }) => statuses[explanation.kind],
  ),
  currency: currency(),
  pedal: orNull('The pedal that was asked about.', id('The id of the pedal.')),
  complete: at(
    yes('False where the time ran out before everything was settled.'),
    ({ explanation }) => explanation.kind !== 'stopped' && explanation.whole,
  ),
  conflicts: at(list('Why no plan exists.', conflict), (from) => ofImpossible(from)?.conflicts ?? []),
  ways: at(list('What would help.', way), (from) => ofImpossible(from)?.ways ?? []),
  plan: at(orNull('The best plan.', plan), (from) => ofPlan(from)?.wiring ?? null),
  purchases: at(list('What each purchase is for.', forced), (from) => ofPlan(from)?.forced ?? []),
  cheaper: at(orNull('The best that less money can do.', cheaper), (from) => ofPlan(from)?.cheaper ?? null),
  seat: at(orNull('Of a question about a pedal.', seat), (from) => ofPlan(from)?.seat ?? null),
});

/** An explanation as one JSON object with a line break at its end; `pedal` is the one that was asked about. */
export const explanationJson = (kit: Kit, explanation: Explanation, pedal: PedalId | null): string =>
  printed(explanationCodec, kit, { explanation, pedal });
