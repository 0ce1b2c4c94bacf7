import type { Entry } from './entry.js';
import type { Report } from '../../domain/finding.js';
import {
  highestMillivolts,
  isAccepted,
  unknownFields,
  type AcceptedVolts,
  type Kept,
  type Pedal,
  type UnknownField,
} from '../../domain/pedal.js';
import { ownAdapterId } from '../../domain/own-adapter.js';
import { decimalOfThousandths, pedalId, type Millivolts, type PedalId } from '../../domain/quantities.js';
import { reportPolarityOfAlternating, safetyFigure, type AssumedFigure } from './resolve-assumed.js';
import type { Found } from './resolve-for-sale.js';
import { figuresOnOwnAdapter, takesOwnAdapterOnly } from './resolve-own-adapter.js';
import { noteId, resolveId, type SeenIds } from './resolve-id.js';
import { microampsOf, millivoltsOf } from './resolve-quantity.js';
import { acceptedText, reportNothingToPlanWith, resolveVoltsAndDraw } from './resolve-volts.js';
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
  const only = takesOwnAdapterOnly(entry, assumptions);
  const figures = only ? figuresOnOwnAdapter(entry, assumptions) : resolveFigures(entry, assumptions, report);
  const found = id === null ? null : pedalId(id);
  if (found === null || figures === null || fields.name === undefined) return { id: found, thing: null };
  const pedal: Pedal = {
    id: found,
    name: fields.name,
    ...figures,
    startup: fields.startup === undefined ? null : microampsOf(fields.startup),
    digital: fields.digital ?? false,
    highGain: fields.highGain ?? false,
    alone: fields.alone ?? false,
    kept: keptFor(fields, figures.unknown),
    adapter: fields.adapter === undefined ? null : { supply: ownAdapterId(found), only },
    battery: fields.battery === undefined ? null : { ...fields.battery, of: found },
  };
  return { id: found, thing: pedal };
}

/** All that a supply has to match; null when something of it was reported. */
function resolveFigures(entry: Entry<RawPedal>, assumptions: Entry<RawPedalAssumptions>, report: Report) {
  const { fields } = entry;
  const inlet = resolveInlet(entry, assumptions, report);
  const voltsAndDraw = resolveVoltsAndDraw(entry, assumptions, report);
  const prefers = fields.prefers === undefined ? null : millivoltsOf(fields.prefers);
  const survives = fields.maxVolts === undefined ? null : millivoltsOf(fields.maxVolts);
  if (voltsAndDraw !== null) checkPreferredAndMost(entry, voltsAndDraw.accepts, prefers, survives, report);
  if (inlet === null || voltsAndDraw === null) return null;
  return { ...inlet, ...voltsAndDraw, prefers, survives, figure: figureOf(fields), unknown: unknownOf(fields) };
}

type Inlet = Pick<Pedal, 'power' | 'polarity' | 'inlet' | 'ground' | 'assumed'>;

const orUnknown = ', or unknown until somebody has read it';
const label = { readOff: "the pedal's label" };
const allowed = {
  power: { ...label, allowed: `DC or AC${orUnknown}` },
  polarity: { ...label, allowed: `centre-negative or centre-positive${orUnknown}` },
  inlet: { ...label, allowed: `the name of a connector, such as barrel-2.1${orUnknown}` },
  ground: { allowed: `negative or positive${orUnknown}`, readOff: "the pedal's manual (negative for nearly all)" },
};

function resolveInlet(entry: Entry<RawPedal>, assumptions: Entry<RawPedalAssumptions>, report: Report): Inlet | null {
  const whose = entry.fields.name;
  const known = <Field extends keyof typeof allowed>(field: Field) =>
    safetyFigure(entry, assumptions, field, { whose, ...allowed[field] }, report);
  const power = plannedWith(known('power'), 'power', entry, assumptions, report);
  const polarity = power?.value === 'DC' ? known('polarity') : null;
  const inlet = plannedWith(known('inlet'), 'inlet', entry, assumptions, report);
  const ground = known('ground');
  if (power?.value === 'AC') reportPolarityOfAlternating(entry, 'pedal', report);
  if (power === null || inlet === null || ground === null) return null;
  if (power.value === 'DC' && polarity === null) return null;
  return {
    power: power.value,
    polarity: polarity?.value ?? null,
    inlet: inlet.value,
    ground: ground.value,
    assumed: {
      ...(power.assumed && { power: power.value }),
      ...assumedOf('polarity', polarity),
      ...(inlet.assumed && { inlet: inlet.value }),
      ...assumedOf('ground', ground),
      ...assumedVolts(entry, assumptions),
    },
  };
}

/** What the `assume` block has filled; what is unknown it never fills. */
const assumedOf = <Field extends 'polarity' | 'ground', Value extends string>(
  field: Field,
  figure: AssumedFigure<Value> | null,
) =>
  figure?.assumed === true && figure.value !== 'unknown'
    ? ({ [field]: figure.value } as Readonly<Record<Field, Exclude<Value, 'unknown'>>>)
    : {};

const assumedVolts = (entry: Entry<RawPedal>, { fields: { volts } }: Entry<RawPedalAssumptions>) =>
  entry.fields.volts === 'unknown' && volts !== undefined ? { volts: millivoltsOf(volts) } : {};

/** What is unknown of an unread pedal is planned with what the board assumes; null when that was reported. */
function plannedWith<Field extends 'power' | 'inlet'>(
  figure: AssumedFigure<NonNullable<RawPedal[Field]>> | null,
  field: Field,
  entry: Entry<RawPedal>,
  assumptions: Entry<RawPedalAssumptions>,
  report: Report,
): AssumedFigure<NonNullable<RawPedalAssumptions[Field]>> | null {
  if (figure === null) return null;
  if (figure.value !== 'unknown') return figure as AssumedFigure<NonNullable<RawPedalAssumptions[Field]>>;
  const assumed = assumptions.fields[field];
  if (assumed !== undefined) return { value: assumed, assumed: true };
  if (!assumptions.isBroken(field)) reportNothingToPlanWith(entry, field, report);
  return null;
}

const figureOf = ({ milliamps, figure }: Entry<RawPedal>['fields']): Pedal['figure'] =>
  milliamps === 'unknown' ? 'guess' : (figure ?? 'label');

/** Before these have been read a pedal may not be plugged in at all. */
const unreadWithout: readonly UnknownField[] = ['volts', 'power', 'inlet'];

const unknownOf = (fields: Entry<RawPedal>['fields']): readonly UnknownField[] =>
  unknownFields.filter((field) => fields[field] === 'unknown');

function keptFor({ later }: Entry<RawPedal>['fields'], unknown: readonly UnknownField[]): Kept | null {
  if (unknown.some((field) => unreadWithout.includes(field))) return 'unread';
  return later === true ? 'later' : null;
}

function checkPreferredAndMost(
  entry: Entry<RawPedal>,
  accepted: AcceptedVolts,
  prefers: Millivolts | null,
  survives: Millivolts | null,
  report: Report,
): void {
  if (prefers !== null && !isAccepted(accepted, prefers)) {
    report(entry.spotOf('prefers'), {
      message: `found ${decimalOfThousandths(prefers)}; it must be among the volts the pedal accepts: ${acceptedText(accepted)}.`,
      remedy: 'Write one of those, or add it to the accepted volts if its label says so.',
    });
  }
  const highest = highestMillivolts(accepted);
  if (survives !== null && survives < highest) {
    report(entry.spotOf('maxVolts'), {
      message: `found ${decimalOfThousandths(survives)}, below the ${decimalOfThousandths(highest)} V that the pedal accepts.`,
      remedy: 'Read both off the manual again; `maxVolts` is the most it survives, at least all it accepts.',
    });
  }
}
