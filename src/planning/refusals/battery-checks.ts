import { exactly, loadAt, scaled, compareExact, stepsUp, tenthsDown } from '../../domain/load.js';
import { hoursOf } from '../../domain/own-battery.js';
import { decimalOfThousandths, factorText } from '../../domain/quantities.js';
import { isAllowed } from '../../domain/source.js';
import { acceptsVolts } from '../../loadout/outlet.js';
import type { Attempt } from './attempts.js';
import { currentText, voltsText, type RuleFailure } from './failure.js';

/** Whether a set of batteries does for its pedal: allowed, of volts that it accepts, and lasting. */
export function failsBattery({ pedal, supply, seat, shop }: Attempt): RuleFailure | null {
  const { policy } = shop.kit.board;
  const { source } = supply;
  if (source.kind !== 'battery') return null;
  if (!isAllowed(source, policy) || policy.batteries === null) {
    const message = `${supply.name} might do; to plan with batteries, the board must say how long a set has to last`;
    return { nearness: 0, message };
  }
  const { millivolts } = seat.outlet;
  if (!acceptsVolts(pedal, millivolts))
    return { nearness: 0, message: `${supply.name} gives ${voltsText(millivolts)}, which it does not accept` };
  const load = loadAt(pedal, millivolts, policy.guess);
  const { change } = policy.batteries;
  if (compareExact(scaled(load, change), exactly(source.microampHours)) <= 0) return null;
  const hours = hoursOf(pedal, supply, policy.guess);
  const lasts = hours === null ? '' : ` about ${decimalOfThousandths(tenthsDown(hours))} h`;
  const message = `${supply.name} lasts${lasts} at ${currentText(stepsUp(load, 1))}; a set must last ${factorText(change)} h`;
  return { nearness: 0, message };
}
