import type { Pedal } from '../domain/pedal.js';
import type { Violation } from '../domain/plan.js';
import { pedalsOf, placeOf, type Layout, type Line, type Tap } from './line.js';
import { list, names, violation } from './words.js';

/** All lines on one ground. */
type Domain = readonly Line[];

/** No positive-ground pedal shares a ground domain with a negative-ground one. */
export function groundViolations(layout: Layout): readonly Violation[] {
  return domainsOf(layout.lines).flatMap((domain) => {
    const positive = pedalsOf(domain).filter((pedal) => pedal.ground === 'positive');
    const negative = pedalsOf(domain).filter((pedal) => pedal.ground === 'negative');
    if (positive.length === 0 || negative.length === 0) return [];
    const places = list([...new Set(domain.map(placeOf))]);
    const message = `positive ground (${names(positive)}) and negative ground (${names(negative)}) meet on ${places}`;
    return [violation('ground', [...positive, ...negative], message)];
  });
}

/** The high-gain pedals that share a ground domain with another pedal that is digital. */
export function exposedPedals(layout: Layout): ReadonlySet<Pedal> {
  const exposed = new Set<Pedal>();
  for (const domain of domainsOf(layout.lines)) {
    const pedals = pedalsOf(domain);
    for (const pedal of pedals.filter((candidate) => candidate.highGain)) {
      if (pedals.some((other) => other.digital && other.id !== pedal.id)) exposed.add(pedal);
    }
  }
  return exposed;
}

/** The grounds that a pedal touches become one, whether through a join lead or because a feed is there twice. */
function domainsOf(lines: readonly Line[]): readonly Domain[] {
  const domains: { grounds: Set<string>; lines: Line[] }[] = [];
  for (const line of lines) {
    const touched = new Set([...line.taps.map((tap) => groundOf(line, tap)), `pedal ${line.pedal.id}`]);
    const merged = { grounds: touched, lines: [line] };
    for (const domain of domains.filter((candidate) => [...touched].some((ground) => candidate.grounds.has(ground)))) {
      domains.splice(domains.indexOf(domain), 1);
      domain.grounds.forEach((ground) => merged.grounds.add(ground));
      merged.lines.unshift(...domain.lines);
    }
    domains.push(merged);
  }
  return domains.map((domain) => domain.lines);
}

/** An isolated output has its own ground; all others of the same unit share one, across its banks. */
function groundOf(line: Line, tap: Tap): string {
  return JSON.stringify([line.supply.id, line.feed.unit, tap.bank.isolated ? tap.output : 'common']);
}
