import type { Reason, Refusal } from '../../planning/answer.js';
import type { Failure } from '../../planning/compare/comparison.js';
import { at, list, oneOf, orAbsent, orNull, record, word } from './codec.js';
import { amountOrCount, choice, count, id, money, numbered, numbers, outputs, pedals, rule, yes } from './values.js';

type OfKind<Kind extends Failure['kind']> = Extract<Failure, { readonly kind: Kind }>;

export const refusal = record<Refusal>()('Why one kind of output cannot feed the pedal.', {
  rule: at(rule('The hard rule that stands in the way.'), (from) => from.rule),
  at: at(
    orNull(
      'Where the nearest miss stands; null when there is no supply at all.',
      record<NonNullable<Refusal['at']>>()('Outputs that are alike in this.', {
        supply: at(id('The id of the supply.'), ({ supply }) => supply),
        outputs: at(outputs('Outputs that are alike in this.'), (from) => from.outputs),
      }),
    ),
    (from) => from.at,
  ),
  message: at(numbers, ({ message }) => message),
});

const pedalReason = record<OfKind<'pedal'>>()('A pedal that cannot be fed at all.', {
  rule: at(orAbsent(rule('Of its nearest miss.')), ({ refusals: [nearest] }) => nearest?.rule),
  kind: word('pedal', 'One pedal that no output can feed.'),
  pedals: at(pedals('The id of that pedal.'), ({ pedal }) => [pedal]),
  message: at(numbers, ({ refusals: [nearest] }) => nearest?.message ?? 'no supply can feed this pedal'),
  refusals: at(list('The nearest misses, nearest first.', refusal), ({ refusals }) => refusals),
});

const together = record<OfKind<'together'>>()('Pedals of which all but any one can be fed.', {
  kind: word('together', 'Pedals that cannot be fed all at once.'),
  pedals: at(pedals('The ids of those pedals.'), (from) => from.pedals),
  message: at(numbers, ({ message }) => message),
  smallest: at(yes('True when it is shown that no set of fewer pedals fails.'), ({ smallest }) => smallest),
});

const limit = record<OfKind<'limit'>>()('A limit of the policy that no plan keeps.', {
  rule: word('limit', 'The hard rule that stands in the way.'),
  kind: word('limit', 'A limit of the policy that is too tight.'),
  pedals: at(pedals('Always empty.'), () => []),
  message: at(numbers, ({ message }) => message),
  limit: at(choice(['budget', 'bricks', 'sockets'], 'The limit.'), (from) => from.limit),
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
  message: at(numbers, ({ message }) => message),
  requests: at(
    list('What a plan has to do without.', choice(['keep', 'buy never', 'budget'], 'What was asked for.')),
    ({ requests }) => requests.map((each) => each.kind),
  ),
  needed: at(
    orNull('The least money that a plan then takes; null when that was not asked.', money('The least.')),
    ({ needed }) => needed,
  ),
});

const stock = record<OfKind<'stock'>>()('The shop has fewer units than the purchase takes.', {
  rule: word('stock', 'The hard rule that stands in the way.'),
  kind: word('stock', 'Too few units are in stock.'),
  pedals: at(pedals('Always empty.'), () => []),
  message: at(numbers, ({ message }) => message),
  supply: at(id('The id of the supply.'), ({ supply }) => supply),
  units: at(numbered('How many it takes.'), ({ units }) => units),
  inStock: at(count('How many there are.'), ({ inStock }) => inStock),
});

/** `rule`, where there is one, is the hard rule that stands in the way; of a pedal it is its nearest miss's. */
export const reasons = list(
  'Why no plan exists, or why pedals are left out; empty for a whole plan.',
  oneOf<Reason>('Why no plan exists, or why pedals are left out.', { pedal: pedalReason, together, limit, request }),
);

export const failures = list(
  'Why the purchase gives no plan; empty when the time ran out first.',
  oneOf<Failure>('Why a purchase cannot power the board.', { pedal: pedalReason, together, limit, request, stock }),
);
