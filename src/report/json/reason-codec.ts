import type { Reason, Refusal } from '../../planning/answer.js';
import type { Failure } from '../../planning/compare/comparison.js';
import { at, list, oneOf, orAbsent, orNull, record, word } from './codec.js';
import { amountOrCount, choice, count, id, money, numbered, numbers, outputs, pedals, rule, yes } from './values.js';

type OfKind<Kind extends Failure['kind']> = Extract<Failure, { readonly kind: Kind }>;

export const refusal = record<Refusal>()('Why one kind of output cannot feed the pedal.', {
  rule: rule('The hard rule that stands in the way.'),
  at: orNull(
    'Where the nearest miss stands; null when there is no supply at all.',
    record<NonNullable<Refusal['at']>>()('Outputs that are alike in this.', {
      supply: id('The id of the supply.'),
      outputs: outputs('Outputs that are alike in this.'),
    }),
  ),
  message: numbers,
});

const pedalReason = record<OfKind<'pedal'>>()('A pedal that cannot be fed at all.', {
  rule: at(orAbsent(rule('Of its nearest miss.')), ({ refusals: [nearest] }) => nearest?.rule),
  kind: word('pedal', 'One pedal that no output can feed.'),
  pedals: at(pedals('The id of that pedal.'), ({ pedal }) => [pedal]),
  message: at(numbers, ({ refusals: [nearest] }) => nearest?.message ?? 'no supply can feed this pedal'),
  refusals: list('The nearest misses, nearest first.', refusal),
});

const together = record<OfKind<'together'>>()('Pedals of which all but any one can be fed.', {
  kind: word('together', 'Pedals that cannot be fed all at once.'),
  pedals: pedals('The ids of those pedals.'),
  message: numbers,
  smallest: yes('True when it is shown that no set of fewer pedals fails.'),
});

const limit = record<OfKind<'limit'>>()('A limit of the policy that no plan keeps.', {
  rule: word('limit', 'The hard rule that stands in the way.'),
  kind: word('limit', 'A limit of the policy that is too tight.'),
  pedals: at(pedals('Always empty.'), () => []),
  message: numbers,
  limit: choice(['budget', 'bricks', 'sockets'], 'The limit.'),
  allowed: at(amountOrCount('What the policy allows.'), (from) => ({
    amount: from.allowed,
    isMoney: from.limit === 'budget',
  })),
  needed: at(amountOrCount('The least that a plan needs without this limit.'), (from) => ({
    amount: from.needed,
    isMoney: from.limit === 'budget',
  })),
});

const request = record<OfKind<'request'>>()('A request without which there is a plan.', {
  kind: word('request', 'Of `rewire`: something that was asked for stands in the way.'),
  pedals: at(pedals('The ids of those that are to stay.'), ({ requests }) =>
    requests.flatMap((each) => (each.kind === 'keep' ? [each.pedal] : [])),
  ),
  message: numbers,
  requests: at(
    list('What a plan has to do without.', choice(['keep', 'buy never', 'budget'], 'What was asked for.')),
    ({ requests }) => requests.map((each) => each.kind),
  ),
  needed: orNull('The least money that a plan then takes; null when that was not asked.', money('The least.')),
});

export const unowned = record<OfKind<'unowned'>>()('Leads that are plugged today, and of which too few are there.', {
  rule: word('stock', 'The hard rule that stands in the way.'),
  kind: word('unowned', 'With all leads that are plugged today there is a plan; too few are owned or for sale.'),
  pedals: at(pedals('Always empty.'), () => []),
  message: numbers,
  parts: list('The ids of those leads.', id('The id of a lead.')),
});

const stock = record<OfKind<'stock'>>()('The shop has fewer units than the purchase takes.', {
  rule: word('stock', 'The hard rule that stands in the way.'),
  kind: word('stock', 'Too few units are in stock.'),
  pedals: at(pedals('Always empty.'), () => []),
  message: numbers,
  supply: id('The id of the supply.'),
  units: numbered('How many it takes.'),
  inStock: count('How many there are.'),
});

/** `rule`, where there is one, is the hard rule that stands in the way; of a pedal it is its nearest miss's. */
export const reasons = list(
  'Why no plan exists, or why pedals are left out; empty for a whole plan.',
  oneOf<Reason>('Why no plan exists, or why pedals are left out.', {
    pedal: pedalReason,
    together,
    limit,
    request,
    unowned,
  }),
);

export const failures = list(
  'Why the purchase gives no plan; empty when the time ran out first.',
  oneOf<Failure>('Why a purchase cannot power the board.', {
    pedal: pedalReason,
    together,
    limit,
    request,
    unowned,
    stock,
  }),
);
