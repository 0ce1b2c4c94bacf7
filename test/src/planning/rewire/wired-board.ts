import type { Board, Catalogue, WiredFeed } from '../../../../src/domain/board.js';
import { kitOf } from '../../../../src/domain/kit.js';
import type { Pedal } from '../../../../src/domain/pedal.js';
import { partId, supplyId } from '../../../../src/domain/quantities.js';
import { rewire, type RewireOptions } from '../../../../src/planning/rewire/rewire.js';
import { bankOf, boardOf, settingOf, supplyOf } from '../../../support/builders.js';
import { wiredOn } from '../../../support/wired.js';

export const small = (outputs: number, more: object = {}) => bankOf(outputs, [settingOf(9, 100)], more);
export const strong = (outputs: number) => bankOf(outputs, [settingOf(9, 400), settingOf(18, 200)]);

export const quay = (pedal: string, output: number, more: Partial<WiredFeed> = {}) =>
  wiredOn('quay', pedal, output, more);

export const ownedOf = (supplies: Readonly<Record<string, number>>, parts: Readonly<Record<string, number>> = {}) => ({
  supplies: new Map(Object.entries(supplies).map(([id, units]) => [supplyId(id), units])),
  parts: new Map(Object.entries(parts).map(([id, units]) => [partId(id), units])),
});

/** The supply `quay` is owned, of the banks given. */
export function wired(
  pedals: readonly Pedal[],
  banks: readonly ReturnType<typeof bankOf>[],
  wiring: readonly WiredFeed[],
  more: Partial<Board> = {},
): Board {
  const gear = { supplies: [supplyOf('quay', 0, banks, { price: null, stock: 0 })], parts: more.gear?.parts ?? [] };
  return boardOf(pedals, { owned: ownedOf({ quay: 1 }), wiring, ...more, gear });
}

/** A proven plan, and what it changes. */
export async function planOf(board: Board, catalogue: Catalogue | null = null, options: RewireOptions = {}) {
  const answer = await rewire(kitOf(board, catalogue), { ...options });
  if (answer.kind !== 'plan' || answer.gap !== null || answer.changes === undefined)
    throw new Error(`no proven plan: ${JSON.stringify(answer)}`);
  return { ...answer, changes: answer.changes };
}
