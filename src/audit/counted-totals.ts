import type { TotalLoad } from '../domain/load-numbers.js';
import type { Bank, Total } from '../domain/supply.js';
import { isAtMost, over, sum, times, whole, type Ratio } from './exact.js';
import { joinOf, type Layout, type Line, type Tap, type UnitInUse } from './line.js';
import { placeInUnit } from './violation.js';
import { milliamps, outputPlace, unitPlace, watts } from './words.js';

/** A stated total of a bank or of a whole unit that something counts towards. */
export type CountedTotal = Pick<TotalLoad, 'of' | 'place'> & {
  readonly lines: readonly [Line, ...Line[]];
  readonly unit: 'mA' | 'W';
  /** In microamps or milliwatts. */
  readonly limit: number;
  /** What the lines add up to, in the unit of the limit, when each of them takes so many microamps. */
  readonly sumOf: (taken: (line: Line) => Ratio) => Ratio;
  /** "Quay 6 (unit 1)", or "the bank of outputs 1 and 2 of Quay 6 (unit 1)". */
  readonly where: string;
  /** An amount in the unit of the limit, as text. */
  readonly text: (amount: Ratio) => string;
};

/** In the order of the units, a unit's banks before the whole of it. */
export const countedTotals = ({ units }: Layout): readonly CountedTotal[] =>
  units.flatMap((unit) => {
    const { banks, total } = unit.supply;
    return [
      ...banks.flatMap((bank) => (bank.total === null ? [] : counted(unit, bank.total, bank))),
      ...(total === null ? [] : counted(unit, total, null)),
    ];
  });

function counted(unit: UnitInUse, total: Total, bank: Bank | null): readonly CountedTotal[] {
  const counts = (tap: Tap): boolean => bank === null || tap.bank === bank;
  const [first, ...others] = unit.lines.filter((line) => line.taps.some(counts));
  if (first === undefined) return [];
  const lines = [first, ...others] as const;
  const inWatts = total.kind === 'power';
  const shareOf = (taken: Ratio, { millivolts }: Tap): Ratio =>
    inWatts ? over(times(taken, whole(millivolts)), nanowattsInMilliwatt) : taken;
  const burden = (line: Line, taken: Ratio): Ratio => {
    const shares = line.taps.filter(counts).map((tap) => shareOf(taken, tap));
    // Parallel outputs may split the load in any way, so that all of it may fall on one of them, but only once on both.
    return joinOf(line) === 'parallel' ? greatest(shares) : sum(shares);
  };
  const place = placeInUnit(unit, bank === null ? [] : outputsOf(bank));
  return [
    {
      of: bank === null ? 'supply' : 'bank',
      place,
      lines,
      unit: inWatts ? 'W' : 'mA',
      limit: inWatts ? total.milliwatts : total.microamps,
      sumOf: (taken) => sum(lines.map((line) => burden(line, taken(line)))),
      where:
        bank === null
          ? unitPlace(unit.supply, unit.unit)
          : `the bank of ${outputPlace(unit.supply, unit.unit, place.outputs)}`,
      text: inWatts ? watts : milliamps,
    },
  ];
}

const nanowattsInMilliwatt = 1_000_000;

const outputsOf = ({ firstOutput, outputs }: Bank): readonly number[] =>
  Array.from({ length: outputs }, (_, index) => firstOutput + index);

const greatest = (values: readonly Ratio[]): Ratio =>
  values.reduce((largest, value) => (isAtMost(value, largest) ? largest : value), whole(0));
