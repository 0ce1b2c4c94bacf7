/** Which sets of pedals cannot be powered together, by trying every set: for boards of about four pedals. */
import type { Board, Catalogue } from '../../src/domain/board.js';
import type { Pedal } from '../../src/domain/pedal.js';
import type { PedalId } from '../../src/domain/quantities.js';
import { bruteForce } from './brute-force.js';
import { subsetsOf } from './subsets.js';

export type Conflicts = {
  /** True when no plan powers all of these, whichever others it leaves out or powers as well. */
  readonly isConflict: (pedals: readonly PedalId[]) => boolean;
  /** The pedals that some plan powers. */
  readonly feedable: readonly PedalId[];
  /** The size of the smallest conflict among the feedable pedals; Infinity when there is none. */
  readonly smallest: number;
};

/** A companion can make a chain of what could not hang alone, so that a set may be fed though a part of it cannot. */
export function conflictsOf(board: Board, catalogue: Catalogue): Conflicts {
  const fed = subsetsOf(board.pedals)
    .filter((pedals) => isPowered(pedals, board, catalogue))
    .map((pedals) => new Set(pedals.map(({ id }) => id)));
  const isConflict = (pedals: readonly PedalId[]): boolean => !fed.some((set) => pedals.every((id) => set.has(id)));
  const feedable = board.pedals.filter(({ id }) => !isConflict([id]));
  const sizes = subsetsOf(feedable)
    .filter((pedals) => isConflict(pedals.map(({ id }) => id)))
    .map(({ length }) => length);
  return { isConflict, feedable: feedable.map(({ id }) => id), smallest: Math.min(...sizes) };
}

function isPowered(pedals: readonly Pedal[], board: Board, catalogue: Catalogue): boolean {
  if (pedals.length === 0) return true;
  return bruteForce({ ...board, pedals }, catalogue, { aim: 'bricks', partial: false }).kind === 'plan';
}
