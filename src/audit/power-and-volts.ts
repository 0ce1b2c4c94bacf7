import type { Pedal } from '../domain/pedal.js';
import { millivolts, type Millivolts } from '../domain/quantities.js';
import type { Numbers, Violation } from '../domain/violation.js';
import { joinOf, placeOf, type Layout, type Line, type Tap } from './line.js';
import { placeOfLine, violation } from './violation.js';
import { list, volts } from './words.js';

/** AC pedals hang on AC outputs, DC pedals on DC outputs. */
export function powerViolations(layout: Layout): readonly Violation[] {
  return layout.lines.flatMap((line) => {
    const wrong = line.taps.find((tap) => tap.bank.power !== line.pedal.power);
    if (wrong === undefined) return [];
    const message = `${line.pedal.name} needs ${line.pedal.power}; ${placeOf(line)} gives ${wrong.bank.power}`;
    return [violation('power', [line.pedal], message, { place: placeOfLine(line) })];
  });
}

/** The pedal accepts the volts that reach it, and accepts or survives those that an unregulated output has unloaded. */
export function voltageViolations(layout: Layout): readonly Violation[] {
  return layout.lines.flatMap((line) => {
    const unloaded = openCircuitMillivolts(line);
    const message = voltageFault(line, unloaded);
    if (message === null) return [];
    const { accepts: accepted, survives } = line.pedal;
    const numbers: Numbers = { kind: 'volts', given: line.millivolts, openCircuit: unloaded, accepted, survives };
    return [violation('voltage', [line.pedal], message, { place: placeOfLine(line), numbers })];
  });
}

function voltageFault(line: Line, unloaded: Millivolts | null): string | null {
  const { pedal } = line;
  const give = line.taps.length === 1 ? 'gives' : 'give';
  if (!accepts(pedal, line.millivolts))
    return `${pedal.name} accepts ${acceptedText(pedal)}; ${placeOf(line)} ${give} ${volts(line.millivolts)}`;
  if (unloaded === null || accepts(pedal, unloaded)) return null;
  if (pedal.survives !== null && unloaded <= pedal.survives) return null;
  const limit = pedal.survives === null ? 'no higher limit is stated' : `survives ${volts(pedal.survives)}`;
  const rise = `${placeOf(line)} is unregulated and rises to ${volts(unloaded)} without a load`;
  return `${pedal.name} accepts ${acceptedText(pedal)} (${limit}); ${rise}`;
}

function accepts(pedal: Pedal, reaching: number): boolean {
  const { accepts: accepted } = pedal;
  return accepted.kind === 'range'
    ? accepted.from <= reaching && reaching <= accepted.to
    : accepted.millivolts.some((value) => value === reaching);
}

function acceptedText(pedal: Pedal): string {
  const { accepts: accepted } = pedal;
  return accepted.kind === 'range'
    ? `${volts(accepted.from)} to ${volts(accepted.to)}`
    : list(accepted.millivolts.map(volts), 'or');
}

/** The volts without a load, where any output on the way is unregulated; a regulated one keeps its setting's volts. */
function openCircuitMillivolts(line: Line): Millivolts | null {
  if (line.taps.every((tap) => (tap.setting?.openCircuit ?? null) === null)) return null;
  const unloaded = line.taps.map(unloadedMillivolts);
  const sum = unloaded.reduce((total, value) => total + value, 0);
  return millivolts(joinOf(line) === 'series' ? sum : Math.max(...unloaded));
}

const unloadedMillivolts = (tap: Tap): number => tap.setting?.openCircuit ?? tap.millivolts;
