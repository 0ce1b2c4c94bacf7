import type { WiredFeed, WiredInlet } from '../../domain/board.js';
import { entriesAt, type Entry, type Sheet } from './entry.js';
import type { Report } from '../../domain/finding.js';
import type { Pedal } from '../../domain/pedal.js';
import { didYouMean } from '../../domain/near-spelling.js';
import { partId, pedalId, supplyId, type Millivolts, type PedalId } from '../../domain/quantities.js';
import { oneOfThem, severalCalled } from './names-for-ids.js';
import type { Shelf } from './resolve-for-sale.js';
import { isDescribed, notOwned } from './resolve-owned.js';
import { millivoltsOf } from './resolve-quantity.js';
import { reportTails } from './report-tails.js';
import { reportUnknownVolts } from './resolve-wired-volts.js';
import type { Connectable } from './connectable.js';
import { reportLeadsAmongAdapters, withIds } from './wired-names.js';
import { inletIn, isOwnedInlet, withInlet } from './wired-inlets.js';
import { wiredVolts, type RawWiredFeed } from '../schema/schema-board.js';
import { wordings } from '../schema/schema-fields.js';
import { quoted } from '../../domain/shown-text.js';
import { isOfOnePedal } from '../../domain/source.js';
import type { Supply } from '../../domain/supply.js';

/** How the board is plugged today, the inlets of fed supplies too; null when something about it was reported. */
export function resolveWiring(
  sheet: Sheet,
  connectable: Connectable,
  report: Report,
): { readonly wiring: readonly WiredFeed[]; readonly inlets: readonly WiredInlet[] } | null {
  const entries = entriesAt<RawWiredFeed>(sheet, ['wiring']).map((entry) =>
    withIds(withInlet(entry, connectable, report), connectable, report),
  );
  reportRepeatedPedals(entries, report);
  reportMixedLeads(entries, report);
  reportTails(entries, report);
  const feeds = entries.map((entry) => resolveEntry(entry, connectable, report));
  if (!feeds.every((feed) => feed !== null)) return null;
  return { wiring: feeds.filter((feed) => !isOfInlet(feed)), inlets: feeds.filter(isOfInlet) };
}

const isOfInlet = (feed: WiredFeed | WiredInlet): feed is WiredInlet => 'inletOf' in feed;

function resolveEntry(
  entry: Entry<RawWiredFeed>,
  connectable: Connectable,
  report: Report,
): WiredFeed | WiredInlet | null {
  const feed = resolveWiredFeed(entry, connectable, report);
  if (!isOwnedInlet(entry, connectable, report) || feed === null) return null;
  const inletOf = inletIn(entry);
  return inletOf === null ? feed : { ...feed, inletOf };
}

function resolveWiredFeed(entry: Entry<RawWiredFeed>, connectable: Connectable, report: Report): WiredFeed | null {
  reportUnknownPedal(entry, connectable.pedals, report);
  reportKept(entry, connectable.pedals, report);
  reportUnitOrOutputs(entry, connectable, report);
  // What feeds the pedal is not known then, and that has been reported: nothing more can be asked of the entry.
  return lacksBattery(entry, connectable) ? null : resolvePlugged(entry, connectable, report);
}

function resolvePlugged(entry: Entry<RawWiredFeed>, connectable: Connectable, report: Report): WiredFeed | null {
  const { fields } = entry;
  reportUnknownParts(entry, connectable, report);
  reportLeadsAmongAdapters(entry, connectable, report);
  const own = ownVolts(entry, connectable);
  const outputs = outputsOf(entry, own !== null, report);
  const isVague = own === null && reportMissingVolts(entry, report);
  if (fields.pedal === undefined || fields.supply === undefined || fields.unit === undefined) return null;
  const millivolts = fields.volts === undefined ? own : millivoltsOf(fields.volts);
  if (isVague || millivolts === null || outputs === null) return null;
  return {
    pedal: pedalId(fields.pedal),
    supply: supplyId(fields.supply),
    unit: fields.unit,
    outputs,
    millivolts,
    join: fields.join === undefined ? null : { mode: fields.join.mode, part: partId(fields.join.part) },
    chain: fields.chain === undefined ? null : partId(fields.chain),
    adapters: (fields.parts ?? []).map(partId),
    ...(fields.lead === undefined ? {} : { lead: fields.lead }),
    ...(fields.tail === undefined ? {} : { tail: fields.tail }),
    ...ownMark(own, connectable.supplies.byId.get(supplyId(fields.supply)) ?? null),
  };
}

/** What the entry leaves out because it is known of what belongs to one pedal. */
function ownMark(own: Millivolts | null, supply: Supply | null): Pick<WiredFeed, 'own' | 'battery'> {
  if (own === null) return {};
  return supply?.source.kind === 'battery' ? { own: true, battery: supply.source.battery } : { own: true };
}

/** The adapter that a pedal came with has one output. */
const outputsOf = (entry: Entry<RawWiredFeed>, isOwn: boolean, report: Report): readonly number[] | null =>
  isOwn && saysNoOutput(entry) ? [1] : resolveOutputs(entry, report);

const saysNoOutput = ({ fields, isBroken }: Entry<RawWiredFeed>): boolean =>
  (['output', 'outputs', 'join'] as const).every((field) => fields[field] === undefined && !isBroken(field));

/** What the adapter that a pedal came with is planned to give; null for any other supply. */
function ownVolts({ fields }: Entry<RawWiredFeed>, { supplies }: Connectable): Millivolts | null {
  const supply = fields.supply === undefined ? null : (supplies.byId.get(supplyId(fields.supply)) ?? null);
  const isOwn = supply !== null && isOfOnePedal(supply.source);
  return isOwn ? (supply.banks[0]?.settings[0]?.millivolts ?? null) : null;
}

function reportMissingVolts(entry: Entry<RawWiredFeed>, report: Report): boolean {
  if (entry.fields.volts !== undefined || entry.isBroken('volts')) return false;
  report(entry.spotOf('volts'), () => ({
    message: `missing. Allowed: ${wordings.get(wiredVolts)?.allowed ?? ''}.`,
    remedy: 'Add `volts`.',
  }));
  return true;
}

function reportRepeatedPedals(entries: readonly Entry<RawWiredFeed>[], report: Report): void {
  const seen = new Map<string, Entry<RawWiredFeed>>();
  for (const entry of entries) {
    const { pedal } = entry.fields;
    if (pedal === undefined) continue;
    const earlier = seen.get(pedal);
    if (earlier === undefined) {
      seen.set(pedal, entry);
      continue;
    }
    const { inlet } = entry.fields;
    const field = inlet === undefined ? 'pedal' : 'inlet';
    report(entry.spotOf(field), (lineOf) => ({
      message: `found ${quoted(inlet ?? pedal)}, which ${lineOf(earlier.spotOf(field))} plugs already; ${inlet === undefined ? 'a pedal' : 'an inlet'} has one feed.`,
      remedy: 'Remove one of the two entries.',
    }));
  }
}

/** One lead has one number: no other output may have it, and all pedals on one output share it. */
function reportMixedLeads(entries: readonly Entry<RawWiredFeed>[], report: Report): void {
  const numbered = entries.flatMap((entry) => {
    const { supply, unit, output, outputs, lead } = entry.fields;
    const place = JSON.stringify([supply, unit, outputs ?? [output]]);
    return lead === undefined ? [] : [{ entry, lead, place }];
  });
  for (const [index, { entry, lead, place }] of numbered.entries()) {
    const earlier = numbered.slice(0, index).find((other) => (other.lead === lead) !== (other.place === place));
    if (earlier === undefined) continue;
    report(entry.spotOf('lead'), (lineOf) => {
      const there = lineOf(earlier.entry.spotOf('lead'));
      return earlier.lead === lead
        ? {
            message: `found ${lead}, which ${there} gives to the lead of another output.`,
            remedy: 'Write the number that stands on the lead, or remove it: a new lead gets a new number.',
          }
        : {
            message: `found ${lead}, and ${there} says ${earlier.lead} of the same output; a chain lead has one number.`,
            remedy: 'Write the number that stands on the lead in both.',
          };
    });
  }
}

function reportUnknownPedal(entry: Entry<RawWiredFeed>, pedals: Shelf<PedalId, unknown>, report: Report): void {
  const { pedal, inlet } = entry.fields;
  if (inlet !== undefined || pedal === undefined || pedals.byId.has(pedalId(pedal)) || !pedals.complete) return;
  report(entry.spotOf('pedal'), () => ({
    message: `names the pedal ${quoted(pedal)}, which ${severalCalled(pedal, pedals) ?? "is not among the board's pedals"}.`,
    remedy:
      oneOfThem(pedal, pedals) ??
      didYouMean(pedal, pedals.byId.keys()) ??
      'Write the id of a pedal of this board, or remove the entry.',
  }));
}

/** A kept place is planned, and never plugged. */
function reportKept(entry: Entry<RawWiredFeed>, pedals: Shelf<PedalId, Pedal>, report: Report): void {
  const { pedal: id } = entry.fields;
  const pedal = id === undefined ? undefined : pedals.byId.get(pedalId(id));
  if (pedal === undefined || pedal === null || pedal.kept === null) return;
  const words = {
    later: { why: 'is bought later', how: 'or take `later` out of the pedal when it is there' },
    unread: { why: 'has a label that nobody has read', how: 'and unplug it; or write what its label says' },
    spare: { why: 'is a spare output', how: 'or describe the pedal that is plugged there' },
  }[pedal.kept];
  report(entry.spotOf('pedal'), {
    message: `plugs ${quoted(pedal.name)}, which ${words.why}: its place is only kept.`,
    remedy: `Remove the entry, ${words.how}.`,
  });
}

function reportUnitOrOutputs(entry: Entry<RawWiredFeed>, connectable: Connectable, report: Report): void {
  const { supply: id, unit } = entry.fields;
  if (id === undefined || lacksBattery(entry, connectable)) {
    reportNoSource(entry, connectable, report);
    return;
  }
  const { supplies, owned } = connectable;
  if (!isDescribed({ kind: 'supply', id, spot: entry.spotOf('supply') }, connectable, report)) return;
  const units = owned?.supplies.get(supplyId(id)) ?? 0;
  if (unit !== undefined && owned !== null && unit > units) {
    const few = {
      message: `found ${unit}, but only ${units} ${units === 1 ? 'unit' : 'units'} of ${quoted(id)} ${units > 1 ? 'are' : 'is'} owned.`,
      remedy: `Write a number from 1 to ${units}, or add the unit to \`owned.supplies\`.`,
    };
    report(entry.spotOf('unit'), units === 0 ? notOwned(id) : few);
  }
  const supply = supplies.byId.get(supplyId(id)) ?? null;
  if (supply === null) return;
  reportMissingOutputs(entry, supply, report);
  reportUnknownVolts(entry, supply, report);
}

/** Whether it names a battery that its pedal does not take, or one beside a supply. */
const lacksBattery = ({ fields: { supply, battery } }: Entry<RawWiredFeed>, { supplies }: Connectable): boolean =>
  battery !== undefined && supply !== undefined && supplies.byId.get(supplyId(supply))?.source.kind !== 'battery';

function reportNoSource(entry: Entry<RawWiredFeed>, { supplies }: Connectable, report: Report): void {
  const { battery, supply } = entry.fields;
  if (battery !== undefined && supply !== undefined && supplies.byId.has(supplyId(supply)))
    report(entry.spotOf('battery'), {
      message: 'stands beside `supply`; a pedal runs on one of them.',
      remedy: 'Remove the one that is not plugged.',
    });
  else if (battery !== undefined) reportNoSuchBattery(entry, battery, report);
  if (battery !== undefined || entry.isBroken('supply') || entry.isBroken('battery')) return;
  report(entry.spotOf('supply'), () => ({
    message: 'missing. Allowed: an id, or a name that only one thing has.',
    remedy: 'Add `supply`.',
  }));
}

function reportNoSuchBattery(entry: Entry<RawWiredFeed>, battery: string, report: Report): void {
  report(entry.spotOf('battery'), {
    message: `names ${quoted(battery)}, which is no battery that the pedal takes.`,
    remedy: 'Write the id of a battery of the type that the pedal states under `battery`.',
  });
}

function reportMissingOutputs(entry: Entry<RawWiredFeed>, supply: Supply, report: Report): void {
  const last = supply.banks.reduce((outputs, bank) => outputs + bank.outputs, 0);
  const { output, outputs } = entry.fields;
  const named = [
    ...(output === undefined ? [] : [{ number: output, spot: entry.spotOf('output') }]),
    ...(outputs ?? []).map((number, index) => ({
      number,
      spot: { source: entry.source, path: [...entry.path, 'outputs', index] },
    })),
  ];
  for (const { number, spot } of named) {
    if (number <= last) continue;
    report(spot, {
      message: `found ${number}, but ${quoted(supply.id)} has ${last === 1 ? 'one output' : `the outputs 1 to ${last}`}.`,
      remedy: `Write ${last === 1 ? '1' : `a number from 1 to ${last}`}.`,
    });
  }
}

function reportUnknownParts(entry: Entry<RawWiredFeed>, connectable: Connectable, report: Report): void {
  const { chain, join, parts } = entry.fields;
  const at = (...steps: (string | number)[]) => ({ source: entry.source, path: [...entry.path, ...steps] });
  const named = [
    ...(chain === undefined ? [] : [{ id: chain, spot: at('chain') }]),
    ...(join === undefined ? [] : [{ id: join.part, spot: at('join', 'part') }]),
    ...(parts ?? []).map((id, index) => ({ id, spot: at('parts', index) })),
  ];
  for (const { id, spot } of named) isDescribed({ kind: 'part', id, spot }, connectable, report);
}

/** One output, or two that are joined, in rising order; null when that was reported. */
function resolveOutputs(entry: Entry<RawWiredFeed>, report: Report): readonly number[] | null {
  const { output, outputs, join } = entry.fields;
  if (entry.isBroken('output') || entry.isBroken('outputs') || entry.isBroken('join')) return null;
  const refuse = (field: 'output' | 'outputs' | 'join', message: string, remedy: string): null => {
    report(entry.spotOf(field), { message, remedy });
    return null;
  };
  if (output !== undefined && outputs !== undefined)
    return refuse('outputs', 'stands beside `output`; only one of the two is allowed.', 'Remove one of them.');
  if (output !== undefined && join !== undefined)
    return refuse('join', 'stated for one output; a join takes two.', 'Write `outputs: [1, 2]`, or remove `join`.');
  if (output !== undefined) return [output];
  if (outputs === undefined)
    return refuse('output', 'missing; allowed is the number of one output, or `outputs` with two.', 'Add `output`.');
  if (join === undefined)
    return refuse('join', 'missing; two outputs need it.', 'Add `join: {mode: …, part: …}`, or write `output`.');
  const [first, second] = outputs;
  if (first === undefined || second === undefined || first === second)
    return refuse('outputs', 'names one output twice; a join takes two outputs.', 'Write two different numbers.');
  return first < second ? [first, second] : [second, first];
}
