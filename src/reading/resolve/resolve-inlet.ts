import type { Report } from '../../domain/finding.js';
import type { AcceptedVolts, Polarity, Power } from '../../domain/pedal.js';
import type { Source } from '../../domain/source.js';
import type { RawInlet } from '../schema/schema-inlet.js';
import type { RawSupply } from '../schema/schema-supply.js';
import { entryAt, type Entry, type Sheet } from './entry.js';
import { reportPolarityOfAlternating, safetyFigure } from './resolve-assumed.js';
import { microampsOf, millivoltsOf } from './resolve-quantity.js';
import { reportsRepeat, resolveRange } from './resolve-volts.js';

/** What a supply with an inlet of its own stands on; nothing else may be stated that it stands on. */
export function resolveFed(sheet: Sheet, supply: Entry<RawSupply>, report: Report): Source | 'reported' {
  const others = (['mains', 'charge'] as const).filter((field) => supply.fields[field] !== undefined);
  for (const field of others)
    report(supply.spotOf(field), {
      message: 'stands beside `inlet`; a fed supply stands on an output of another one, and on nothing else.',
      remedy: 'Remove one of them.',
    });
  const entry = entryAt<RawInlet>(sheet, [...supply.path, 'inlet']);
  const accepts = acceptedBy(entry, report);
  const polarity = polarityOf(entry, supply.fields.name, report);
  const { power, plug, milliamps, startup } = entry.fields;
  if (others.length > 0 || accepts === null || polarity === 'reported' || entry.isBroken('startup')) return 'reported';
  if (power === undefined || plug === undefined || milliamps === undefined) return 'reported';
  return {
    kind: 'fed',
    inlet: {
      power,
      plug,
      polarity,
      accepts,
      microamps: microampsOf(milliamps),
      startup: startup === undefined ? null : microampsOf(startup),
    },
  };
}

function acceptedBy(entry: Entry<RawInlet>, report: Report): AcceptedVolts | null {
  const { volts } = entry.fields;
  if (volts === undefined) return null;
  if (typeof volts === 'number') return { kind: 'listed', millivolts: [millivoltsOf(volts)] };
  if ('from' in volts) return resolveRange(volts, entry, 'volts', report);
  return reportsRepeat(volts, entry, 'volts', report) ? null : { kind: 'listed', millivolts: volts.map(millivoltsOf) };
}

function polarityOf(entry: Entry<RawInlet>, whose: string | undefined, report: Report): Polarity | null | 'reported' {
  const power: Power | undefined = entry.fields.power;
  if (power === undefined) return 'reported';
  if (power === 'AC') {
    reportPolarityOfAlternating(entry, 'inlet', report);
    return null;
  }
  const words = { whose, allowed: 'centre-negative or centre-positive', readOff: "the supply's label" };
  return safetyFigure<RawInlet, RawInlet, 'polarity'>(entry, null, 'polarity', words, report)?.value ?? 'reported';
}
