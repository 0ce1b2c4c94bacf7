import type { Entry } from './entry.js';
import type { Report } from '../../domain/finding.js';
import { isAccepted, type AcceptedVolts, type Draw } from '../../domain/pedal.js';
import { circuitKinds } from '../../domain/circuit-kinds.js';
import { decimalOfThousandths, type Microamps, type Millivolts } from '../../domain/quantities.js';
import { microampsOf, millivoltsOf } from './resolve-quantity.js';
import { wordings } from '../schema/schema-fields.js';
import { figuresOfPedal, type RawPedal, type RawPedalAssumptions } from '../schema/schema-pedal.js';
import { quoted } from '../../domain/shown-text.js';

/** The volts a pedal accepts and what it draws at them; null when one of the two was reported. */
export function resolveVoltsAndDraw(
  entry: Entry<RawPedal>,
  assumptions: Entry<RawPedalAssumptions>,
  report: Report,
): { readonly accepts: AcceptedVolts; readonly draw: Draw } | null {
  const isMissing = reportMissingFigures(entry, report);
  const stated = resolveStatedVolts(entry, assumptions, report);
  const draw = resolveDraw(entry, report);
  if (isMissing) return null;
  if (stated === null || draw === null) return null;
  if (draw.kind === 'flat') return { accepts: stated, draw };
  const kept = keptVolts(stated, draw.microamps);
  if (kept.length === 0) {
    report(entry.spotOf('milliamps'), {
      message:
        `has figures for ${voltsText([...draw.microamps.keys()])}, and volts are ${acceptedText(stated)}: ` +
        'no voltage is in both, so the pedal would accept none.',
      remedy: 'Give a figure for each of the volts that the pedal accepts.',
    });
    return null;
  }
  return {
    accepts: { kind: 'listed', millivolts: kept.map(([volts]) => volts) },
    draw: { kind: 'per voltage', microamps: new Map(kept) },
  };
}

/** Reports volts or a draw that are left out; only a pedal with an adapter of its own can do without. */
function reportMissingFigures(entry: Entry<RawPedal>, report: Report): boolean {
  const missing = (['volts', 'milliamps'] as const).filter(
    (field) => entry.fields[field] === undefined && !entry.isBroken(field),
  );
  for (const field of missing)
    report(entry.spotOf(field), () => ({
      message: `missing. Allowed: ${wordings.get(figuresOfPedal[field])?.allowed ?? ''}.`,
      remedy: `Add \`${field}\`.`,
    }));
  return missing.length > 0;
}

function resolveStatedVolts(
  entry: Entry<RawPedal>,
  assumptions: Entry<RawPedalAssumptions>,
  report: Report,
): AcceptedVolts | null {
  const { volts } = entry.fields;
  if (volts === undefined) return null;
  if (volts === 'unknown') return plannedVolts(entry, assumptions, report);
  if (typeof volts === 'number') return { kind: 'listed', millivolts: [millivoltsOf(volts)] };
  if ('from' in volts) return resolveRange(volts, entry, 'volts', report);
  return reportsRepeat(volts, entry, 'volts', report) ? null : { kind: 'listed', millivolts: volts.map(millivoltsOf) };
}

/** Whether some volts of a list are there twice, which is reported. */
export function reportsRepeat(
  volts: readonly number[],
  entry: Pick<Entry<unknown>, 'source' | 'path'>,
  field: string,
  report: Report,
): boolean {
  const repeated = volts.findIndex((value, index) => volts.indexOf(value) < index);
  if (repeated < 0) return false;
  report(
    { source: entry.source, path: [...entry.path, field, repeated] },
    {
      message: `found ${volts[repeated]} a second time; each voltage is listed once.`,
      remedy: 'Remove one of them.',
    },
  );
  return true;
}

/** What to plan the place of a pedal with whose volts nobody has read. */
function plannedVolts(
  entry: Entry<RawPedal>,
  assumptions: Entry<RawPedalAssumptions>,
  report: Report,
): AcceptedVolts | null {
  const { volts } = assumptions.fields;
  if (volts !== undefined) return { kind: 'listed', millivolts: [millivoltsOf(volts)] };
  if (!assumptions.isBroken('volts')) reportNothingToPlanWith(entry, 'volts', report);
  return null;
}

/** An unknown figure of which the board's `assume` block says nothing. */
export function reportNothingToPlanWith(
  entry: Entry<RawPedal>,
  field: 'volts' | 'power' | 'inlet',
  report: Report,
): void {
  const { name } = entry.fields;
  const example = { volts: '9', power: 'DC', inlet: 'barrel-2.1' }[field];
  report(entry.spotOf(field), {
    message: `unknown${name === undefined ? '' : ` for ${quoted(name)}`}, and nothing is assumed to plan a place for it with.`,
    remedy: `Add to \`assume\` what is likely, for example \`${field}: ${example}\`; the pedal stays unplugged until its label has been read.`,
  });
}

/** A range whose ends are in order; null when they are not, which is reported. */
export function resolveRange<Field extends string>(
  range: { readonly from: number; readonly to: number },
  entry: Entry<Readonly<Partial<Record<Field, unknown>>>>,
  field: Field,
  report: Report,
): { readonly kind: 'range'; readonly from: Millivolts; readonly to: Millivolts } | null {
  if (range.from > range.to) {
    report(entry.spotOf(field), {
      message: `goes from ${range.from} to ${range.to}; \`from\` must not be above \`to\`.`,
      remedy: `Write {from: ${range.to}, to: ${range.from}}.`,
    });
    return null;
  }
  return { kind: 'range', from: millivoltsOf(range.from), to: millivoltsOf(range.to) };
}

function resolveDraw(entry: Entry<RawPedal>, report: Report): Draw | null {
  const { milliamps } = entry.fields;
  if (milliamps === undefined) return null;
  if (milliamps === 'unknown') return plannedDraw(entry, report);
  if (typeof milliamps === 'number') return { kind: 'flat', microamps: microampsOf(milliamps) };
  const figures = new Map<Millivolts, Microamps>();
  for (const [key, value] of Object.entries(milliamps)) {
    const volts = millivoltsOf(Number(key));
    if (figures.has(volts)) {
      const message = `gives a second figure for ${decimalOfThousandths(volts)} V; each voltage has one.`;
      const remedy = 'Keep the one that the label gives.';
      report({ source: entry.source, path: [...entry.path, 'milliamps', key] }, { message, remedy }, 'key');
      return null;
    }
    figures.set(volts, microampsOf(value));
  }
  if (figures.size === 0) {
    report(entry.spotOf('milliamps'), {
      message: 'found an empty map; it needs a figure for each of the volts, as in {9: 300, 12: 230}.',
      remedy: 'Write the milliamps as one number, or one for each voltage.',
    });
    return null;
  }
  return { kind: 'per voltage', microamps: figures };
}

/** The planning figure of the kind of circuit. */
function plannedDraw(entry: Entry<RawPedal>, report: Report): Draw | null {
  const { circuit, name } = entry.fields;
  const kind = circuitKinds.find(({ key }) => key === circuit);
  if (kind !== undefined) return { kind: 'flat', microamps: microampsOf(kind.planningMilliamps) };
  if (entry.isBroken('circuit')) return null;
  report(entry.spotOf('circuit'), {
    message: `missing${name === undefined ? '' : ` for ${quoted(name)}`}, whose draw is unknown: what kind of circuit is it? Allowed: ${circuitKinds.map(({ key }) => key).join(', ')}.`,
    remedy:
      'Add the kind, for example `circuit: drive`; what such circuits usually draw is then planned with, as a guess.',
  });
  return null;
}

function keptVolts(
  stated: AcceptedVolts,
  figures: ReadonlyMap<Millivolts, Microamps>,
): readonly (readonly [Millivolts, Microamps])[] {
  if (stated.kind === 'range') {
    return [...figures].filter(([volts]) => isAccepted(stated, volts)).sort(([first], [second]) => first - second);
  }
  return stated.millivolts.flatMap((volts) => {
    const figure = figures.get(volts);
    return figure === undefined ? [] : [[volts, figure] as const];
  });
}

/** Accepted volts as a message names them: `9, 12 or 18 V`, `9 to 18 V`. */
export const acceptedText = (accepted: AcceptedVolts): string =>
  accepted.kind === 'range'
    ? `${decimalOfThousandths(accepted.from)} to ${decimalOfThousandths(accepted.to)} V`
    : voltsText(accepted.millivolts);

const voltsText = (volts: readonly Millivolts[]): string => `${volts.map(decimalOfThousandths).join(', ')} V`;
