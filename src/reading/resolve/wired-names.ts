import type { Report, Words } from '../../domain/finding.js';
import { quoted } from '../../domain/shown-text.js';
import type { Part } from '../../domain/part.js';
import { partId, pedalId, supplyId, type SupplyId } from '../../domain/quantities.js';
import type { RawWiredFeed } from '../schema/schema-board.js';
import type { Entry } from './entry.js';
import { ownBatteryId } from '../../domain/own-battery.js';
import { idNamed } from './names-for-ids.js';
import type { Connectable } from './connectable.js';
import { notOwned } from './resolve-owned.js';

/** An entry of a wiring with ids in place of names, and with the unit that it leaves out because there is but one. */
export function withIds(entry: Entry<RawWiredFeed>, connectable: Connectable, report: Report): Entry<RawWiredFeed> {
  const { pedal, supply, unit, chain, join, parts: adapters } = entry.fields;
  const { pedals, supplies, parts } = connectable;
  const pedalNamed = pedal === undefined ? undefined : idNamed(pedal, pedals);
  const supplyNamed = supply === undefined ? batteryIn(entry, pedalNamed, connectable) : idNamed(supply, supplies);
  const leavesUnit =
    supplyNamed !== undefined &&
    supplies.byId.has(supplyId(supplyNamed)) &&
    unit === undefined &&
    !entry.isBroken('unit');
  return {
    ...entry,
    fields: {
      ...entry.fields,
      ...(pedalNamed !== undefined && { pedal: pedalNamed }),
      ...(supplyNamed !== undefined && { supply: supplyNamed }),
      ...(leavesUnit && isOnlyUnit(entry, supplyId(supplyNamed), connectable, report) && { unit: 1 }),
      ...(chain !== undefined && { chain: idNamed(chain, parts) }),
      ...(join !== undefined && { join: { ...join, part: idNamed(join.part, parts) } }),
      ...(adapters !== undefined && { parts: adapters.map((part) => idNamed(part, parts)) }),
    },
  };
}

/** The set of batteries in the pedal, as a supply, where the entry names a battery and no supply. */
function batteryIn(
  { fields: { battery } }: Entry<RawWiredFeed>,
  pedal: string | undefined,
  { parts }: Connectable,
): string | undefined {
  if (battery === undefined || pedal === undefined) return undefined;
  return ownBatteryId(pedalId(pedal), partId(idNamed(battery, parts)));
}

/** Whether one unit is owned, so that an entry need not say which it means; else that is reported. */
function isOnlyUnit(
  entry: Entry<RawWiredFeed>,
  supply: SupplyId,
  { supplies, owned }: Connectable,
  report: Report,
): boolean {
  // What is owned, or that there is no such supply, is reported elsewhere.
  if (owned === null || !supplies.byId.has(supply)) return false;
  const units = owned.supplies.get(supply) ?? 0;
  if (units === 1) return true;
  const [field, words] =
    units === 0 ? (['supply', notOwned(supply)] as const) : (['unit', severalOwned(supply, units)] as const);
  report(entry.spotOf(field), words);
  return false;
}

const severalOwned = (supply: string, units: number): Words => ({
  message: `missing; ${units} units of ${quoted(supply)} are owned.`,
  remedy: `Add \`unit\`, a number from 1 to ${units}.`,
});

/** Reports chain and join leads among the adapters: they have places of their own, which all on that output share. */
export function reportLeadsAmongAdapters(entry: Entry<RawWiredFeed>, { parts }: Connectable, report: Report): void {
  for (const [index, id] of (entry.fields.parts ?? []).entries()) {
    const part = parts.byId.get(partId(id)) ?? null;
    if (part === null || part.role.kind === 'adapter') continue;
    report(
      { source: entry.source, path: [...entry.path, 'parts', index] },
      {
        message: `names ${quoted(part.name)}, a ${part.role.kind} lead; \`parts\` are adapters.`,
        remedy: placeOf(part, entry.fields.chain === id),
      },
    );
  }
}

function placeOf({ id, role }: Part, isNamed: boolean): string {
  if (isNamed) return 'Take it out of `parts`: `chain` names it already.';
  if (role.kind === 'join')
    return `Write \`join: {mode: ${role.mode}, part: ${id}}\` instead, with the two outputs under \`outputs\`.`;
  return `Write \`chain: ${id}\` instead.`;
}
