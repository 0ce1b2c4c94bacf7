import { drawAt, loadAt, scaled, stepsUp } from '../../domain/load.js';
import type { Pedal } from '../../domain/pedal.js';
import { decimalOfThousandths, factorText, type Factor, type Millivolts } from '../../domain/quantities.js';
import type { Rule } from '../../domain/rules.js';
import type { Supply, Total } from '../../domain/supply.js';
import { loadOf, pedalLoad, takenBy, withinFactor } from '../../loadout/load.js';
import { supplyOffers } from '../../loadout/offers.js';
import { acceptsVolts, voltsSuit } from '../../loadout/outlet.js';
import type { Seat } from '../../loadout/seats.js';
import { acceptsVenue } from '../../domain/source.js';
import { totalLimits, weightsOf, type TotalLimit } from '../../loadout/totals.js';
import type { Attempt } from './attempts.js';

/** How an attempt fails a rule: the larger the nearness, the nearer it came. */
export type Failure = { readonly nearness: number; readonly message: string };

type Check = { readonly rule: Rule; readonly fails: (attempt: Attempt) => Failure | null };

/** In the order in which a feed is thought through. */
export const checks: readonly Check[] = [
  { rule: 'mains', fails: failsMains },
  { rule: 'power', fails: failsPower },
  { rule: 'voltage', fails: failsVoltage },
  { rule: 'plug', fails: failsPlug },
  { rule: 'polarity', fails: failsPolarity },
  { rule: 'current', fails: failsCurrent },
  { rule: 'startup', fails: failsStartup },
  { rule: 'total', fails: failsTotal },
  { rule: 'join', fails: failsJoin },
  { rule: 'stock', fails: failsStock },
];

const volts = (millivolts: number): string => `${decimalOfThousandths(millivolts)} V`;
const current = (microamps: number): string => `${decimalOfThousandths(microamps)} mA`;

function failsMains({ supply, shop }: Attempt): Failure | null {
  const { mains } = shop.kit.board.policy;
  if (mains === null || acceptsVenue(supply.source, mains)) return null;
  const venue = `the venue has ${volts(mains)}`;
  const accepted = supply.source.volts;
  return accepted === null
    ? { nearness: 0, message: `${supply.name} does not state the mains volts that it accepts; ${venue}` }
    : {
        nearness: -Math.max(accepted.from - mains, mains - accepted.to),
        message: `${supply.name} accepts mains of ${volts(accepted.from)} to ${volts(accepted.to)}; ${venue}`,
      };
}

function failsPower({ pedal, bank, supply }: Attempt): Failure | null {
  if (pedal.power === bank.power) return null;
  return { nearness: 0, message: `needs ${pedal.power}; ${supply.name} gives ${bank.power} there` };
}

function failsVoltage({ pedal, seat, supply }: Attempt): Failure | null {
  if (voltsSuit(pedal, seat.outlet)) return null;
  const { millivolts, openCircuit } = seat.outlet;
  const wanted = acceptedText(pedal);
  const where = placeText(seat, supply);
  if (!acceptsVolts(pedal, millivolts)) {
    const message = `accepts ${wanted}; the nearest is ${volts(millivolts)} (${where})`;
    return { nearness: farther - distance(pedal, millivolts), message };
  }
  const open = openCircuit ?? millivolts;
  const survives =
    pedal.survives === null
      ? 'its maker states no higher volts that it survives'
      : `it survives ${volts(pedal.survives)}`;
  const rise = `${where} is unregulated and rises from ${volts(millivolts)} to ${volts(open)} without a load`;
  return { nearness: -distance(pedal, open), message: `accepts ${wanted}; ${rise}, and ${survives}` };
}

/** Wrong volts are farther off than right ones that rise too high without a load. */
const farther = -1e9;

/** "Quay 6", or "two outputs of Quay 6 in series". */
const placeText = ({ join }: Seat, supply: Supply): string =>
  join === null ? supply.name : `two outputs of ${supply.name} in ${join.mode}`;

/** "the strongest 9 V output gives"; where a stronger one fails for another reason, "… output that fits gives". */
function strongestText({ seat: { join, outlet }, shop: { kit } }: Attempt): string {
  if (join !== null) return `the strongest two that fit in ${join.mode} for ${volts(outlet.millivolts)} give`;
  const ratings = supplyOffers(kit).flatMap(({ supply }) =>
    supply.banks.flatMap(({ power, settings }) =>
      settings.filter(({ millivolts }) => power === outlet.power && millivolts === outlet.millivolts),
    ),
  );
  const fits = ratings.some(({ rating }) => rating > outlet.rating) ? ' that fits' : '';
  return `the strongest ${volts(outlet.millivolts)} output${fits} gives`;
}

function acceptedText({ accepts }: Pedal): string {
  if (accepts.kind === 'range') return `${volts(accepts.from)} to ${volts(accepts.to)}`;
  return accepts.millivolts.map(volts).join(' or ');
}

function distance({ accepts }: Pedal, millivolts: number): number {
  if (accepts.kind === 'range') return Math.max(accepts.from - millivolts, millivolts - accepts.to, 0);
  return Math.min(...accepts.millivolts.map((each) => Math.abs(each - millivolts)));
}

/** Whether the plug can be brought to fit when polarity is left aside. */
function failsPlug({ pedal, supply, seat, shop }: Attempt): Failure | null {
  const either = { plug: seat.exit.plug, polarities: ['centre-negative', 'centre-positive'] as const };
  if (shop.routesWithAnyStock(either, pedal).length > 0) return null;
  const misspelt = shop.nearInlet === null ? '' : ` (did you mean ${shop.nearInlet}?)`;
  const message = `has a ${pedal.inlet} inlet${misspelt}; ${supply.name} offers ${seat.exit.plug}, and no one or two adapters lead from there`;
  return { nearness: 0, message };
}

function failsPolarity({ pedal, bank, supply, seat, shop }: Attempt): Failure | null {
  if (shop.routesWithAnyStock(seat.exit, pedal).length > 0) return null;
  const message = `needs ${pedal.polarity ?? 'AC'}; ${supply.name} gives ${bank.polarity ?? 'AC'}, and no lead reverses it and fits`;
  return { nearness: 0, message };
}

function failsCurrent(attempt: Attempt): Failure | null {
  const { pedal, seat, supply } = attempt;
  const { policy } = attempt.shop.kit.board;
  const { millivolts, rating } = seat.outlet;
  const load = pedalLoad(pedal, millivolts, policy);
  if (load !== undefined && withinFactor(load, policy.headroom.alone, loadOf(rating, policy))) return null;
  const needed = neededOf(pedal, millivolts, policy.guess, policy.headroom.alone);
  const message = `needs ${needed.text}; ${strongestText(attempt)} ${current(rating)} (${supply.name})`;
  return { nearness: rating - needed.microamps, message };
}

type Needed = { readonly microamps: number; readonly text: string };

/** "300 mA × 1.5 for a guess × 1.2 = 540 mA", rounded up to a microamp. */
function neededOf(pedal: Pedal, millivolts: Millivolts, guess: Factor, headroom: Factor): Needed {
  const microamps = stepsUp(scaled(loadAt(pedal, millivolts, guess), headroom), 1);
  const guessed = pedal.figure === 'guess' ? ` × ${factorText(guess)} for a guess` : '';
  const draw = current(drawAt(pedal, millivolts));
  return { microamps, text: `${draw}${guessed} × ${factorText(headroom)} = ${current(microamps)}` };
}

function failsStartup(attempt: Attempt): Failure | null {
  const { pedal, seat, supply } = attempt;
  const { rating, millivolts } = seat.outlet;
  if (pedal.startup === null) return null;
  const needed = `takes ${current(pedal.startup)} to start`;
  if (pedal.startup > rating)
    return { nearness: rating, message: `${needed}; ${strongestText(attempt)} ${current(rating)} (${supply.name})` };
  const broken = brokenTotal(attempt, 'startup');
  if (broken === undefined) return null;
  return { nearness: rating, message: `${needed} at ${volts(millivolts)}${togetherText(attempt, broken)}` };
}

function failsTotal(attempt: Attempt): Failure | null {
  const { policy } = attempt.shop.kit.board;
  const broken = brokenTotal(attempt, 'total');
  if (broken === undefined) return null;
  const { millivolts } = attempt.seat.outlet;
  const needed = neededOf(attempt.pedal, millivolts, policy.guess, policy.headroom.supply);
  const message = `needs ${needed.text} at ${volts(millivolts)}${togetherText(attempt, broken)}`;
  return { nearness: 0, message };
}

function brokenTotal(attempt: Attempt, rule: TotalLimit['rule']): TotalLimit | undefined {
  const { pedal, seat, supply, shop } = attempt;
  const { policy } = shop.kit.board;
  const taken = takenBy(pedal, seat.outlet.millivolts, policy);
  if (taken === undefined) return undefined;
  const limits = totalLimits(supply, policy, [pedal]);
  const weights = weightsOf(limits, seat.takes(taken), policy);
  return limits.find((limit, index) => limit.rule === rule && (weights[index] ?? 0n) > limit.capacity);
}

function togetherText({ seat, supply }: Attempt, { bank, total }: TotalLimit): string {
  const twice = seat.join?.mode === 'series' ? ', on both outputs of a series join' : '';
  const whole = bank === null ? 'all outputs' : 'the outputs of that bank';
  return `${twice}; ${whole} of ${supply.name} together give ${totalText(total)}`;
}

const totalText = (total: Total): string =>
  total.kind === 'current' ? current(total.microamps) : `${decimalOfThousandths(total.milliwatts)} W`;

function failsJoin({ seat, lacksLead, supply }: Attempt): Failure | null {
  if (seat.join === null || !lacksLead) return null;
  const joined = `two outputs of ${supply.name} in ${seat.join.mode} would do`;
  return { nearness: 0, message: `${joined}, but a ${seat.join.mode} lead is neither owned nor for sale` };
}

/** All else fits: then it is the supply or a lead that cannot be had. */
function failsStock({ pedal, offer, seat, supply, shop }: Attempt): Failure | null {
  if (offer.owned + offer.forSale === 0) {
    return { nearness: 1, message: `${supply.name} would do, but none is owned or in stock` };
  }
  if (shop.routes(seat.exit, pedal).length > 0) return null;
  return { nearness: 0, message: `${supply.name} would do, but a lead that it takes is neither owned nor in stock` };
}
