import type { Entry } from './entry.js';
import type { Report } from '../../domain/finding.js';
import { decimalOfThousandths, type Millivolts } from '../../domain/quantities.js';
import { microampsOf, millivoltsOf } from './resolve-quantity.js';
import type { RawSetting } from '../schema/schema-supply.js';
import type { Setting } from '../../domain/supply.js';

/** Whether a supply holds its volts; `unstated` only when it has no DC output, where that may stay open. */
export type Regulation = 'regulated' | 'unregulated' | 'unstated';

/** The settings of a bank; null when one of them, or the supply's regulation, was reported. */
export function resolveSettings(
  entries: readonly Entry<RawSetting>[],
  regulation: Regulation | null,
  report: Report,
): readonly Setting[] | null {
  reportRepeatedVolts(entries, report);
  const settings = entries.map((entry) => resolveSetting(entry, regulation, report));
  return settings.every((setting) => setting !== null) && settings.length > 0 ? settings : null;
}

function resolveSetting(entry: Entry<RawSetting>, regulation: Regulation | null, report: Report): Setting | null {
  const { volts, milliamps, openCircuitVolts } = entry.fields;
  if (regulation === 'unregulated' && openCircuitVolts === undefined && !entry.isBroken('openCircuitVolts')) {
    report(entry.spotOf('openCircuitVolts'), {
      message: 'missing; an output that is not regulated gives more volts without a load, and they bear on safety.',
      remedy: "Measure them or read them off the supply's data sheet, and add `openCircuitVolts` to this setting.",
    });
    return null;
  }
  if (volts === undefined) return null;
  const millivolts = millivoltsOf(volts);
  const openCircuit = openCircuitVolts === undefined ? null : millivoltsOf(openCircuitVolts);
  if (openCircuit !== null && !isPlausible(entry, millivolts, openCircuit, regulation, report)) return null;
  if (milliamps === undefined || regulation === null) return null;
  return { millivolts, rating: microampsOf(milliamps), openCircuit: regulation === 'regulated' ? null : openCircuit };
}

function isPlausible(
  entry: Entry<RawSetting>,
  millivolts: Millivolts,
  openCircuit: Millivolts,
  regulation: Regulation | null,
  report: Report,
): boolean {
  const found = `found ${decimalOfThousandths(openCircuit)}`;
  const loaded = `the setting's ${decimalOfThousandths(millivolts)} V`;
  if (openCircuit < millivolts) {
    report(entry.spotOf('openCircuitVolts'), {
      message: `${found}, below ${loaded}; without a load an output never gives less.`,
      remedy: 'Measure again without a load, or mend the volts of the setting.',
    });
    return false;
  }
  if (regulation === 'regulated' && openCircuit > millivolts) {
    report(entry.spotOf('openCircuitVolts'), {
      message: `${found}, above ${loaded}, though the supply is regulated and so holds its volts.`,
      remedy: 'Write `regulated: false` for this supply, or measure again without a load.',
    });
    return false;
  }
  return true;
}

function reportRepeatedVolts(entries: readonly Entry<RawSetting>[], report: Report): void {
  const seen = new Map<number, Entry<RawSetting>>();
  for (const entry of entries) {
    const { volts } = entry.fields;
    if (volts === undefined) continue;
    const earlier = seen.get(volts);
    if (earlier === undefined) {
      seen.set(volts, entry);
      continue;
    }
    report(entry.spotOf('volts'), (lineOf) => ({
      message: `found ${volts}, as on ${lineOf(earlier.spotOf('volts'))}; a bank has one setting for each voltage.`,
      remedy: 'Keep the setting that the label gives, and remove the other one.',
    }));
  }
}
