import type { Board, Catalogue } from '../../src/domain/board.js';
import { kitOf } from '../../src/domain/kit.js';
import type { Answer } from '../../src/planning/answer.js';
import { choose, type ChooseOptions } from '../../src/planning/choose/choose.js';

export type Choose = (board: Board, catalogue: Catalogue, options?: ChooseOptions) => Promise<Answer>;

/** `choose` with the engines that all tests of a file share. */
export function sharedChoose(): Choose {
  return (board, catalogue, options) => choose(kitOf(board, catalogue), { ...options });
}
