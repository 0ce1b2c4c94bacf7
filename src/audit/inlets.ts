import type { Board } from '../domain/board.js';
import { inletId, inletPedal, isFed, isInletId, type UnitRef } from '../domain/inlet.js';
import type { Pedal } from '../domain/pedal.js';
import type { Feed } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import type { Supplies } from './line.js';

/** What a feed feeds, with its rank among all that is fed: units of one supply share one. */
export type Fed = { readonly pedal: Pedal; readonly rank: number };

/** Whether what is fed is the inlet of a supply, and no pedal. */
export const isInlet = ({ id }: Pick<Pedal, 'id'>): boolean => isInletId(id);

/** Finds what each feed feeds: a pedal of the board, or the inlet of a fed unit, which comes after all pedals. */
export function fedBy({ pedals }: Board, supplies: Supplies): (feed: Feed) => Fed | undefined {
  const known = new Map(pedals.map((pedal, rank) => [pedal.id, { pedal, rank }]));
  const order = new Map([...supplies.keys()].map((id, index) => [id, pedals.length + index]));
  const inlets = new Map<PedalId, Fed>();
  const inletOfUnit = ({ supply: id, unit }: UnitRef): Fed | undefined => {
    const supply = supplies.get(id);
    return supply !== undefined && isFed(supply)
      ? { pedal: inletPedal(supply, unit), rank: order.get(id) ?? 0 }
      : undefined;
  };
  return ({ pedal: id, inletOf }) => {
    if (inletOf === undefined) return known.get(id);
    const found = inletId(inletOf) === id ? (inlets.get(id) ?? inletOfUnit(inletOf)) : undefined;
    if (found !== undefined) inlets.set(id, found);
    return found;
  };
}
