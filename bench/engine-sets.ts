import { kitOf } from '../src/domain/kit.js';
import type { Engine } from '../solver/engines/engine.js';
import type { Objective, Program } from '../solver/program.js';
import type { Board, Catalogue } from '../src/domain/board.js';
import type { Answer } from '../src/planning/answer.js';
import { chooseAlone } from './loadouts-alone.js';
import { Meter } from './meter.js';
import { choose, chooseCompact, startEngines } from './product.js';
import { closeEngines, type Engines } from './rival/engines/engines.js';
import type { EngineSetName } from './set-names.js';

export type EngineSet = {
  readonly name: EngineSetName;
  /** The rival's engines; null for the search by loadouts. */
  readonly engines: Engines | null;
  /** The set's answer for the aim `cost`, within the time that is left. */
  readonly answer: (board: Board, catalogue: Catalogue, remainingMs: () => number) => Promise<Answer>;
  readonly meter: Meter;
  readonly close: () => Promise<void>;
};

/** The set with threads of its own; they start with the first question, see `wake`. It must be closed. */
export function startEngineSet(name: EngineSetName): EngineSet {
  const meter = new Meter();
  if (name !== 'HiGHS') return { name, engines: null, answer: byLoadouts[name], meter, close: () => Promise.resolve() };
  const started = startEngines();
  const engines = { trusted: meter.wrap(started.trusted), twin: meter.wrap(started.twin), second: null };
  return {
    name,
    engines,
    answer: async (board, catalogue, remainingMs) => chooseCompact(board, catalogue, { engines, remainingMs }),
    meter,
    close: async () => closeEngines(started),
  };
}

const byLoadouts: Readonly<Record<Exclude<EngineSetName, 'HiGHS'>, EngineSet['answer']>> = {
  loadouts: async (board, catalogue, remainingMs) => choose(kitOf(board, catalogue), { aim: 'cost', remainingMs }),
  'loadouts-alone': async (board, catalogue, remainingMs) => chooseAlone(board, catalogue, { remainingMs }),
};

/** Has every engine of the set answer something, so that no thread is still to be started. */
export async function wake({ engines }: EngineSet): Promise<void> {
  for (const engine of [engines?.trusted, engines?.twin]) if (engine) await answerOnce(engine);
}

const one: Program = {
  columns: [{ name: 'one', upper: 1 }],
  rows: [{ name: 'at least one', terms: [{ column: 0, coefficient: 1 }], lower: 1, upper: null }],
};
const least: Objective = { name: 'least', terms: [{ column: 0, coefficient: 1 }], constant: 0 };

/** The smallest question there is. @throws Error when the engine does not answer it with 1. */
async function answerOnce(engine: Engine): Promise<void> {
  const claim = await engine.solve(one, least, { timeoutMs: 30_000 });
  if (claim.kind !== 'optimal' || claim.point[0] !== 1) throw new Error(`${engine.name} says ${JSON.stringify(claim)}`);
}
