import type { Kit } from '../../domain/kit.js';
import type { ChoosingAim } from '../../domain/aim.js';
import { nothingToday } from '../../loadout/today.js';
import type { Answer } from '../answer.js';
import { effortOf, type SearchOptions } from '../asking/search-options.js';
import { answerTo } from './answer-to.js';

export type { Progress } from '../../formulation/optimiser.js';

export type ChooseOptions = SearchOptions & {
  /** What is best; `cost` when left out. */
  readonly aim?: ChoosingAim;
  /** Allow a plan that leaves pedals unpowered, as few as can be. Off when left out. */
  readonly partial?: boolean;
  /** Have the proof written down, for `verifyProof` or others to check. Takes longer. Off when left out. */
  readonly proof?: boolean;
};

/**
 * What to buy, and how to wire it, to power the board from the catalogue and what is owned. The plan that it returns has
 * passed the audit against every hard rule; it is either proven best under the aim's whole order or says how far it may
 * be from it. Prints nothing and never ends the process.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function choose(kit: Kit, options: ChooseOptions = {}): Promise<Answer> {
  const { aim = 'cost', partial = false, proof } = options;
  const effort = { ...effortOf(options), proof };
  return answerTo({ kit, aim, partial, today: nothingToday, effort });
}
