import type { Polarity } from '../domain/pedal.js';
import type { Violation } from '../domain/violation.js';
import { leadsOf } from './leads.js';
import { linesByOutput, pedalsOf, placeOf, type Layout, type Line, type Parts, type UnitInUse } from './line.js';
import { asRead, ifRead } from './readings.js';
import { placeInUnit, placeOfLine, violation } from './violation.js';
import { names, outputPlace } from './words.js';

/** Plug and pedal agree, by themselves, by a polarity switch or through an odd number of reversing leads. */
export function polarityViolations(layout: Layout): readonly Violation[] {
  return [
    ...layout.lines.flatMap((line) => lineViolations(line, layout.parts)),
    ...layout.units.flatMap((unit) => switchViolations(unit, layout.parts)),
  ];
}

function lineViolations(asPlanned: Line, parts: Parts): readonly Violation[] {
  return asRead(asPlanned).flatMap(({ line, reading }) => {
    const message = lineFault(line, parts);
    if (message === null) return [];
    return [violation('polarity', [line.pedal], ifRead(reading, message), { place: placeOfLine(line) })];
  });
}

/** @param line as its pedal's label has been read */
function lineFault(line: Line, parts: Parts): string | null {
  const { pedal, feed } = line;
  // Where AC meets DC, the rule `power` speaks; there is no polarity to compare.
  if (line.taps.some((tap) => tap.bank.power !== pedal.power)) return null;
  if (pedal.power === 'AC') {
    return feed.polarity === null ? null : `${pedal.name} is said to get ${feed.polarity}; AC has no polarity`;
  }
  const reversals = reversalsOf(line, parts);
  if (reversals === null) return null;
  const delivered = deliveredPolarity(line, reversals);
  if (delivered !== null && delivered === pedal.polarity && feed.polarity === delivered) return null;
  const claimed = feed.polarity ?? 'no polarity';
  const way = `${placeOf(line)}${reversals === 0 ? '' : `, reversed ${reversals === 1 ? 'once' : `${reversals} times`}`}`;
  if (delivered === null) return `${pedal.name} is said to get ${claimed} from ${way}`;
  if (delivered !== pedal.polarity)
    return `${pedal.name} wants ${pedal.polarity ?? 'no polarity'}; it gets ${delivered} from ${way}`;
  return `${pedal.name} is said to get ${claimed}; it gets ${delivered} from ${way}`;
}

/** What the inlet gets: a fixed output decides; where every output has a switch, the feed says how they stand. */
function deliveredPolarity(line: Line, reversals: number): Polarity | null {
  const fixed = line.taps.find((tap) => tap.bank.polarity !== 'either');
  if (fixed === undefined) return line.feed.polarity === 'unknown' ? null : line.feed.polarity;
  const { polarity } = fixed.bank;
  return polarity === null || polarity === 'either' ? null : reversed(polarity, reversals);
}

/** A polarity switch stands one way for all that hangs on its output; for a pedal alone there it may wait for the label. */
function switchViolations(unit: UnitInUse, parts: Parts): readonly Violation[] {
  return [...linesByOutput(unit)].flatMap(([output, lines]) => {
    const onSwitch = lines.filter((line) =>
      line.taps.some((tap) => tap.output === output && tap.bank.polarity === 'either'),
    );
    if (onSwitch.length < 2) return [];
    const positions = new Set(
      onSwitch
        .flatMap(asRead)
        .map(({ line }) => switchPosition(line, parts))
        .filter((position) => position !== null),
    );
    if (positions.size < 2) return [];
    const place = outputPlace(unit.supply, unit.unit, [output]);
    const message = `the polarity switch of ${place} would have to stand both ways, for ${names(pedalsOf(onSwitch))}`;
    return [violation('polarity', pedalsOf(onSwitch), message, { place: placeInUnit(unit, [output]) })];
  });
}

/** How the output's switch must stand so that the inlet gets what the feed says; null when that is not known. */
function switchPosition({ feed, ...line }: Line, parts: Parts): Polarity | null {
  const reversals = reversalsOf({ feed, ...line }, parts);
  if (reversals === null || feed.polarity === null || feed.polarity === 'unknown') return null;
  return reversed(feed.polarity, reversals);
}

function reversalsOf(line: Line, parts: Parts): number | null {
  return leadsOf(line, parts)?.filter((part) => part.reverses).length ?? null;
}

function reversed(polarity: Polarity, times: number): Polarity {
  if (times % 2 === 0) return polarity;
  return polarity === 'centre-negative' ? 'centre-positive' : 'centre-negative';
}
