import { nothingMoreStated, type Pedal } from '../../domain/pedal.js';
import { pedalId, type PedalId } from '../../domain/quantities.js';
import type { Report } from '../../domain/finding.js';
import type { RawSpare } from '../schema/schema-board.js';
import type { RawPedalAssumptions } from '../schema/schema-pedal.js';
import { entriesAt, entryAt, type Entry, type Sheet } from './entry.js';
import type { Found } from './resolve-for-sale.js';
import { reportTaken, type SeenIds } from './resolve-id.js';
import { microampsOf, millivoltsOf } from './resolve-quantity.js';

/**
 * The outputs that the policy keeps for pedals to come, each as a pedal by itself on an output of that much: `spare-1`,
 * `spare-2` and so on, with what the board assumes of its pedals.
 */
export function resolveSpares(sheet: Sheet, seen: SeenIds, report: Report): readonly Found<PedalId, Pedal>[] {
  const entries = entriesAt<RawSpare>(sheet, ['policy', 'spare']);
  if (entries.length === 0) return [];
  const inlet = assumedInlet(entryAt<RawPedalAssumptions>(sheet, ['assume']), report);
  return entries
    .flatMap((entry) => Array.from({ length: entry.fields.outputs ?? 1 }, () => entry))
    .map((entry, index) => {
      const id = `spare-${index + 1}`;
      reportTaken(id, seen, report, (taken) => ({
        message: `is the id ${taken}, which a spare output of the policy has.`,
        remedy: 'Give the pedal another id.',
      }));
      return { id: pedalId(id), thing: inlet === null ? null : spareOf(entry, index + 1, id, inlet) };
    });
}

type Inlet = Pick<Pedal, 'power' | 'polarity' | 'inlet' | 'ground'>;

function assumedInlet(assumptions: Entry<RawPedalAssumptions>, report: Report): Inlet | null {
  const { power, polarity, inlet, ground } = assumptions.fields;
  const needed = ['power', ...(power === 'AC' ? [] : (['polarity'] as const)), 'inlet', 'ground'] as const;
  const missing = needed.filter((field) => assumptions.fields[field] === undefined && !assumptions.isBroken(field));
  for (const field of missing)
    report(assumptions.spotOf(field), {
      message: 'missing; the spare outputs of the policy are planned for pedals of which this is assumed.',
      remedy: `Add \`${field}\` to \`assume\`, or take \`spare\` out of the policy.`,
    });
  if (power === undefined || inlet === undefined || ground === undefined) return null;
  if (power === 'AC') return { power, polarity: null, inlet, ground };
  return polarity === undefined ? null : { power, polarity, inlet, ground };
}

function spareOf({ fields }: Entry<RawSpare>, number: number, id: string, inlet: Inlet): Pedal | null {
  const { volts, milliamps } = fields;
  if (volts === undefined || milliamps === undefined) return null;
  return {
    ...inlet,
    id: pedalId(id),
    name: `Spare ${number}`,
    accepts: { kind: 'listed', millivolts: [millivoltsOf(volts)] },
    draw: { kind: 'flat', microamps: microampsOf(milliamps) },
    ...nothingMoreStated,
    alone: true,
    kept: 'spare',
  };
}
