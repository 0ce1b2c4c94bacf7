import { isFed } from '../domain/inlet.js';
import type { Violation } from '../domain/violation.js';
import { isInlet } from './inlets.js';
import { pedalsOf, placeOf, type Domain, type Layout, type Line } from './line.js';
import { feedsInlets } from './sources.js';
import { placeInUnit, placeOfLine, violation } from './violation.js';
import { names, unitPlace } from './words.js';

/**
 * A fed supply in use hangs by its inlet on an output of a supply on mains or of a power bank, and nothing else is in that
 * ground domain. Whether that output suits it is judged as of a pedal alone there.
 */
export const fedSupplyViolations = (layout: Layout): readonly Violation[] => [
  ...onNothing(layout),
  ...layout.lines.filter(({ pedal }) => isInlet(pedal)).flatMap((line) => [...onWrongSource(line), ...onSeveral(line)]),
  ...layout.domains.flatMap(inCompany),
];

function onNothing({ units, lines }: Layout): readonly Violation[] {
  return units.flatMap((unit) => {
    const isFedHere = ({ feed: { inletOf } }: Line): boolean =>
      inletOf?.supply === unit.supply.id && inletOf.unit === unit.unit;
    if (!isFed(unit.supply) || lines.some(isFedHere)) return [];
    const message = `${unitPlace(unit.supply, unit.unit)} feeds ${names(pedalsOf(unit.lines))}, and its inlet hangs on no output`;
    return [violation('inlet', pedalsOf(unit.lines), message, { place: placeInUnit(unit) })];
  });
}

function onWrongSource(line: Line): readonly Violation[] {
  if (feedsInlets(line)) return [];
  const message = `${line.pedal.name} hangs on ${placeOf(line)}, which stands neither on the mains nor on a charge of its own`;
  return [violation('inlet', [line.pedal], message, { place: placeOfLine(line) })];
}

function onSeveral(line: Line): readonly Violation[] {
  if (line.taps.length === 1) return [];
  const message = `${line.pedal.name} hangs on ${placeOf(line)}; an inlet takes one output`;
  return [violation('inlet', [line.pedal], message, { place: placeOfLine(line) })];
}

function inCompany(domain: Domain): readonly Violation[] {
  const inlet = domain.find(({ pedal }) => isInlet(pedal));
  const others = [...new Set(pedalsOf(domain))].filter((pedal) => pedal !== inlet?.pedal);
  if (inlet === undefined || others.length === 0) return [];
  const message = `${inlet.pedal.name} shares the ground of ${placeOf(inlet)} with ${names(others)}; it must have one alone`;
  return [violation('inlet', [inlet.pedal, ...others], message, { place: placeOfLine(inlet) })];
}
