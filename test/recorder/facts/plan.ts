import { filled, list, listAt, picked, sorted, textAt, unique, valueAt, type Data } from '../data.js';

/** What stays of a plan when one of the same worth takes its place. */
export const planFacts = (plan: unknown): Data =>
  filled({
    ...picked(plan, 'status', 'aim', 'score', 'gap'),
    buy: boughtFacts(valueAt(plan, 'buy')),
    reasons: listAt(plan, 'reasons').map(reasonFacts),
  });

/** What is bought, such as "2 x supply-1". */
export const boughtFacts = (buy: unknown): readonly unknown[] =>
  sorted([...listAt(buy, 'supplies'), ...listAt(buy, 'parts')].map(purchaseText));

const purchaseText = (purchase: unknown): string =>
  `${String(valueAt(purchase, 'units'))} x ${String(valueAt(purchase, 'id'))}`;

/** Of pedals that cannot be powered together there may be several sets of the same size. */
export const reasonFacts = (reason: unknown): Data =>
  filled({
    ...picked(
      reason,
      'kind',
      'rule',
      'limit',
      'allowed',
      'needed',
      'smallest',
      'requests',
      'supply',
      'units',
      'inStock',
    ),
    ...(textAt(reason, 'kind') === 'together'
      ? { size: listAt(reason, 'pedals').length }
      : { pedals: listAt(reason, 'pedals') }),
    refusals: rulesOf(valueAt(reason, 'refusals')),
  });

/** The rules that are named, each once. */
export const rulesOf = (findings: unknown): readonly unknown[] =>
  unique(list(findings).map((each) => textAt(each, 'rule')));
