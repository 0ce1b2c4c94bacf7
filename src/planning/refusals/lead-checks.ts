import type { Attempt } from './attempts.js';
import type { RuleFailure } from './failure.js';

/** Whether the plug can be brought to fit when polarity is left aside. */
export function failsPlug({ pedal, supply, seat, shop }: Attempt): RuleFailure | null {
  const either = { plug: seat.exit.plug, polarities: ['centre-negative', 'centre-positive'] as const };
  if (shop.routesWithAnyStock(either)(pedal).length > 0) return null;
  const misspelt = shop.nearInlet === null ? '' : ` (did you mean ${shop.nearInlet}?)`;
  const message = `has a ${pedal.inlet} inlet${misspelt}; ${supply.name} offers ${seat.exit.plug}, and no one or two adapters lead from there`;
  return { nearness: 0, message };
}

export function failsPolarity({ pedal, supply, seat, shop }: Attempt): RuleFailure | null {
  if (shop.routesWithAnyStock(seat.exit)(pedal).length > 0) return null;
  const { join, exit } = seat;
  const offers = join === null ? `${supply.name} gives` : `two outputs of ${supply.name} in ${join.mode} give`;
  const message = `needs ${pedal.polarity ?? 'AC'}; ${offers} ${exit.polarities.join(' or ')}, and no lead reverses it and fits`;
  return { nearness: 0, message };
}

export function failsJoin({ seat, lacksLead, supply }: Attempt): RuleFailure | null {
  if (seat.join === null || !lacksLead) return null;
  const joined = `two outputs of ${supply.name} in ${seat.join.mode} would do`;
  return { nearness: 0, message: `${joined}, but a ${seat.join.mode} lead is neither owned nor for sale` };
}

/** All else fits: then it is the supply or a lead that cannot be had. */
export function failsStock({ pedal, offer, seat, supply, shop }: Attempt): RuleFailure | null {
  if (offer.owned + offer.forSale === 0) {
    return { nearness: 1, message: `${supply.name} would do, but none is owned or in stock` };
  }
  if (shop.routes(seat.exit)(pedal).length > 0) return null;
  return { nearness: 0, message: `${supply.name} would do, but a lead that it takes is neither owned nor in stock` };
}
