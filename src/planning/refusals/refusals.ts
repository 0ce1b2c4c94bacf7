import type { Kit } from '../../domain/kit.js';
import type { Pedal } from '../../domain/pedal.js';
import type { Rule } from '../../domain/rules.js';
import { isOwnSupplyOf, takesNothingElse } from '../../domain/own-adapter.js';
import { isOfOnePedal } from '../../domain/source.js';
import { supplyOffers } from '../../loadout/offers.js';
import type { Refusal } from '../answer.js';
import { attemptsOn, numbersOf, shopFor, type Attempt } from './attempts.js';
import { checks } from './checks.js';
import type { RuleFailure } from './failure.js';

/**
 * Why no output feeds a pedal, even alone: for every rule that stops some output, the output that comes nearest to
 * passing it. Rules stand in the order in which a feed is thought through, the last passed first: what fails only at
 * the end was nearest to working.
 */
export function refusalsOf(pedal: Pedal, kit: Kit): readonly Refusal[] {
  const offered = supplyOffers(kit).filter(({ supply }) =>
    isOfOnePedal(supply.source) ? isOwnSupplyOf(supply, pedal) : !takesNothingElse(pedal),
  );
  if (offered.length === 0)
    return [{ rule: 'stock', at: null, message: 'there is no supply, neither owned nor for sale' }];
  const shop = shopFor(pedal, kit);
  const misses = offered.flatMap((offer) =>
    farthest(attemptsOn(offer, pedal, shop).flatMap((one) => missOf(one) ?? [])),
  );
  return [...checks]
    .reverse()
    .flatMap(([rule]) => nearest(misses.filter((miss) => miss.rule === rule)) ?? [])
    .map(({ rule, attempt, message }) => ({
      rule,
      at: { supply: attempt.supply.id, outputs: numbersOf(attempt) },
      message,
    }));
}

type Miss = RuleFailure & {
  readonly rule: Rule;
  /** Where the rule stands among those that are thought through. */
  readonly step: number;
  /** How many rules fail beside it, as far as that can be told. */
  readonly others: number;
  readonly attempt: Attempt;
};

/** The first rule that an attempt fails; null when it keeps them all. */
function missOf(attempt: Attempt): Miss | null {
  const isOwn = isOfOnePedal(attempt.supply.source);
  for (const [step, [rule, fails]] of checks.entries()) {
    // What belongs to a pedal suits it in all but the mains, or the time that it lasts.
    const failure = isOwn && rule !== 'mains' && rule !== 'battery' ? null : fails(attempt);
    // What a pedal draws at volts that it does not accept is not known.
    const rest = step > acceptance ? checks.slice(step + 1) : [];
    const others = failure === null ? 0 : rest.filter(([, next]) => next(attempt) !== null).length;
    if (failure !== null) return { rule, step, others, attempt, ...failure };
  }
  return null;
}

const acceptance = checks.findIndex(([rule]) => rule === 'voltage');

/** Of outputs that are alike the misses at the setting, or by the join, that comes farthest. */
const farthest = (misses: readonly Miss[]): readonly Miss[] =>
  misses.filter((miss) => !misses.some((other) => other.step > miss.step && standsFor(other, miss)));

/** Whether an attempt is another way to use the same outputs. */
function standsFor({ attempt: other }: Miss, { attempt: one }: Miss): boolean {
  const numbers = numbersOf(other);
  const isSameJoin = one.seat.join === null || one.seat.join.mode === other.seat.join?.mode;
  return isSameJoin && numbersOf(one).every((output) => numbers.includes(output));
}

/** The first of those that fail the rule by the least, and among these the fewest others. */
const nearest = (misses: readonly Miss[]): Miss | undefined =>
  misses.reduce<Miss | undefined>(
    (best, miss) => (best === undefined || isNearer(miss, best) ? miss : best),
    undefined,
  );

const isNearer = (one: Miss, other: Miss): boolean =>
  one.nearness > other.nearness || (one.nearness === other.nearness && one.others < other.others);
