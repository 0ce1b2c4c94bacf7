import type { Board } from './board.js';
import type { Pedal, UnknownField } from './pedal.js';

/** How a figure came to be planned with. */
export type Standing = 'assumed' | 'guessed' | 'unknown';

/** One figure of one pedal that nobody has read. */
export type OpenLabel = { readonly pedal: Pedal; readonly field: UnknownField; readonly standing: Standing };

/** Every figure that is assumed, guessed or unknown, in the order of the board. Spare outputs have no label. */
export const openLabels = ({ pedals }: Board): readonly OpenLabel[] =>
  pedals
    .filter(({ kept }) => kept !== 'spare')
    .flatMap((pedal) =>
      fields.flatMap((field): readonly OpenLabel[] => {
        const standing = standingOf(pedal, field);
        return standing === null ? [] : [{ pedal, field, standing }];
      }),
    );

/** What destroys a pedal comes first. */
const fields: readonly UnknownField[] = ['power', 'volts', 'polarity', 'inlet', 'ground', 'milliamps'];

function standingOf(pedal: Pedal, field: UnknownField): Standing | null {
  if (pedal.unknown.includes(field)) return 'unknown';
  if (field === 'milliamps') return pedal.figure === 'guess' ? 'guessed' : null;
  return field in pedal.assumed ? 'assumed' : null;
}

/** The most that it is planned to draw at any volts, in microamps, before any factor. */
export const mostDrawn = ({ draw }: Pedal): number =>
  draw.kind === 'flat' ? draw.microamps : Math.max(...draw.microamps.values());
