import type { Report } from '../../domain/finding.js';
import { inletId, isFed, unitOfInlet, type UnitRef } from '../../domain/inlet.js';
import { pedalId, supplyId } from '../../domain/quantities.js';
import { quoted } from '../../domain/shown-text.js';
import type { RawWiredFeed } from '../schema/schema-board.js';
import type { Connectable } from './connectable.js';
import type { Entry } from './entry.js';
import { idNamed } from './names-for-ids.js';
import { isDescribed, notOwned } from './resolve-owned.js';

/** An entry that is about the inlet of a fed supply: what stands in place of its pedal's id. */
export function withInlet(entry: Entry<RawWiredFeed>, connectable: Connectable, report: Report): Entry<RawWiredFeed> {
  const { inlet, inletUnit, pedal } = entry.fields;
  if (inlet === undefined) {
    reportNothingFed(entry, report);
    return entry;
  }
  if (pedal !== undefined || entry.isBroken('pedal'))
    report(entry.spotOf('inlet'), {
      message: 'stands beside `pedal`; an entry is about one pedal, or about the inlet of one fed supply.',
      remedy: 'Remove one of them.',
    });
  const supply = idNamed(inlet, connectable.supplies);
  const unit = inletUnit ?? onlyUnit(entry, supply, connectable, report);
  const standsFor = unit === null ? undefined : inletId({ supply: supplyId(supply), unit });
  const { pedal: _pedal, ...others } = entry.fields;
  return { ...entry, fields: { ...others, inlet: supply, ...(standsFor !== undefined && { pedal: standsFor }) } };
}

/** The unit whose inlet the entry is about; null where it is about a pedal, or where its unit was reported. */
export function inletIn({ fields: { inlet, pedal } }: Entry<RawWiredFeed>): UnitRef | null {
  return inlet === undefined || pedal === undefined ? null : unitOfInlet(pedalId(pedal));
}

/** False where the unit is none of the owned ones, which is reported. */
export function isOwnedInlet(entry: Entry<RawWiredFeed>, { owned }: Connectable, report: Report): boolean {
  const inlet = inletIn(entry);
  const units = inlet === null ? Infinity : (owned?.supplies.get(inlet.supply) ?? Infinity);
  if (inlet === null || inlet.unit <= units) return true;
  report(entry.spotOf('inletUnit'), {
    message: `found ${inlet.unit}, but only ${units} ${units === 1 ? 'unit' : 'units'} of ${quoted(inlet.supply)} ${units === 1 ? 'is' : 'are'} owned.`,
    remedy: `Write a number from 1 to ${units}, or add the unit to \`owned.supplies\`.`,
  });
  return false;
}

function reportNothingFed(entry: Entry<RawWiredFeed>, report: Report): void {
  if (entry.fields.pedal !== undefined || entry.isBroken('pedal') || entry.isBroken('inlet')) return;
  report(entry.spotOf('pedal'), {
    message: 'missing. Allowed: an id, or a name that only one thing has.',
    remedy: 'Add `pedal`, or `inlet` with the id of a supply that hangs on this output.',
  });
}

/** The only owned unit of a fed supply; null where that is not what it is, which is reported. */
function onlyUnit(entry: Entry<RawWiredFeed>, id: string, connectable: Connectable, report: Report): number | null {
  const { supplies, owned } = connectable;
  if (entry.isBroken('inletUnit')) return null;
  if (!isDescribed({ kind: 'supply', id, spot: entry.spotOf('inlet') }, connectable, report)) return null;
  const supply = supplies.byId.get(supplyId(id)) ?? null;
  if (supply !== null && !isFed(supply)) {
    report(entry.spotOf('inlet'), {
      message: `names ${quoted(supply.name)}, which has no inlet: it stands on no output of another supply.`,
      remedy: 'Write the id of a supply that has an `inlet`, or remove the entry.',
    });
    return null;
  }
  const units = owned?.supplies.get(supplyId(id)) ?? 0;
  if (supply === null || owned === null || units === 1) return 1;
  report(
    entry.spotOf(units === 0 ? 'inlet' : 'inletUnit'),
    units === 0
      ? notOwned(id)
      : {
          message: `missing; ${units} units of ${quoted(id)} are owned.`,
          remedy: `Add \`inletUnit\`, a number from 1 to ${units}.`,
        },
  );
  return null;
}
