import type { Numbers, Violation } from '../domain/violation.js';
import type { PartId } from '../domain/quantities.js';
import { pedalsOf, placeOf, type Layout, type Line, type OutletInUse } from './line.js';
import { counted, placeOfLine, violation } from './violation.js';
import { count, list, names } from './words.js';

/** Several pedals on one output use one chain lead with enough tails; DC only; none of them wants to be alone. */
export function chainViolations(layout: Layout): readonly Violation[] {
  return [
    ...layout.outlets.flatMap((outlet) => {
      const pedals = pedalsOf(outlet.lines);
      // Several pedals on joined outputs break the rule `join`.
      const joined = outlet.lines.some((line) => line.taps.length > 1);
      const faults = outlet.lines.length > 1 && !joined ? chainFaults(outlet, layout) : needlessChain(outlet);
      const place = placeOfLine(outlet.lines[0]);
      return faults.map(({ message, ...numbers }) => violation('chain', pedals, message, { place, ...numbers }));
    }),
    ...layout.lines.flatMap((line) => chainLeadsAsAdapters(line, layout)),
  ];
}

/** What is wrong, with the numbers where there are any. */
type Fault = { readonly message: string; readonly numbers?: Numbers };

function chainFaults(outlet: OutletInUse, layout: Layout): readonly Fault[] {
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
  return [...faults.map(told), ...leadFaults(outlet, layout)];
}

const told = (message: string): Fault => ({ message });

function leadFaults(outlet: OutletInUse, layout: Layout): readonly Fault[] {
  const bare = outlet.lines.filter((line) => line.feed.chain === null);
  const ids = chainIds(outlet);
  const place = placeOf(outlet.lines[0]);
  const faults: string[] = [];
  if (bare.length > 0)
    faults.push(`${names(pedalsOf(bare))} ${bare.length === 1 ? 'shares' : 'share'} ${place} without a chain lead`);
  if (ids.length > 1) faults.push(`${place} has ${ids.length} chain leads (${list(ids)}); it takes one`);
  return [...faults.map(told), ...ids.flatMap((id) => unfitLead(outlet, id, layout))];
}

function unfitLead(outlet: OutletInUse, id: PartId, layout: Layout): readonly Fault[] {
  const part = layout.parts.get(id);
  if (part === undefined) return [];
  if (part.role.kind !== 'chain') return [told(`${part.name} is no chain lead`)];
  const { tails } = part.role;
  const { length } = outlet.lines;
  const [line] = outlet.lines;
  const faults: Fault[] = [];
  if (tails < length)
    faults.push({
      message: `${part.name} has ${count(tails, 'tail')}; ${count(length, 'pedal')} hang on ${placeOf(line)}`,
      numbers: counted(length, tails),
    });
  const { plug } = line.taps[0].bank;
  if (part.fits !== plug) faults.push(told(`${part.name} fits ${part.fits}; ${placeOf(line)} offers ${plug}`));
  return faults;
}

function needlessChain(outlet: OutletInUse): readonly Fault[] {
  return chainIds(outlet).map((id) => {
    const alone = `${names(pedalsOf(outlet.lines))} is alone on ${placeOf(outlet.lines[0])}`;
    return told(`${alone} and takes no chain lead ("${id}")`);
  });
}

/** The different chain leads that an outlet's feeds name. */
export function chainIds(outlet: OutletInUse): readonly PartId[] {
  return [...new Set(outlet.lines.flatMap((line) => line.feed.chain ?? []))];
}

function chainLeadsAsAdapters(line: Line, layout: Layout): readonly Violation[] {
  return line.feed.adapters.flatMap((id) => {
    const part = layout.parts.get(id);
    if (part?.role.kind !== 'chain') return [];
    const message = `${part.name} is a chain lead; ${line.pedal.name} cannot use it as an adapter`;
    return [violation('chain', [line.pedal], message, { place: placeOfLine(line) })];
  });
}
