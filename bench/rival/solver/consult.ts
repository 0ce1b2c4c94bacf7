/** Both engines on one program, and what is left of their claims once the points have been checked. */
import { askToSolve, type Patience } from './ask.js';
import type { EngineClaim, Engine } from '../../../solver/engines/engine.js';
import type { Engines } from '../engines/engines.js';
import { permute } from './permute.js';
import type { ProgramPoint } from '../../../solver/program.js';
import type { Restatement } from './restatement.js';
import type { Standing } from './standing.js';

/** Beyond this many columns javascript-lp-solver is mostly slower than HiGHS, and its answers are worth less. */
export const SECOND_ENGINE_COLUMNS = 400;
/** How long the second engine is waited for once the trusted one has answered. */
const SECOND_ENGINE_EXTRA_MS = 300;
/** The twin does the same work in another order; if it takes so much longer, the trusted engine is asked again instead. */
const TWIN_EXTRA_MS = 10_000;
/** Any number will do: it only has to be the same in every run. */
const TWIN_SEED = 48_271;

/** What an engine's claim amounts to. */
export type Opinion =
  /** It holds that no solution of the program it was given is worth less; null: that there is no solution. */
  | { readonly kind: 'floor'; readonly engine: string; readonly value: number | null }
  /** It holds nothing. */
  | { readonly kind: 'none'; readonly stopped: boolean };

export type Opinions = {
  readonly trusted: Opinion;
  /** The second engine's, or the twin's. */
  readonly other: Opinion;
  readonly otherIs: 'second' | 'twin' | 'nobody';
};

const nothing: Opinion = { kind: 'none', stopped: false };

/** Asks the trusted engine and, beside it, the second one where the program is small enough, else the twin. */
export async function consult(
  engines: Engines,
  restatement: Restatement,
  standing: Standing,
  limits: Patience,
): Promise<Opinions> {
  const { engine, question, otherIs, extraMs } = companionOf(engines, restatement);
  const tooLate = new AbortController();
  const signal = limits.signal === undefined ? tooLate.signal : AbortSignal.any([limits.signal, tooLate.signal]);
  const opinion = async (
    asked: Engine,
    { program, objective, restore }: Restatement,
    within: Patience,
  ): Promise<Opinion> =>
    opinionOf(asked.name, await askToSolve(asked, program, objective, within), (point) =>
      standing.offer(restore(point)),
    );
  const other = engine === null ? Promise.resolve(nothing) : opinion(engine, question, { ...limits, signal });
  const trusted = await opinion(engines.trusted, restatement, limits);
  await Promise.race([other, limits.later(standing.closed ? 0 : extraMs, tooLate.signal)]);
  tooLate.abort();
  return { trusted, other: await other, otherIs };
}

type Companion = {
  readonly engine: Engine | null;
  readonly question: Restatement;
  readonly otherIs: Opinions['otherIs'];
  /** How long it is waited for once the trusted engine has answered. */
  readonly extraMs: number;
};

function companionOf({ second, twin }: Engines, restatement: Restatement): Companion {
  const { program, objective, restore } = restatement;
  if (second !== null && program.columns.length <= SECOND_ENGINE_COLUMNS) {
    return { engine: second, question: restatement, otherIs: 'second', extraMs: SECOND_ENGINE_EXTRA_MS };
  }
  if (twin === undefined || program.columns.length <= SECOND_ENGINE_COLUMNS) {
    return { engine: null, question: restatement, otherIs: 'nobody', extraMs: 0 };
  }
  const permuted = permute(program, objective, TWIN_SEED);
  const question = { ...permuted, restore: (point: ProgramPoint): ProgramPoint => restore(permuted.restore(point)) };
  return { engine: twin, question, otherIs: 'twin', extraMs: TWIN_EXTRA_MS };
}

/** A claim to have the optimum counts only with a solution that is worth what the engine says nothing undercuts. */
function opinionOf(engine: string, claim: EngineClaim, offer: (point: readonly number[]) => number | null): Opinion {
  switch (claim.kind) {
    case 'optimal': {
      const value = offer(claim.point);
      return value === null ? nothing : { kind: 'floor', engine, value };
    }
    case 'infeasible':
      return { kind: 'floor', engine, value: null };
    case 'stopped':
      if (claim.point !== null) offer(claim.point);
      return { kind: 'none', stopped: true };
    case 'failed':
      return nothing;
  }
}
