import type { Meter } from './words.js';
import type { Board } from '../../domain/board.js';
import { compareExact, exactly, stepsUp } from '../../domain/load.js';
import { decimalOfThousandths } from '../../domain/quantities.js';
import { isOfOnePedal } from '../../domain/source.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Inventory } from './inventory.js';
import { hasGroundAlone, unitUses, type OutputUse, type UnitUse } from './usage.js';

/** All units that are owned, those in use with what hangs on them; the board is one on which all that is in use is owned. */
export function ownedUnits(board: Board, inventory: Inventory, wiring: JudgedPlan): readonly UnitUse[] {
  const inUse = unitUses(board, inventory, wiring);
  return inventory.supplies.flatMap((supply) => {
    // What a pedal came with has nothing to spare for others.
    if (isOfOnePedal(supply.source)) return [];
    const owned = board.owned.supplies.get(supply.id) ?? 0;
    return Array.from({ length: owned }, (_, at): UnitUse => {
      const used = inUse.find((unit) => unit.supply.id === supply.id && unit.unit === at + 1);
      // A plan has no word for a total that nothing counts towards; here it is what is left.
      const totals = idleTotals(supply).map((idle) => used?.totals.find(({ bank }) => bank === idle.bank) ?? idle);
      return { supply, unit: at + 1, owned: true, outputs: used?.outputs ?? [], totals };
    });
  });
}

function idleTotals(supply: UnitUse['supply']): UnitUse['totals'] {
  const idle = (total: NonNullable<typeof supply.total>): Meter =>
    total.kind === 'current'
      ? { planned: exactly(0), limit: total.microamps, unit: 'mA' }
      : { planned: exactly(0), limit: total.milliwatts, unit: 'W' };
  return [
    ...supply.banks.flatMap((bank) => (bank.total === null ? [] : [{ bank, meter: idle(bank.total), peak: null }])),
    ...(supply.total === null ? [] : [{ bank: null, meter: idle(supply.total), peak: null }]),
  ];
}

/** What a limit leaves beyond the planned load, in thousandths of its unit, rounded down so that it never promises too much. */
export function leftOf({ planned, limit }: Meter): number {
  if (compareExact(planned, exactly(limit)) >= 0) return 0;
  return Number((BigInt(limit) * planned.denominator - planned.numerator) / planned.denominator);
}

/** "90 mA": what is left of a limit. */
export const leftText = (meter: Meter): string => `${decimalOfThousandths(leftOf(meter))} ${meter.unit}`;

/** "90 mA": what an output in use has left; nothing beside what has its ground to itself. */
export function leftOnOutput(inventory: Inventory, use: OutputUse, meter: Meter): string {
  if (!hasGroundAlone(inventory, use)) return leftText(meter);
  return `nothing beside ${use.feeds[0].inletOf === undefined ? 'a pedal of unknown ground' : 'an inlet'}`;
}

/** The planned load in thousandths of its unit, rounded up. */
export const plannedOf = ({ planned }: Meter): number => stepsUp(planned, 1);

/** The most that a pedal may draw by itself at a rating, in microamps, rounded down. */
export function mostAlone(rating: number, { policy }: Board): number {
  const { numerator, denominator } = policy.headroom.alone;
  return Number((BigInt(rating) * BigInt(denominator)) / BigInt(numerator));
}
