import { groupBy } from '../domain/group-by.js';
import type { GroundDomain } from '../domain/judged-plan.js';
import type { Pedal } from '../domain/pedal.js';
import type { Exposure, Place } from '../domain/plan.js';
import type { Violation } from '../domain/violation.js';
import { isInlet } from './inlets.js';
import { pedalsOf, type Domain, type Layout, type Line, type Tap } from './line.js';
import { violation } from './violation.js';
import { list, names, outputPlace } from './words.js';

/** No positive-ground pedal shares a ground domain with a negative-ground one; one of unknown ground shares with nobody. */
export function groundViolations(layout: Layout): readonly Violation[] {
  // What an inlet shares its ground with is the affair of the rule `inlet`.
  const ofPedals = layout.lines.filter(({ pedal }) => !isInlet(pedal));
  return domainsOf(ofPedals).flatMap((domain) => [...opposites(domain), ...unknownAmong(domain)]);
}

function unknownAmong(domain: Domain): readonly Violation[] {
  const pedals = [...new Set(pedalsOf(domain))];
  const unread = pedals.filter((pedal) => pedal.ground === 'unknown');
  if (unread.length === 0 || pedals.length < 2) return [];
  const { where, place } = whereabouts(domain);
  const message = `${names(unread)}, of which nobody knows the ground, shares one with ${names(pedals.filter((pedal) => pedal !== unread[0]))} on ${where}`;
  return [violation('ground', pedals, message, place)];
}

function opposites(domain: Domain): readonly Violation[] {
  const positive = pedalsOf(domain).filter((pedal) => pedal.ground === 'positive');
  const negative = pedalsOf(domain).filter((pedal) => pedal.ground === 'negative');
  if (positive.length === 0 || negative.length === 0) return [];
  const { where, place } = whereabouts(domain);
  const message = `positive ground (${names(positive)}) and negative ground (${names(negative)}) meet on ${where}`;
  return [violation('ground', [...positive, ...negative], message, place)];
}

/** The outputs of a domain in words, and as a place where all of them are on one unit. */
function whereabouts(domain: Domain): { readonly where: string; readonly place: { readonly place?: Place } } {
  const units = groupBy(domain, ({ feed }) => JSON.stringify([feed.supply, feed.unit]));
  const places = units.map((lines) => outputPlace(lines[0].supply, lines[0].feed.unit, outputsOf(lines)));
  return { where: list(places), place: placeOfDomain(units) };
}

/** In rising order. */
const outputsOf = (lines: Domain): readonly number[] =>
  [...new Set(lines.flatMap(({ feed }) => feed.outputs))].sort((first, second) => first - second);

/** Where all lines of the domain hang on one unit. */
function placeOfDomain([lines, ...others]: readonly (readonly [Line, ...Line[]])[]): { readonly place?: Place } {
  if (lines === undefined || others.length > 0) return {};
  const { supply, unit } = lines[0].feed;
  return { place: { supply, unit, outputs: outputsOf(lines) } };
}

/** Every ground domain in use, in the order of the board's pedals. */
export function groundDomains({ lines, domains }: Layout): readonly GroundDomain[] {
  const order = new Map(lines.map((line, index) => [line, index]));
  const inOrder = (one: Line, other: Line): number => (order.get(one) ?? 0) - (order.get(other) ?? 0);
  return domains
    .map((domain) => [...domain].sort(inOrder))
    .flatMap(([first, ...others]) => (first === undefined ? [] : [[first, ...others] as const]))
    .sort(([one], [other]) => inOrder(one, other))
    .map((domain) => ({
      supply: domain[0].supply.id,
      unit: domain[0].feed.unit,
      outputs: domain.every(({ taps }) => taps.every(({ bank }) => bank.isolated)) ? outputsOf(domain) : null,
      pedals: [...new Set(pedalsOf(domain).map(({ id }) => id))],
    }));
}

/** The high-gain pedals that share a ground domain with another pedal that is digital, and with which, in the board's order. */
export function exposuresOf({ lines, domains }: Layout): readonly Exposure[] {
  const pedals = [...new Set(pedalsOf(lines))];
  const digitalNear = new Map<Pedal, readonly Pedal[]>();
  for (const domain of domains) {
    const inDomain = new Set(pedalsOf(domain));
    const digital = pedals.filter((pedal) => pedal.digital && inDomain.has(pedal));
    for (const pedal of inDomain) digitalNear.set(pedal, digital);
  }
  return pedals.flatMap((pedal) => {
    const by = (digitalNear.get(pedal) ?? []).filter((other) => other !== pedal);
    return pedal.highGain && by.length > 0 ? [{ pedal: pedal.id, by: by.map(({ id }) => id) }] : [];
  });
}

/** The grounds that a pedal touches become one, whether through a join lead or because a feed is there twice. */
export function domainsOf(lines: readonly Line[]): readonly Domain[] {
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
