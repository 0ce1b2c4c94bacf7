import type { Board } from '../../domain/board.js';
import type { AssumedOfPedal, Pedal, UnknownField } from '../../domain/pedal.js';
import type { AssumedOfPart } from '../../domain/part.js';
import { leadsOf, type Feed } from '../../domain/plan.js';
import { numberOfThousandths, type PartId, type PedalId, type SupplyId } from '../../domain/quantities.js';
import type { AssumedOfSupply } from '../../domain/supply.js';
import type { Inventory } from './inventory.js';

/** A guessed draw in mA, the same at all volts or one figure for each of the volts. */
export type Guessed = { readonly milliamps: number | Readonly<Record<string, number>> };

/** What nobody has read from a label yet. */
export type Confirm =
  | {
      readonly pedal: PedalId;
      readonly assumed: AssumedOfPedal;
      readonly guessed?: Guessed;
      readonly unknown?: readonly UnknownField[];
    }
  | { readonly supply: SupplyId; readonly assumed: AssumedOfSupply }
  | { readonly part: PartId; readonly assumed: AssumedOfPart };

/** One entry a pedal with an assumed or unknown field or a guessed figure, then one a supply or lead in use with assumed fields. */
export function confirmEntries(board: Board, inventory: Inventory, feeds: readonly Feed[]): readonly Confirm[] {
  const pedals = board.pedals.flatMap((pedal): Confirm[] => {
    const assumed = assumedOfPedal(pedal);
    const unknown = pedal.unknown.length === 0 ? {} : { unknown: pedal.unknown };
    if (pedal.figure === 'guess') return [{ pedal: pedal.id, assumed, guessed: guessedOf(pedal), ...unknown }];
    return Object.keys({ ...assumed, ...unknown }).length === 0 ? [] : [{ pedal: pedal.id, assumed, ...unknown }];
  });
  const inUse = new Set(feeds.map(({ supply }) => supply));
  const supplies = inventory.supplies.flatMap(({ id, assumed }): Confirm[] => {
    const filled = assumedOfSupply(assumed);
    return inUse.has(id) && Object.keys(filled).length > 0 ? [{ supply: id, assumed: filled }] : [];
  });
  const leads = new Set(feeds.flatMap(leadsOf));
  const parts = [...leads].flatMap((id): Confirm[] => {
    const { assumed } = inventory.part(id);
    return assumed === undefined ? [] : [{ part: id, assumed }];
  });
  return [...pedals, ...supplies, ...parts];
}

/** What is to be looked at, by its name. */
export function confirmName({ pedalName, supplyName, partName }: Inventory, entry: Confirm): string {
  if ('pedal' in entry) return pedalName(entry.pedal);
  return 'supply' in entry ? supplyName(entry.supply) : partName(entry.part);
}

function guessedOf({ draw }: Pedal): Guessed {
  if (draw.kind === 'flat') return { milliamps: numberOfThousandths(draw.microamps) };
  const figures = [...draw.microamps].map(([at, drawn]) => [
    String(numberOfThousandths(at)),
    numberOfThousandths(drawn),
  ]);
  return { milliamps: Object.fromEntries(figures) as Record<string, number> };
}

/** The key order is part of what the JSON promises. */
const assumedOfPedal = ({ assumed: { power, polarity, inlet, ground, volts } }: Pedal): AssumedOfPedal => ({
  ...(power === undefined ? {} : { power }),
  ...(polarity === undefined ? {} : { polarity }),
  ...(inlet === undefined ? {} : { inlet }),
  ...(ground === undefined ? {} : { ground }),
  ...(volts === undefined ? {} : { volts }),
});

const assumedOfSupply = ({ power, plug, polarity, regulated }: AssumedOfSupply): AssumedOfSupply => ({
  ...(power === undefined ? {} : { power }),
  ...(plug === undefined ? {} : { plug }),
  ...(polarity === undefined ? {} : { polarity }),
  ...(regulated === undefined ? {} : { regulated }),
});
