import type { Board } from '../../domain/board.js';
import { entryAt, type Sheet } from './entry.js';
import type { Report, Spot, Words } from '../../domain/finding.js';
import { didYouMean } from '../../domain/near-spelling.js';
import { partId, supplyId, type PartId, type SupplyId } from '../../domain/quantities.js';
import { idNamed, oneOfThem, severalCalled } from './names-for-ids.js';
import type { Shelf } from './resolve-for-sale.js';
import type { RawOwned } from '../schema/schema-board.js';
import { quoted } from '../../domain/shown-text.js';

/** All that the gear and the catalogue describe. */
type Shelves = {
  readonly supplies: Shelf<SupplyId, unknown>;
  readonly parts: Shelf<PartId, unknown>;
  /** False when no catalogue is given: then only the gear describes anything. */
  readonly hasCatalogue: boolean;
};

/** How many of each thing are owned; null when an id was reported, or cannot be judged because of something reported. */
export function resolveOwned(sheet: Sheet, shelves: Shelves, report: Report): Board['owned'] | null {
  const entry = entryAt<RawOwned>(sheet, ['owned']);
  let allDescribed = !(['supplies', 'parts', 'batteries'] as const).some((list) => entry.isBroken(list));
  const supplies = new Map<SupplyId, number>();
  for (const [index, named] of (entry.fields.supplies ?? []).entries()) {
    const id = idNamed(named, shelves.supplies);
    const spot = { source: sheet.source, path: ['owned', 'supplies', index] };
    allDescribed = isDescribed({ kind: 'supply', id, spot }, shelves, report) && allDescribed;
    supplies.set(supplyId(id), (supplies.get(supplyId(id)) ?? 0) + 1);
  }
  const parts = new Map<PartId, number>();
  for (const list of ['parts', 'batteries'] as const)
    for (const [named, units] of Object.entries(entry.fields[list] ?? {})) {
      const id = idNamed(named, shelves.parts);
      const spot = { source: sheet.source, path: ['owned', list, named] };
      const kind = list === 'parts' ? 'part' : 'battery';
      allDescribed = isDescribed({ kind, id, spot, point: 'key' }, shelves, report) && allDescribed;
      parts.set(partId(id), (parts.get(partId(id)) ?? 0) + units);
    }
  return allDescribed ? { supplies, parts } : null;
}

/** Of a supply that is plugged today, by its id. */
export const notOwned = (id: string): Words => ({
  message: `names ${quoted(id)}, of which no unit is owned; what is plugged today has to be.`,
  remedy: 'If it is yours, add the id to `owned.supplies`, one entry a unit; else remove the entry.',
});

/** Whether the gear or the catalogue describes the id; reports it when neither does. */
export function isDescribed(
  named: {
    readonly kind: 'supply' | 'part' | 'battery';
    readonly id: string;
    readonly spot: Spot;
    readonly point?: 'key';
  },
  shelves: Shelves,
  report: Report,
): boolean {
  const { kind, id, spot } = named;
  const { hasCatalogue } = shelves;
  const shelf: Shelf<string, unknown> = kind === 'supply' ? shelves.supplies : shelves.parts;
  if (shelf.byId.has(id)) return true;
  if (!shelf.complete) return false;
  const nowhere = hasCatalogue
    ? 'neither the gear nor the catalogue describes'
    : 'the gear does not describe, and no catalogue is given';
  const words = (): Words => ({
    message: `names the ${kind} ${quoted(id)}, which ${severalCalled(id, shelf) ?? nowhere}.`,
    remedy:
      oneOfThem(id, shelf) ??
      didYouMean(id, shelf.byId.keys()) ??
      `Describe it under \`gear\`, or ${hasCatalogue ? 'mend the id' : 'give the catalogue that lists it'}.`,
  });
  report(spot, words, named.point);
  return false;
}
