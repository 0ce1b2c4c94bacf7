import { kitOf } from '../src/domain/kit.js';
import type { Engine } from '../solver/engines/engine.js';
import type { Objective, Program } from '../solver/program.js';
import type { Board, Catalogue } from '../src/domain/board.js';
import type { Answer } from '../src/planning/answer.js';
import { chooseAlone } from './loadouts-alone.js';
import { Meter } from './meter.js';
import { choose, chooseCompact, startEngines } from './product.js';
import { closeEngines, type Engines } from './rival/engines/engines.js';
import type { EngineSetName, RivalName } from './set-names.js';

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
  if (name === 'loadouts' || name === 'loadouts-alone') {
    return { name, engines: null, answer: byLoadouts[name], meter, close: () => Promise.resolve() };
  }
  const started = startEngines();
  const engines = metered(chosen(name, started), meter);
  return {
    name,
    engines,
    answer: async (board, catalogue, remainingMs) => chooseCompact(board, catalogue, { engines, remainingMs }),
    meter,
    close: async () => closeEngines(started),
  };
}

const byLoadouts: Readonly<Record<'loadouts' | 'loadouts-alone', EngineSet['answer']>> = {
  loadouts: async (board, catalogue, remainingMs) => choose(kitOf(board, catalogue), { aim: 'cost', remainingMs }),
  'loadouts-alone': async (board, catalogue, remainingMs) => chooseAlone(board, catalogue, { remainingMs }),
};

function chosen(name: RivalName, started: Engines): Engines {
  switch (name) {
    case 'both':
      return started;
    case 'HiGHS':
      return { ...started, second: null };
    case 'HiGHS-one-thread':
      return { trusted: started.trusted, second: null };
    case 'javascript-lp-solver': {
      if (started.second === null) throw new Error('the rival has no second engine');
      return { trusted: started.second, second: null };
    }
  }
}

const metered = ({ trusted, second, twin }: Engines, meter: Meter): Engines => ({
  trusted: meter.wrap(trusted),
  second: second === null ? null : meter.wrap(second),
  ...(twin === undefined ? {} : { twin: meter.wrap(twin) }),
});

/** Has every engine of the set answer something, so that no thread is still to be started. */
export async function wake({ engines }: EngineSet): Promise<void> {
  for (const engine of [engines?.trusted, engines?.second, engines?.twin]) if (engine) await answerOnce(engine);
}

const one: Program = {
  columns: [{ name: 'one', upper: 1 }],
  rows: [{ name: 'at least one', terms: [{ column: 0, coefficient: 1 }], lower: 1, upper: null }],
};
const least: Objective = { name: 'least', terms: [{ column: 0, coefficient: 1 }], constant: 0 };

/** The smallest question there is. @throws Error when the engine does not answer it with 1. */
export async function answerOnce(engine: Engine): Promise<void> {
  const claim = await engine.solve(one, least, { timeoutMs: 30_000 });
  if (claim.kind !== 'optimal' || claim.point[0] !== 1) throw new Error(`${engine.name} says ${JSON.stringify(claim)}`);
}
