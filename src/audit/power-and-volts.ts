import type { Pedal } from '../domain/pedal.js';
import type { Violation } from '../domain/plan.js';
import { joinOf, placeOf, type Layout, type Line, type Tap } from './line.js';
import { list, violation, volts } from './words.js';

/** AC pedals hang on AC outputs, DC pedals on DC outputs. */
export function powerViolations(layout: Layout): readonly Violation[] {
  return layout.lines.flatMap((line) => {
    const wrong = line.taps.find((tap) => tap.bank.power !== line.pedal.power);
    if (wrong === undefined) return [];
    const message = `${line.pedal.name} needs ${line.pedal.power}; ${placeOf(line)} gives ${wrong.bank.power}`;
    return [violation('power', [line.pedal], message)];
  });
}

/** The pedal accepts the volts that reach it, and accepts or survives those that an unregulated output has unloaded. */
export function voltageViolations(layout: Layout): readonly Violation[] {
  return layout.lines.flatMap((line) => {
    const { pedal, millivolts } = line;
    if (!accepts(pedal, millivolts)) {
      const message = `${pedal.name} accepts ${acceptedText(pedal)}; ${placeOf(line)} gives ${volts(millivolts)}`;
      return [violation('voltage', [pedal], message)];
    }
    const unloaded = openCircuitMillivolts(line);
    if (unloaded === null || accepts(pedal, unloaded)) return [];
    if (pedal.survives !== null && unloaded <= pedal.survives) return [];
    const limit = pedal.survives === null ? 'no higher limit is stated' : `survives ${volts(pedal.survives)}`;
    const message = `${pedal.name} accepts ${acceptedText(pedal)} (${limit}); ${placeOf(line)} is unregulated and rises to ${volts(unloaded)} without a load`;
    return [violation('voltage', [pedal], message)];
  });
}

function accepts(pedal: Pedal, millivolts: number): boolean {
  const { accepts: accepted } = pedal;
  return accepted.kind === 'range'
    ? accepted.from <= millivolts && millivolts <= accepted.to
    : accepted.millivolts.some((value) => value === millivolts);
}

function acceptedText(pedal: Pedal): string {
  const { accepts: accepted } = pedal;
  return accepted.kind === 'range'
    ? `${volts(accepted.from)} to ${volts(accepted.to)}`
    : list(accepted.millivolts.map(volts), 'or');
}

/** The volts without a load, where any output on the way is unregulated; a regulated one keeps its setting's volts. */
function openCircuitMillivolts(line: Line): number | null {
  if (line.taps.every((tap) => (tap.setting?.openCircuit ?? null) === null)) return null;
  const unloaded = line.taps.map(unloadedMillivolts);
  return joinOf(line) === 'series' ? unloaded.reduce((total, value) => total + value, 0) : Math.max(...unloaded);
}

const unloadedMillivolts = (tap: Tap): number => tap.setting?.openCircuit ?? tap.millivolts;
