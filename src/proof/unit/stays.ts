import type { Supply } from '../../domain/supply.js';
import type { AlikePedals } from './pedal-class.js';
import type { SeatShape } from './shape.js';

/** The number of a unit that something is plugged into today; null for one that is like all others. */
export type UnitNumber = number | null;

/**
 * The outputs of today that something on a unit goes on as. Whoever has these today, at the same volts, stays. Outputs of a bank
 * differ only in that, so what goes on as an output may hang on any of its bank, as long as nothing else goes on as it.
 */
type GoesOn = readonly number[];

/** What is plugged into one unit today. */
export type Stays = {
  /** As what a pedal of the class stays on these seats at so many volts; null where it does not. */
  readonly of: (pedal: number, seats: readonly SeatShape[], volts: number) => GoesOn | null;
  /** Whether a pedal of the class has to stay, wherever that is. */
  readonly mustStay: (pedal: number) => boolean;
  /** Whether a pedal of the class counts as moved that does not stay. */
  readonly isPlugged: (pedal: number) => boolean;
  /** The outputs that more than one pedal has today: one thing at most goes on as each. */
  readonly watched: readonly number[];
};

export function staysOn(supply: Supply, unit: UnitNumber, classes: readonly AlikePedals[]): Stays {
  const placeOf = (pedal: number) => classes[pedal]?.standing.place ?? null;
  const isHere = (pedal: number): boolean => {
    const place = placeOf(pedal);
    return place !== null && place.supply === supply.id && place.unit === unit;
  };
  const had = classes.flatMap(({ members }, pedal) =>
    isHere(pedal) ? members.flatMap(() => placeOf(pedal)?.outputs ?? []) : [],
  );
  return {
    of: (pedal, seats, volts) => {
      const place = placeOf(pedal);
      if (place === null || !isHere(pedal) || place.millivolts !== volts) return null;
      const [wanted, there] = [place.outputs.map((output) => bankOf(supply, output)), seats.map(({ bank }) => bank)];
      return wanted.toSorted().join() === there.toSorted().join() ? place.outputs : null;
    },
    mustStay: (pedal) => classes[pedal]?.standing.kept === true,
    isPlugged: (pedal) => placeOf(pedal) !== null,
    watched: [...new Set(had)].filter((output) => had.indexOf(output) !== had.lastIndexOf(output)),
  };
}

const bankOf = ({ banks }: Supply, output: number): number =>
  banks.findIndex(({ firstOutput, outputs }) => firstOutput <= output && output < firstOutput + outputs);
