import type { Entry } from './entry.js';
import { findingAt, type Report } from '../../domain/finding.js';
import {
  highestMillivolts,
  type AcceptedVolts,
  type AssumedOfPedal,
  type Ground,
  type Pedal,
  type Polarity,
  type Power,
} from '../../domain/pedal.js';
import { decimalOfThousandths, pedalId, type Millivolts, type PedalId } from '../../domain/quantities.js';
import { reportPolarityOfAlternating, safetyFigure, type AssumedFigure } from './resolve-assumed.js';
import type { Found } from './resolve-for-sale.js';
import { noteId, resolveId, type SeenIds } from './resolve-id.js';
import { microampsOf, millivoltsOf } from './resolve-quantity.js';
import { accepts, acceptedText, resolveVoltsAndDraw } from './resolve-volts.js';
import type { RawPedal, RawPedalAssumptions } from '../schema/schema-pedal.js';

/** A pedal of a board file. */
export function resolvePedal(
  entry: Entry<RawPedal>,
  assumptions: Entry<RawPedalAssumptions>,
  seen: SeenIds,
  report: Report,
): Found<PedalId, Pedal> {
  const { fields } = entry;
  const id = resolveId(entry, report);
  if (id !== null) noteId('pedals', id, entry, seen, report);
  const inlet = resolveInlet(entry, assumptions, report);
  const voltsAndDraw = resolveVoltsAndDraw(entry, report);
  const prefers = fields.prefers === undefined ? null : millivoltsOf(fields.prefers);
  const survives = fields.maxVolts === undefined ? null : millivoltsOf(fields.maxVolts);
  if (voltsAndDraw !== null) checkPreferredAndMost(entry, voltsAndDraw.accepts, prefers, survives, report);
  const found = id === null ? null : pedalId(id);
  if (found === null || inlet === null || voltsAndDraw === null || fields.name === undefined)
    return { id: found, thing: null };
  const pedal: Pedal = {
    id: found,
    name: fields.name,
    ...inlet,
    ...voltsAndDraw,
    prefers,
    survives,
    startup: fields.startup === undefined ? null : microampsOf(fields.startup),
    figure: fields.figure ?? 'label',
    digital: fields.digital ?? false,
    highGain: fields.highGain ?? false,
    alone: fields.alone ?? false,
  };
  return { id: found, thing: pedal };
}

type Inlet = Pick<Pedal, 'power' | 'polarity' | 'inlet' | 'ground' | 'assumed'>;

const label = { readOff: "the pedal's label" };
const allowed = {
  power: { ...label, allowed: 'DC or AC' },
  polarity: { ...label, allowed: 'centre-negative or centre-positive' },
  inlet: { ...label, allowed: 'the name of a connector, such as barrel-2.1' },
  ground: { allowed: 'negative or positive', readOff: "the pedal's manual (negative for nearly all)" },
};

function resolveInlet(entry: Entry<RawPedal>, assumptions: Entry<RawPedalAssumptions>, report: Report): Inlet | null {
  const whose = entry.fields.name;
  const power = safetyFigure(entry, assumptions, 'power', { whose, ...allowed.power }, report);
  const polarity =
    power?.value === 'DC' ? safetyFigure(entry, assumptions, 'polarity', { whose, ...allowed.polarity }, report) : null;
  const inlet = safetyFigure(entry, assumptions, 'inlet', { whose, ...allowed.inlet }, report);
  const ground = safetyFigure(entry, assumptions, 'ground', { whose, ...allowed.ground }, report);
  if (power?.value === 'AC') reportPolarityOfAlternating(entry, 'pedal', report);
  if (power === null || inlet === null || ground === null) return null;
  if (power.value === 'DC' && polarity === null) return null;
  return {
    power: power.value,
    polarity: polarity?.value ?? null,
    inlet: inlet.value,
    ground: ground.value,
    assumed: assumedOf(power, polarity, inlet, ground),
  };
}

function assumedOf(
  power: AssumedFigure<Power>,
  polarity: AssumedFigure<Polarity> | null,
  inlet: AssumedFigure<string>,
  ground: AssumedFigure<Ground>,
): AssumedOfPedal {
  return {
    ...(power.assumed && { power: power.value }),
    ...(polarity?.assumed === true && { polarity: polarity.value }),
    ...(inlet.assumed && { inlet: inlet.value }),
    ...(ground.assumed && { ground: ground.value }),
  };
}

function checkPreferredAndMost(
  entry: Entry<RawPedal>,
  accepted: AcceptedVolts,
  prefers: Millivolts | null,
  survives: Millivolts | null,
  report: Report,
): void {
  if (prefers !== null && !accepts(accepted, prefers)) {
    report(
      findingAt(entry.spotOf('prefers'), {
        message: `found ${decimalOfThousandths(prefers)}; it must be among the volts the pedal accepts: ${acceptedText(accepted)}.`,
        remedy: 'Write one of those, or add it to the accepted volts if its label says so.',
      }),
    );
  }
  const highest = highestMillivolts(accepted);
  if (survives !== null && survives < highest) {
    report(
      findingAt(entry.spotOf('maxVolts'), {
        message: `found ${decimalOfThousandths(survives)}, below the ${decimalOfThousandths(highest)} V that the pedal accepts.`,
        remedy: 'Read both off the manual again; `maxVolts` is the most it survives, at least all it accepts.',
      }),
    );
  }
}
