import { kitOf } from '../../src/domain/kit.js';
import { afterAll } from 'vitest';

import { closeEngines, type Engines } from '../../solver/engines/engines.js';
import { startEngines } from '../../solver/engines/threads/start-engines.js';
import type { Board, Catalogue } from '../../src/domain/board.js';
import type { Answer } from '../../src/planning/answer.js';
import { choose, type ChooseOptions } from '../../src/planning/choose/choose.js';

export type Choose = (board: Board, catalogue: Catalogue, options?: ChooseOptions) => Promise<Answer>;

/** The engines for all tests of a file, closed after the last: starting them takes longer than most tests. */
export function sharedEngines(): Engines {
  const engines = startEngines();
  afterAll(() => closeEngines(engines));
  return engines;
}

/** `choose` with the engines that all tests of a file share. */
export function sharedChoose(): Choose {
  const engines = sharedEngines();
  return (board, catalogue, options) => choose(kitOf(board, catalogue), { engines, ...options });
}
