import type { Violation } from '../domain/plan.js';
import type { PartId } from '../domain/quantities.js';
import { pedalsOf, placeOf, type Layout, type Line, type Outlet } from './line.js';
import { count, list, names, violation } from './words.js';

/** Several pedals on one output use one chain lead with enough tails; DC only; none of them wants to be alone. */
export function chainViolations(layout: Layout): readonly Violation[] {
  return [
    ...layout.outlets.flatMap((outlet) => {
      const pedals = pedalsOf(outlet.lines);
      // Several pedals on joined outputs break the rule `join`.
      const joined = outlet.lines.some((line) => line.taps.length > 1);
      const faults = outlet.lines.length > 1 && !joined ? chainFaults(outlet, layout) : needlessChain(outlet);
      return faults.map((fault) => violation('chain', pedals, fault));
    }),
    ...layout.lines.flatMap((line) => chainLeadsAsAdapters(line, layout)),
  ];
}

function chainFaults(outlet: Outlet, layout: Layout): readonly string[] {
  const [line] = outlet.lines;
  const pedals = pedalsOf(outlet.lines);
  const place = placeOf(line);
  const faults: string[] = [];
  if (layout.policy.chains === 'never') faults.push(`${names(pedals)} share ${place}; the policy allows no chains`);
  if (line.taps[0].bank.power === 'AC')
    faults.push(`${names(pedals)} share ${place}, which gives AC; only DC may be chained`);
  const lonely = pedals.filter((pedal) => pedal.alone);
  if (lonely.length > 0)
    faults.push(`${place} feeds ${count(pedals.length, 'pedal')}; ${names(lonely)} must have an output alone`);
  return [...faults, ...leadFaults(outlet, layout)];
}

function leadFaults(outlet: Outlet, layout: Layout): readonly string[] {
  const bare = outlet.lines.filter((line) => line.feed.chain === null);
  const ids = chainIds(outlet);
  const place = placeOf(outlet.lines[0]);
  const faults: string[] = [];
  if (bare.length > 0)
    faults.push(`${names(pedalsOf(bare))} ${bare.length === 1 ? 'shares' : 'share'} ${place} without a chain lead`);
  if (ids.length > 1) faults.push(`${place} has ${ids.length} chain leads (${list(ids)}); it takes one`);
  return [...faults, ...ids.flatMap((id) => unfitLead(outlet, id, layout))];
}

function unfitLead(outlet: Outlet, id: PartId, layout: Layout): readonly string[] {
  const part = layout.parts.get(id);
  if (part === undefined) return [];
  if (part.role.kind !== 'chain') return [`${part.name} is no chain lead`];
  const [line] = outlet.lines;
  const faults: string[] = [];
  if (part.role.tails < outlet.lines.length)
    faults.push(
      `${part.name} has ${count(part.role.tails, 'tail')}; ${count(outlet.lines.length, 'pedal')} hang on ${placeOf(line)}`,
    );
  const { plug } = line.taps[0].bank;
  if (part.fits !== plug) faults.push(`${part.name} fits ${part.fits}; ${placeOf(line)} offers ${plug}`);
  return faults;
}

function needlessChain(outlet: Outlet): readonly string[] {
  return chainIds(outlet).map(
    (id) =>
      `${names(pedalsOf(outlet.lines))} is alone on ${placeOf(outlet.lines[0])} and takes no chain lead ("${id}")`,
  );
}

/** The different chain leads that an outlet's feeds name. */
export function chainIds(outlet: Outlet): readonly PartId[] {
  return [...new Set(outlet.lines.flatMap((line) => line.feed.chain ?? []))];
}

function chainLeadsAsAdapters(line: Line, layout: Layout): readonly Violation[] {
  return line.feed.adapters.flatMap((id) => {
    const part = layout.parts.get(id);
    if (part?.role.kind !== 'chain') return [];
    return [
      violation('chain', [line.pedal], `${part.name} is a chain lead; ${line.pedal.name} cannot use it as an adapter`),
    ];
  });
}
