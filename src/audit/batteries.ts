import type { PartId } from '../domain/quantities.js';
import type { BatteryInUse } from '../domain/judged-plan.js';
import type { Policy } from '../domain/board.js';
import type { Violation } from '../domain/violation.js';
import { decimalText, isAtMost, ratioOf, times, whole, type Ratio } from './exact.js';
import type { Layout, Line } from './line.js';
import { placeOfLine, violation } from './violation.js';
import { factor, milliamps, volts } from './words.js';

/**
 * The pedal takes that type, and accepts the volts of a set, which lasts: mAh ÷ load ≥ `change` hours. Without a policy for
 * batteries none is used.
 */
export const batteryViolations = ({ lines, policy }: Layout): readonly Violation[] =>
  lines.flatMap((line) => {
    const message = faultOf(line, policy);
    return message === null ? [] : [violation('battery', [line.pedal], message, { place: placeOfLine(line) })];
  });

function faultOf(line: Line, { batteries }: Policy): string | null {
  const { pedal, supply, load, millivolts: given } = line;
  const { source } = supply;
  if (source.kind !== 'battery') return null;
  if (source.pedal !== pedal.id) return `${pedal.name} runs on ${supply.name}, which is in another pedal`;
  if (batteries === null) return `${pedal.name} runs on ${supply.name}, and nobody has said how long a set must last`;
  const { accepts } = pedal;
  const isAccepted =
    accepts.kind === 'range'
      ? accepts.from <= given && given <= accepts.to
      : accepts.millivolts.some((each) => each === given);
  if (pedal.adapter?.only === true || !isAccepted)
    return `${pedal.name} runs on ${supply.name}, whose ${volts(given)} it does not accept`;
  if (isAtMost(times(load, ratioOf(batteries.change)), whole(source.microampHours))) return null;
  const needed = times(load, ratioOf(batteries.change));
  return (
    `${supply.name} has ${decimalText(whole(source.microampHours), 3)} mAh; ${milliamps(load)} for ` +
    `${factor(batteries.change)} h take ${decimalText(needed, 3)} mAh`
  );
}

/** Every pedal on batteries, and how long a set lasts: mAh ÷ load. */
export const batteriesInUse = ({ lines, policy }: Layout): readonly BatteryInUse[] =>
  lines.flatMap((line) => {
    const { pedal, supply, load } = line;
    const { source } = supply;
    if (source.kind !== 'battery') return [];
    const { numerator, denominator } = load;
    const held = BigInt(source.microampHours) * denominator;
    const hours = numerator === 0n ? null : { numerator: held, denominator: numerator };
    return [{ pedal: pedal.id, supply: supply.id, hours, pieces: batteriesIn(line, policy).length }];
  });

/** What is paid for of a pedal's battery: ⌈pay × load ÷ mAh⌉ sets; none of a pedal on anything else. */
export function batteriesIn({ supply: { source }, load }: Line, { batteries }: Policy): readonly PartId[] {
  if (source.kind !== 'battery' || batteries === null) return [];
  return Array.from(
    { length: setsFor(load, source.microampHours, batteries.pay) * source.count },
    () => source.battery,
  );
}

function setsFor(load: Ratio, microampHours: number, pay: Policy['guess']): number {
  const { numerator, denominator } = times(load, ratioOf(pay));
  const one = denominator * BigInt(microampHours);
  return Number((numerator + one - 1n) / one);
}
