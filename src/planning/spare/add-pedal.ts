import type { Board, Catalogue } from '../../domain/board.js';
import type { Pedal } from '../../domain/pedal.js';
import type { Answer } from '../answer.js';
import { rewire } from '../rewire/rewire.js';
import { withPedals } from './extra-pedal.js';
import type { SearchOptions } from '../search-options.js';
import { basisOf, type Basis, type NoBasis } from './spare.js';

export type Added = {
  readonly kind: 'added';
  readonly of: Basis['of'];
  readonly pedal: Pedal;
  /** The board with the pedal, plugged as it is now and with all in use owned; nothing of the shop is for sale. */
  readonly board: Board;
  readonly catalogue: Catalogue;
  /** How it is re-plugged with the pedal, nothing bought and as little moved as can be; or why that is impossible. */
  readonly answer: Answer;
  /** Where it is impossible: the answer when things may be bought; null where there is no shop. */
  readonly bought: { readonly catalogue: Catalogue; readonly answer: Answer } | null;
};

/**
 * Whether one more pedal can be fed, and with which moves. Its id is none of the board's.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function addPedal(
  board: Board,
  catalogue: Catalogue | null,
  pedal: Pedal,
  options: SearchOptions = {},
): Promise<Added | NoBasis> {
  const basis = await basisOf(board, catalogue, options);
  if (basis.kind !== 'basis') return basis;
  const { installed, of } = basis;
  const more = withPedals(installed.board, [pedal]);
  const answer = await rewire(more, installed.catalogue, options);
  const isOut = answer.kind === 'impossible' && catalogue !== null;
  const bought = isOut ? { catalogue, answer: await rewire(more, catalogue, options) } : null;
  return { kind: 'added', of, pedal, board: more, catalogue: installed.catalogue, answer, bought };
}
