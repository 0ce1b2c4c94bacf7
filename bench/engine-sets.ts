import type { Engine } from '../solver/engine.js';
import { closeEngines, startEngines, type Engines } from '../solver/engines.js';
import type { Objective, Program } from '../solver/program.js';
import type { Method } from '../src/planning/choose.js';
import { Meter } from './meter.js';

/**
 * The rivals: the search by loadouts as the product does it, which the compact program joins when it lasts; and the compact
 * program alone, with the product's engines as they are; HiGHS and its twin without javascript-lp-solver; HiGHS asked twice, one
 * question after the other; javascript-lp-solver in the same way.
 */
export const engineSetNames = ['loadouts', 'both', 'HiGHS', 'HiGHS-one-thread', 'javascript-lp-solver'] as const;
export type EngineSetName = (typeof engineSetNames)[number];

/** Those that are measured when nothing is said. */
export const usualEngineSets: readonly EngineSetName[] = ['loadouts', 'HiGHS'];

/** Alone, javascript-lp-solver seldom gets this far within a minute: larger shops are not tried with it. */
export const MOST_SUPPLIES_FOR_JAVASCRIPT = 40;

export type EngineSet = {
  readonly name: EngineSetName;
  readonly engines: Engines;
  readonly method: Method;
  readonly meter: Meter;
  readonly close: () => Promise<void>;
};

/** The set with threads of its own; they start with the first question, see `wake`. It must be closed. */
export function startEngineSet(name: EngineSetName): EngineSet {
  const started = startEngines();
  const meter = new Meter();
  const method = name === 'loadouts' ? 'loadouts' : 'compact';
  return {
    name,
    engines: metered(chosen(name, started), meter),
    method,
    meter,
    close: async () => closeEngines(started),
  };
}

/** Whether the set is tried on a shop with so many supply models. */
export const takesOn = (name: EngineSetName, supplies: number): boolean =>
  name !== 'javascript-lp-solver' || supplies <= MOST_SUPPLIES_FOR_JAVASCRIPT;

function chosen(name: EngineSetName, started: Engines): Engines {
  switch (name) {
    case 'loadouts':
    case 'both':
      return started;
    case 'HiGHS':
      return { ...started, second: null };
    case 'HiGHS-one-thread':
      return { trusted: started.trusted, second: null };
    case 'javascript-lp-solver': {
      if (started.second === null) throw new Error('the product has no second engine');
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
export async function wake({ trusted, second, twin }: Engines): Promise<void> {
  for (const engine of [trusted, second, twin]) if (engine) await answerOnce(engine);
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
