import { closeEngines, type Engines } from '../../../solver/engines/engines.js';
import { startEngines } from '../../../solver/engines/threads/start-engines.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { Board, Catalogue } from '../../domain/board.js';
import type { Effort, Method, Progress } from '../../formulation/optimiser.js';
import { nothingToday } from '../../loadout/today.js';
import type { Answer } from '../answer.js';
import { answerTo } from './answer-to.js';

export type { Method, Progress } from '../../formulation/optimiser.js';

export type ChooseOptions = {
  /** What is best; `cost` when left out. */
  readonly aim?: ChoosingAim;
  /** Allow a plan that leaves pedals unpowered, as few as can be. Off when left out. */
  readonly partial?: boolean;
  /** Milliseconds that are left of the caller's patience, asked again and again; no limit when left out. */
  readonly remainingMs?: () => number;
  /** Stops the search; the best plan so far is the answer. */
  readonly signal?: AbortSignal;
  /** Called now and then with how far the search has come. */
  readonly onProgress?: (progress: Progress) => void;
  /** Engines to solve with; they are not closed, and serve several calls. Started and closed by the call when left out. */
  readonly engines?: Engines;
  /** How the plan is sought; by loadouts when left out. */
  readonly method?: Method;
  /** Have the proof written down, for `verifyProof` or others to check. Takes longer. Off when left out. */
  readonly proof?: boolean;
};

/**
 * What to buy, and how to wire it, to power the board from the catalogue and what is owned. The plan that it returns has
 * passed the audit against every hard rule; it is either proven best under the aim's whole order or says how far it may
 * be from it. Prints nothing and never ends the process.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function choose(board: Board, catalogue: Catalogue, options: ChooseOptions = {}): Promise<Answer> {
  const engines = options.engines ?? startEngines();
  const effort = { engines, remainingMs: options.remainingMs ?? ((): number => Infinity), ...wishesOf(options) };
  try {
    const { aim = 'cost', partial = false } = options;
    return await answerTo({ board, catalogue, aim, partial, today: nothingToday, effort });
  } finally {
    if (options.engines === undefined) await closeEngines(engines);
  }
}

type Wishes = Pick<Effort, 'signal' | 'onProgress' | 'method' | 'proof'>;
const wishesOf = ({ signal, onProgress, method, proof }: ChooseOptions): Wishes => ({
  signal,
  onProgress,
  method,
  proof,
});
