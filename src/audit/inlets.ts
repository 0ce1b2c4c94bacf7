import type { Board } from '../domain/board.js';
import { inletPedal, isFed, isInletId } from '../domain/inlet.js';
import type { Pedal } from '../domain/pedal.js';
import type { Feed } from '../domain/plan.js';
import type { Supplies } from './line.js';

/** What a feed feeds, with its rank among all that is fed: units of one supply share one. */
export type Fed = { readonly pedal: Pedal; readonly rank: number };

/** Whether what is fed is the inlet of a supply, and no pedal. */
export const isInlet = ({ id }: Pick<Pedal, 'id'>): boolean => isInletId(id);

/** Finds what each feed feeds: a pedal of the board, or the inlet of a fed unit, which comes after all pedals. */
export function fedBy({ pedals }: Board, supplies: Supplies): (feed: Feed) => Fed | undefined {
  const known = new Map(pedals.map((pedal, rank) => [pedal.id, { pedal, rank }]));
  const order = new Map([...supplies.keys()].map((id, index) => [id, pedals.length + index]));
  return ({ pedal: id, inletOf }) => {
    if (inletOf === undefined) return known.get(id);
    const supply = supplies.get(inletOf.supply);
    const pedal = supply !== undefined && isFed(supply) ? inletPedal(supply, inletOf.unit) : null;
    return pedal?.id === id ? { pedal, rank: order.get(inletOf.supply) ?? 0 } : undefined;
  };
}
