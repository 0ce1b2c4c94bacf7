import type { Violation } from '../domain/violation.js';
import type { JoinMode } from '../domain/supply.js';
import { pedalsOf, placeOf, type Layout, type Line, type Parts, type Tap, type UnitInUse } from './line.js';
import { placeInUnit, placeOfLine, violation } from './violation.js';
import { list, names, outputPlace, volts } from './words.js';

/** Joined outputs are two isolated, like ones of one supply whose maker allows it, through the right lead, for one pedal. */
export function joinViolations(layout: Layout): readonly Violation[] {
  return [
    ...layout.lines.flatMap((line) => {
      const faults = [...joinFaults(line, layout.parts), ...joinLeadsAsAdapters(line, layout.parts)];
      return faults.map((fault) => violation('join', [line.pedal], fault, { place: placeOfLine(line) }));
    }),
    ...layout.units.flatMap(sharedJoins),
  ];
}

function joinFaults(line: Line, parts: Parts): readonly string[] {
  const [first, second] = line.taps;
  const { join } = line.feed;
  if (join === null) {
    return second === undefined ? [] : [`${line.pedal.name} hangs on ${placeOf(line)} without a join lead`];
  }
  if (second === undefined) return [`${line.pedal.name} hangs on ${placeOf(line)} alone; a join needs two outputs`];
  if (first.output === second.output)
    return [`${line.pedal.name} joins output ${first.output} of ${line.supply.name} with itself`];
  return [...outputFaults(line, first, second, join.mode), ...leadFaults(line, parts)];
}

function outputFaults(line: Line, first: Tap, second: Tap, mode: JoinMode): readonly string[] {
  const faults: string[] = [];
  const place = placeOf(line);
  const shared = [first, second].filter((tap) => !tap.bank.isolated).map((tap) => String(tap.output));
  if (shared.length > 0) faults.push(`${place} cannot be joined: ${list(shared)} is not isolated`);
  const refused = [first, second].filter((tap) => !tap.bank.joins.includes(mode)).map((tap) => String(tap.output));
  if (refused.length > 0)
    faults.push(`${place} cannot be joined in ${mode}: the maker does not allow it for ${list(refused)}`);
  const differences = differencesOf(first, second);
  if (differences.length > 0) faults.push(`${place} cannot be joined: they differ in ${list(differences)}`);
  if (mode === 'parallel' && first.millivolts !== second.millivolts)
    faults.push(
      `${place} stand at ${volts(first.millivolts)} and ${volts(second.millivolts)}; in parallel they must agree`,
    );
  return faults;
}

function differencesOf(first: Tap, second: Tap): readonly string[] {
  const [one, other] = [first.bank, second.bank];
  // An output with a polarity switch agrees with whatever the other one gives.
  const polaritiesAgree =
    one.polarity === other.polarity ||
    (one.polarity === 'either' && other.polarity !== null) ||
    (other.polarity === 'either' && one.polarity !== null);
  return [
    ...(one.power === other.power ? [] : [`power (${one.power} and ${other.power})`]),
    ...(one.plug === other.plug ? [] : [`plug (${one.plug} and ${other.plug})`]),
    ...(polaritiesAgree ? [] : [`polarity (${one.polarity ?? 'none'} and ${other.polarity ?? 'none'})`]),
  ];
}

function leadFaults(line: Line, parts: Parts): readonly string[] {
  const { join } = line.feed;
  const part = join === null ? undefined : parts.get(join.part);
  if (join === null || part === undefined) return [];
  if (part.role.kind !== 'join') return [`${part.name} is no join lead`];
  const faults: string[] = [];
  if (part.role.mode !== join.mode) faults.push(`${part.name} joins in ${part.role.mode}, not in ${join.mode}`);
  const plugs = [...new Set(line.taps.map((tap) => tap.bank.plug))].filter((plug) => plug !== part.fits);
  if (plugs.length > 0) faults.push(`${part.name} fits ${part.fits}; ${placeOf(line)} offer ${list(plugs)}`);
  return faults;
}

function joinLeadsAsAdapters(line: Line, parts: Parts): readonly string[] {
  return line.feed.adapters.flatMap((id) => {
    const part = parts.get(id);
    return part?.role.kind === 'join'
      ? [`${part.name} is a join lead; ${line.pedal.name} cannot use it as an adapter`]
      : [];
  });
}

/** Joined outputs feed one pedal, so that no other feed may draw from either of them. */
function sharedJoins(unit: UnitInUse): readonly Violation[] {
  const isJoined = (line: Line): boolean => line.taps.length > 1 || line.feed.join !== null;
  return unit.lines.flatMap((line, index) => {
    if (!isJoined(line)) return [];
    const outputs = new Set(line.taps.map((tap) => tap.output));
    // Of two joined lines that meet, the first one reports it.
    const sharing = unit.lines.filter(
      (other, position) =>
        position !== index &&
        (position > index || !isJoined(other)) &&
        other.taps.some((tap) => outputs.has(tap.output)),
    );
    if (sharing.length === 0) return [];
    const place = outputPlace(unit.supply, unit.unit, [...outputs]);
    const message = `${place} are joined for ${line.pedal.name} and cannot feed ${names(pedalsOf(sharing))} as well`;
    return [violation('join', [line.pedal, ...pedalsOf(sharing)], message, { place: placeInUnit(unit, outputs) })];
  });
}
