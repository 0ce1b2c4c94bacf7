import { takesNothingElse } from '../../domain/own-adapter.js';
import type { Pedal } from '../../domain/pedal.js';
import { acceptsVenue, isAllowed, mainsOf } from '../../domain/source.js';
import type { Supply } from '../../domain/supply.js';
import { acceptsVolts, voltsSuit } from '../../loadout/outlet.js';
import type { OutletSeat } from '../../loadout/seats.js';
import type { Attempt } from './attempts.js';
import { factorText } from '../../domain/quantities.js';
import { voltsText, type RuleFailure } from './failure.js';
import { brokenTotal } from './load-checks.js';

export function failsMains({ supply, shop }: Attempt): RuleFailure | null {
  const refused = shop.kit.board.policy.mains.filter((venue) => !acceptsVenue(supply.source, venue));
  if (refused.length === 0) return null;
  const venue = venuesText(refused.map(voltsText));
  const accepted = mainsOf(supply.source);
  return accepted === null
    ? { nearness: 0, message: `${supply.name} does not state the mains volts that it accepts; ${venue}` }
    : {
        nearness: -Math.max(...refused.map((volts) => Math.max(accepted.from - volts, volts - accepted.to))),
        message: `${supply.name} accepts mains of ${voltsText(accepted.from)} to ${voltsText(accepted.to)}; ${venue}`,
      };
}

/** Of a power bank: how long it lasts with this pedal alone, where the policy says how long it has to. */
export function failsRuntime(attempt: Attempt): RuleFailure | null {
  const { pedal, supply, seat, shop } = attempt;
  const { policy } = shop.kit.board;
  if (!isAllowed(supply.source, policy)) {
    const message = `${supply.name} is a power bank; to plan with it, the board must say how long it has to last`;
    return { nearness: 0, message };
  }
  if (brokenTotal(attempt, 'runtime') === undefined || policy.runtime === null) return null;
  const { hours, usable } = policy.runtime;
  const share = factorText(usable);
  const message = `${supply.name} does not last ${factorText(hours)} h with ${pedal.name} at ${voltsText(seat.outlet.millivolts)}, with ${share} of its charge counted`;
  return { nearness: 0, message };
}

const venuesText = (volts: readonly string[]): string =>
  volts.length === 1 ? `the venue has ${volts.join()}` : `venues have ${volts.join(' and ')}`;

export function failsPower({ pedal, bank, supply }: Attempt): RuleFailure | null {
  if (pedal.power === bank.power) return null;
  return { nearness: 0, message: `needs ${pedal.power}; ${supply.name} gives ${bank.power} there` };
}

export function failsVoltage({ pedal, seat, supply }: Attempt): RuleFailure | null {
  if (voltsSuit(pedal, seat.outlet)) return null;
  if (takesNothingElse(pedal))
    return { nearness: 0, message: 'states no volts or no draw, so that nothing but its own adapter may feed it' };
  const { millivolts, openCircuit } = seat.outlet;
  const wanted = acceptedText(pedal);
  const where = placeText(seat, supply);
  if (!acceptsVolts(pedal, millivolts)) {
    const message = `accepts ${wanted}; the nearest is ${voltsText(millivolts)} (${where})`;
    return { nearness: farther - distance(pedal, millivolts), message };
  }
  const open = openCircuit ?? millivolts;
  const survives =
    pedal.survives === null
      ? 'its maker states no higher volts that it survives'
      : `it survives ${voltsText(pedal.survives)}`;
  const rise = `${where} is unregulated and rises from ${voltsText(millivolts)} to ${voltsText(open)} without a load`;
  return { nearness: -distance(pedal, open), message: `accepts ${wanted}; ${rise}, and ${survives}` };
}

/** Wrong volts are farther off than right ones that rise too high without a load. */
const farther = -1e9;

/** "Quay 6", or "two outputs of Quay 6 in series". */
const placeText = ({ join }: OutletSeat, supply: Supply): string =>
  join === null ? supply.name : `two outputs of ${supply.name} in ${join.mode}`;

function acceptedText({ accepts }: Pedal): string {
  if (accepts.kind === 'range') return `${voltsText(accepts.from)} to ${voltsText(accepts.to)}`;
  return accepts.millivolts.map(voltsText).join(' or ');
}

function distance({ accepts }: Pedal, millivolts: number): number {
  if (accepts.kind === 'range') return Math.max(accepts.from - millivolts, millivolts - accepts.to, 0);
  return Math.min(...accepts.millivolts.map((each) => Math.abs(each - millivolts)));
}
