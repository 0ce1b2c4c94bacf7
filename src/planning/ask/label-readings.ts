import { isLead } from '../../domain/part.js';
import { mostDrawn, type OpenLabel } from '../../domain/open-labels.js';
import type { Kit } from '../../domain/kit.js';
import { highestMillivolts, lowestMillivolts, polarities, type Pedal } from '../../domain/pedal.js';
import { decimalOfThousandths, microamps, millivolts } from '../../domain/quantities.js';

/** One way in which a label may read (volts as a decimal), and the pedal as it is then. */
export type Reading = { readonly reads: string; readonly pedal: Pedal };

/**
 * The other ways in which a label may read: of what is unknown each of them, of what is assumed all but the assumed one. Volts
 * and plugs are those that anything of the kit gives. Of draws there are none: they have limits instead.
 */
export function readingsOf({ pedal, field }: OpenLabel, kit: Kit): readonly Reading[] {
  const isUnknown = pedal.unknown.includes(field);
  const others = <Value>(all: readonly Value[], planned: Value): readonly Value[] =>
    isUnknown ? all : all.filter((value) => value !== planned);
  switch (field) {
    case 'power':
      return others(['DC', 'AC'] as const, pedal.power).map((power) => ({
        reads: power,
        pedal: { ...pedal, power, polarity: power === 'AC' ? null : (pedal.polarity ?? 'unknown') },
      }));
    case 'polarity':
      return polarities
        .filter((polarity) => isUnknown || polarity !== pedal.polarity)
        .map((polarity) => ({ reads: polarity, pedal: { ...pedal, polarity } }));
    case 'ground':
      return others(['negative', 'positive'] as const, pedal.ground).map((ground) => ({
        reads: ground,
        pedal: { ...pedal, ground },
      }));
    case 'inlet':
      return others(plugsOf(kit), pedal.inlet).map((inlet) => ({ reads: inlet, pedal: { ...pedal, inlet } }));
    case 'volts':
      return voltsOf(kit).map((at) => ({ reads: decimalOfThousandths(at), pedal: atVolts(pedal, at) }));
    case 'milliamps':
      return [];
  }
}

const atVolts = (pedal: Pedal, at: number): Pedal => ({
  ...pedal,
  accepts: { kind: 'listed', millivolts: [millivolts(at)] },
  prefers: null,
  draw: { kind: 'flat', microamps: microamps(mostDrawn(pedal)) },
});

/** The pedal with a draw that has been read off its label: the same at all volts, and no guess. */
export const drawing = (pedal: Pedal, drawn: number): Pedal => ({
  ...pedal,
  draw: { kind: 'flat', microamps: microamps(drawn) },
  figure: 'label',
  unknown: pedal.unknown.filter((field) => field !== 'milliamps'),
});

const plugsOf = ({ supplies, parts }: Kit): readonly string[] => [
  ...new Set([
    ...[...supplies.values()].flatMap(({ banks }) => banks.map(({ plug }) => plug)),
    ...[...parts.values()].filter(isLead).map(({ gives }) => gives),
  ]),
];

/** In rising order, as millivolts. */
const voltsOf = ({ supplies, board }: Kit): readonly number[] =>
  [
    ...new Set([
      ...[...supplies.values()].flatMap(({ banks }) =>
        banks.flatMap(({ settings }) => settings.map((each) => each.millivolts)),
      ),
      ...board.pedals.flatMap(({ accepts }) => [lowestMillivolts(accepts), highestMillivolts(accepts)]),
    ]),
  ].sort((one, other) => one - other);
