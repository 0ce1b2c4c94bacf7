import { drawAt, loadAt, scaled, stepsUp } from '../../domain/load.js';
import type { Pedal } from '../../domain/pedal.js';
import { decimalOfThousandths, factorText, type Factor, type Millivolts } from '../../domain/quantities.js';
import { isOfOnePedal } from '../../domain/source.js';
import type { Total } from '../../domain/supply.js';
import { loadOf, pedalLoad, takenBy, withinFactor } from '../../loadout/load.js';
import { supplyOffers } from '../../loadout/offers.js';
import { totalLimits, weightsOf, type TotalLimit } from '../../loadout/totals.js';
import type { Attempt } from './attempts.js';
import { currentText, voltsText, type RuleFailure } from './failure.js';

export function failsCurrent(attempt: Attempt): RuleFailure | null {
  const { pedal, seat, supply } = attempt;
  const { policy } = attempt.shop.kit.board;
  const { millivolts, rating } = seat.outlet;
  const load = pedalLoad(pedal, millivolts, policy);
  if (load !== undefined && withinFactor(load, policy.headroom.alone, loadOf(rating, policy))) return null;
  const needed = neededOf(pedal, millivolts, policy.guess, policy.headroom.alone);
  const message = `needs ${needed.text}; ${strongestText(attempt)} ${currentText(rating)} (${supply.name})`;
  return { nearness: rating - needed.microamps, message };
}

type Needed = { readonly microamps: number; readonly text: string };

/** "300 mA × 1.5 for a guess × 1.2 = 540 mA", rounded up to a microamp. */
function neededOf(pedal: Pedal, millivolts: Millivolts, guess: Factor, headroom: Factor): Needed {
  const microamps = stepsUp(scaled(loadAt(pedal, millivolts, guess), headroom), 1);
  const guessed = pedal.figure === 'guess' ? ` × ${factorText(guess)} for a guess` : '';
  const draw = currentText(drawAt(pedal, millivolts));
  return { microamps, text: `${draw}${guessed} × ${factorText(headroom)} = ${currentText(microamps)}` };
}

export function failsStartup(attempt: Attempt): RuleFailure | null {
  const { pedal, seat, supply } = attempt;
  const { rating, millivolts } = seat.outlet;
  if (pedal.startup === null) return null;
  const needed = `takes ${currentText(pedal.startup)} to start`;
  if (pedal.startup > rating)
    return {
      nearness: rating,
      message: `${needed}; ${strongestText(attempt)} ${currentText(rating)} (${supply.name})`,
    };
  const broken = brokenTotal(attempt, 'startup');
  if (broken === undefined) return null;
  return { nearness: rating, message: `${needed} at ${voltsText(millivolts)}${togetherText(attempt, broken)}` };
}

export function failsTotal(attempt: Attempt): RuleFailure | null {
  const { policy } = attempt.shop.kit.board;
  const broken = brokenTotal(attempt, 'total');
  if (broken === undefined) return null;
  const { millivolts } = attempt.seat.outlet;
  const needed = neededOf(attempt.pedal, millivolts, policy.guess, policy.headroom.supply);
  const message = `needs ${needed.text} at ${voltsText(millivolts)}${togetherText(attempt, broken)}`;
  return { nearness: 0, message };
}

/** The first limit of that rule that the pedal alone is too much for. */
export function brokenTotal(attempt: Attempt, rule: TotalLimit['rule']): TotalLimit | undefined {
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
  total.kind === 'current' ? currentText(total.microamps) : `${decimalOfThousandths(total.milliwatts)} W`;

/** "the strongest 9 V output gives"; where a stronger one fails for another reason, "… output that fits gives". */
function strongestText({ seat: { join, outlet }, shop: { kit } }: Attempt): string {
  if (join !== null) return `the strongest two that fit in ${join.mode} for ${voltsText(outlet.millivolts)} give`;
  const ratings = supplyOffers(kit).flatMap(({ supply }) =>
    (isOfOnePedal(supply.source) ? [] : supply.banks).flatMap(({ power, settings }) =>
      settings.filter(({ millivolts }) => power === outlet.power && millivolts === outlet.millivolts),
    ),
  );
  const fits = ratings.some(({ rating }) => rating > outlet.rating) ? ' that fits' : '';
  return `the strongest ${voltsText(outlet.millivolts)} output${fits} gives`;
}
