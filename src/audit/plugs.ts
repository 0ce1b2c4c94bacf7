import type { Violation } from '../domain/violation.js';
import { leadsOf } from './leads.js';
import { placeOf, type Layout, type Line, type Parts } from './line.js';
import { asRead, ifRead } from './readings.js';
import { counted, placeOfLine, violation } from './violation.js';
import { list } from './words.js';

const mostAdapters = 2;

/**
 * Plug and inlet agree, by themselves or through at most two adapters, each fitting what the one before gives. Whether a
 * chain or join lead fits the output is judged by the rules `chain` and `join`.
 */
export function plugViolations(layout: Layout): readonly Violation[] {
  return layout.lines.flatMap(asRead).flatMap(({ line, reading }) =>
    [...tooManyAdapters(line), ...brokenWay(line, layout.parts)].map((each) => ({
      ...each,
      message: ifRead(reading, each.message),
    })),
  );
}

function tooManyAdapters(line: Line): readonly Violation[] {
  const { pedal, feed } = line;
  if (feed.adapters.length <= mostAdapters) return [];
  const message = `${pedal.name} hangs on ${feed.adapters.length} adapters in a row (${list(feed.adapters)}); at most ${mostAdapters} are allowed`;
  const numbers = counted(feed.adapters.length, mostAdapters);
  return [violation('plug', [pedal], message, { place: placeOfLine(line), numbers })];
}

function brokenWay(line: Line, parts: Parts): readonly Violation[] {
  const leads = leadsOf(line, parts);
  if (leads === null) return [];
  const { pedal, feed } = line;
  const adapters = leads.slice(leads.length - feed.adapters.length);
  let offered = leads[leads.length - feed.adapters.length - 1]?.gives ?? line.taps[0].bank.plug;
  for (const adapter of adapters) {
    if (adapter.fits !== offered) {
      const message = `${adapter.name} fits ${adapter.fits}; what comes from ${placeOf(line)} to ${pedal.name} offers ${offered}`;
      return [violation('plug', [pedal], message, { place: placeOfLine(line) })];
    }
    offered = adapter.gives;
  }
  if (offered === pedal.inlet) return [];
  const message = `${pedal.name} takes ${pedal.inlet}; what comes from ${placeOf(line)} offers ${offered}`;
  return [violation('plug', [pedal], message, { place: placeOfLine(line) })];
}
