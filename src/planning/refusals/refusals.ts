import type { Kit } from '../../domain/kit.js';
import type { Pedal } from '../../domain/pedal.js';
import type { Rule } from '../../domain/rules.js';
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
  const offered = supplyOffers(kit);
  if (offered.length === 0)
    return [{ rule: 'stock', at: null, message: 'there is no supply, neither owned nor for sale' }];
  const shop = shopFor(pedal, kit);
  const misses = offered.flatMap((offer) => attemptsOn(offer, pedal, shop)).flatMap((attempt) => missOf(attempt) ?? []);
  return [...checks]
    .reverse()
    .flatMap(([rule]) => nearest(misses.filter((miss) => miss.rule === rule)) ?? [])
    .map(({ rule, attempt, message }) => ({
      rule,
      at: { supply: attempt.supply.id, outputs: numbersOf(attempt) },
      message,
    }));
}

type Miss = RuleFailure & { readonly rule: Rule; readonly attempt: Attempt };

/** The first rule that an attempt fails; null when it keeps them all. */
function missOf(attempt: Attempt): Miss | null {
  for (const [rule, fails] of checks) {
    const failure = fails(attempt);
    if (failure !== null) return { rule, attempt, ...failure };
  }
  return null;
}

function nearest(misses: readonly Miss[]): Miss | undefined {
  return misses.reduce<Miss | undefined>(
    (best, miss) => (best && best.nearness >= miss.nearness ? best : miss),
    undefined,
  );
}
