import type { Engines } from '../engines/engines.js';
import type { ProgramPoint, Program } from '../../../solver/program.js';
import { atMost } from '../solver/challenge.js';
import type { CompactOutcome as Proven } from '../solver/outcome.js';
import { prove } from '../solver/prove.js';
import type { Criterion } from '../../../src/domain/aim.js';
import type { Feed } from '../../../src/domain/plan.js';
import type { SupplyUses } from '../../../src/loadout/supply-uses.js';
import { compactProgram } from './compact-program.js';
import { coarse, refined, type Detail } from './detail.js';
import type { Effort, SearchOutcome } from '../../../src/formulation/optimiser.js';
import { worthwhileSupplies } from '../../../src/formulation/pinned-question.js';
import type { Question } from '../../../src/formulation/question.js';
import { readPoint } from './read-point.js';
import { stepsOf, type CompactStep } from './tiers.js';
import { tierValues } from '../../../src/formulation/digits.js';

/**
 * Solves the compact program step by step in the order of the tiers. It begins as a relaxation; an optimum that can be
 * dealt out to real units and chains is an optimum of the real problem, too. One that cannot shows what to tell apart,
 * and the search starts over with that. Everything can be told apart only so often, so it ends.
 * @throws RangeError when a pedal may run on batteries, or a supply is fed by others: how many sets a wiring takes, and how many
 * inlets, is no row of the program.
 */
export async function compactSearch(question: Question, effort: CompactEffort): Promise<CompactOutcome> {
  for (const kind of ['battery', 'fed'] as const)
    if (question.supplies.some(({ supply }) => supply.source.kind === kind))
      throw new RangeError(`the compact program knows nothing of ${kind === 'fed' ? 'fed supplies' : 'batteries'}`);
  const supplies = worthwhileSupplies(question);
  const candidates: (readonly Feed[])[] = [];
  let detail = coarse;
  let bounds: ReadonlyMap<string, number> = new Map();
  for (;;) {
    const round = await searchRound({ question, supplies, detail, effort, bounds, candidates });
    if (round.kind === 'done') return round.outcome;
    detail = round.detail;
    bounds = round.bounds;
  }
}

/** What it may use: engines beside what the search by loadouts may. */
export type CompactEffort = Pick<Effort, 'timing' | 'remainingMs' | 'signal' | 'onProgress'> & {
  readonly engines: Engines;
};

/** As the search by loadouts tells it, but for what its proofs rest on: here engines agree on every step. */
export type CompactOutcome =
  | Pick<Extract<SearchOutcome, { kind: 'proven' }>, 'kind' | 'feeds' | 'values'>
  | Extract<SearchOutcome, { kind: 'impossible' }>
  | Omit<Extract<SearchOutcome, { kind: 'stopped' }>, 'impasse' | 'reached'>;

type Round = {
  readonly question: Question;
  readonly supplies: readonly SupplyUses[];
  readonly detail: Detail;
  readonly effort: CompactEffort;
  /** What coarser rounds have shown: the first step's objective is no less than this, by the name of the step. */
  readonly bounds: ReadonlyMap<string, number>;
  /** Plans found on the way, the better ones last. */
  readonly candidates: (readonly Feed[])[];
};

type RoundResult =
  | { readonly kind: 'done'; readonly outcome: CompactOutcome }
  | { readonly kind: 'refine'; readonly detail: Detail; readonly bounds: ReadonlyMap<string, number> };

async function searchRound(round: Round): Promise<RoundResult> {
  const { question, detail, effort, candidates } = round;
  const model = compactProgram(question, round.supplies, detail);
  const settled = new Map<Criterion, number>();
  let { program } = model;
  let point: ProgramPoint | null = null;
  let feeds: readonly Feed[] = [];
  for (const [index, step] of stepsOf(model, question).entries()) {
    const bound = index === 0 ? round.bounds.get(step.objective.name) : undefined;
    const outcome = await proveStep(program, step, { effort, point, bound });
    if (outcome.kind === 'infeasible') return { kind: 'done', outcome: { kind: 'impossible' } };
    const best = outcome.point;
    const reading = best === null ? null : readPoint(model, best, question);
    if (reading?.kind === 'feeds') candidates.push(reading.feeds);
    if (outcome.kind === 'stopped') return { kind: 'done', outcome: stopped(candidates, settled, step, outcome.bound) };
    if (reading?.kind === 'too coarse') {
      const bounds = index === 0 ? new Map([[step.objective.name, outcome.value]]) : round.bounds;
      return { kind: 'refine', detail: refined(detail, reading.found), bounds };
    }
    if (reading?.kind !== 'feeds') return { kind: 'done', outcome: stopped(candidates, settled, step, outcome.value) };
    for (const [tier, value] of tierValues(step, outcome.value)) settled.set(tier, value);
    program = atMost(outcome.value, outcome.remaining, step.objective);
    point = outcome.point;
    feeds = reading.feeds;
  }
  return {
    kind: 'done',
    outcome: { kind: 'proven', feeds, values: settled },
  };
}

type Start = {
  readonly effort: CompactEffort;
  readonly point: ProgramPoint | null;
  readonly bound: number | undefined;
};

function proveStep(program: Program, step: CompactStep, { effort, point, bound }: Start): Promise<Proven> {
  const tier = step.tiers[0]?.tier ?? null;
  return prove(program, step.objective, {
    engines: effort.engines,
    remainingMs: effort.remainingMs,
    timing: effort.timing,
    ...(effort.signal === undefined ? {} : { signal: effort.signal }),
    ...(point === null ? {} : { known: point }),
    ...(bound === undefined ? {} : { lowerBound: bound }),
    onProgress: (progress) =>
      effort.onProgress?.({
        tier,
        value: progress.value === null ? null : firstTier(step, progress.value),
        bound: firstTier(step, progress.bound),
      }),
  });
}

/** The value of a step's most important tier; 0 for a step without one. */
const firstTier = (step: CompactStep, value: number): number => tierValues(step, value)[0]?.[1] ?? 0;

function stopped(
  candidates: readonly (readonly Feed[])[],
  settled: ReadonlyMap<Criterion, number>,
  step: CompactStep,
  bound: number | null,
): CompactOutcome {
  const [first] = step.tiers;
  const open = first === undefined ? null : { tier: first.tier, bound: bound === null ? null : firstTier(step, bound) };
  return { kind: 'stopped', candidates, settled, open };
}
