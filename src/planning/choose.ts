import { closeEngines, startEngines, type Engines } from '../../solver/engines.js';
import { auditWiring } from '../audit/audit-wiring.js';
import { compareScores, tiersOf, tierValue, type ChoosingAim, type Tier } from '../domain/aim.js';
import type { Board, Catalogue } from '../domain/board.js';
import type { Feed, Wiring } from '../domain/plan.js';
import { proofFormat, type Proof, type ProofStep } from '../domain/proof.js';
import { optimise } from '../formulation/optimise.js';
import type { Effort, Method, Outcome, Progress } from '../formulation/optimiser.js';
import { questionOf, type Question } from '../formulation/question.js';
import type { Answer, Gap } from './answer.js';
import { firstPlans } from './first-plans.js';
import { reasonsOf } from './reasons.js';
import { wiringOf } from './wiring.js';

export type { Method, Progress } from '../formulation/optimiser.js';

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
    return await answerOf({ board, catalogue, aim: options.aim ?? 'cost', partial: options.partial ?? false, effort });
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

type Job = {
  readonly board: Board;
  readonly catalogue: Catalogue;
  readonly aim: ChoosingAim;
  readonly partial: boolean;
  readonly effort: Effort;
};

/** The tiers that can differ: without leave for a partial plan every pedal is powered. */
const rankedTiers = ({ aim, partial }: Job): readonly Tier[] =>
  tiersOf(aim).filter((tier) => partial || tier !== 'unpowered');

async function answerOf(job: Job): Promise<Answer> {
  const { board, catalogue, aim, partial, effort } = job;
  const question = questionOf(board, catalogue, { tiers: rankedTiers(job), partial });
  const outcome = await optimise(question, effort);
  switch (outcome.kind) {
    case 'impossible': {
      const reasons = await reasonsOf(board, catalogue, explaining(effort));
      const proof = effort.proof === true ? await impossibilityProof(job) : null;
      return { kind: 'impossible', aim, reasons, ...(proof === null ? {} : { proof }) };
    }
    case 'stopped':
      return bestFound(job, question, outcome);
    case 'proven': {
      const wiring = audited(job, outcome.feeds);
      for (const [tier, value] of outcome.values) {
        const reached = tierValue(tier, wiring.score, board.policy);
        if (reached !== value) throw new Error(`the plan's ${tier} is ${reached}, but ${value} was proven`);
      }
      const reasons =
        wiring.unpowered.length === 0 ? [] : await reasonsOf(board, catalogue, explaining(effort), 'pedals only');
      const proof = proofOf(job, outcome.proof);
      return {
        kind: 'plan',
        aim,
        wiring,
        gap: null,
        reasons,
        evidence: outcome.evidence,
        ...(proof === null ? {} : { proof }),
      };
    }
  }
}

function proofOf({ board, aim, partial }: Job, steps: readonly ProofStep[] | null): Proof | null {
  return steps === null ? null : { format: proofFormat, board: board.name, aim, partial, steps };
}

/** That every plan, were it allowed to leave pedals out, leaves out some; null when it could not be shown so. */
async function impossibilityProof(job: Job): Promise<Proof | null> {
  const { board, catalogue, effort } = job;
  const question = questionOf(board, catalogue, { tiers: ['unpowered'], partial: true });
  const outcome = await optimise(question, { ...effort, onProgress: undefined });
  const proof = outcome.kind === 'proven' ? proofOf({ ...job, partial: true }, outcome.proof) : null;
  return proof === null ? null : { ...proof, impossible: true };
}

/** The same effort for finding reasons: what these searches reach is no plan, so it is not told as one. */
function explaining({ onProgress, proof: _proof, ...effort }: Effort): Effort {
  onProgress?.({ tier: null, value: null, bound: null });
  return effort;
}

/** The wiring of feeds that the audit finds nothing wrong with. */
function audited({ board, catalogue, partial }: Job, feeds: readonly Feed[]): Wiring {
  const wiring = wiringOf(board, catalogue, feeds);
  const faults = auditWiring(board, catalogue, wiring, { partial });
  if (faults.length > 0) throw new Error(`the plan fails its audit: ${JSON.stringify(faults)}`);
  return wiring;
}

function bestFound(job: Job, question: Question, outcome: Extract<Outcome, { kind: 'stopped' }>): Answer {
  const { board, aim } = job;
  const plans = [...outcome.candidates.map((feeds) => audited(job, feeds)), ...quickPlans(job, question)];
  const best = plans.reduce<Wiring | null>(
    (found, wiring) =>
      found !== null && compareScores(found.score, wiring.score, aim, board.policy) <= 0 ? found : wiring,
    null,
  );
  if (best === null) return { kind: 'stopped', aim };
  return { kind: 'plan', aim, wiring: best, gap: gapOf(job, best, outcome), reasons: [] };
}

/** Plans made without a search that keep the limits of the policy, too; to leave out every pedal always does. */
function quickPlans({ board, catalogue, partial }: Job, question: Question): readonly Wiring[] {
  return [...firstPlans(question), ...(partial ? [[]] : [])]
    .map((feeds) => wiringOf(board, catalogue, feeds))
    .filter((wiring) => auditWiring(board, catalogue, wiring, { partial }).length === 0);
}

/** The first tier in which the plan has not been shown to be best; null when it has been in all. */
function gapOf(job: Job, wiring: Wiring, outcome: Extract<Outcome, { kind: 'stopped' }>): Gap | null {
  const boundOf = (tier: Tier): number | null => {
    const settled = outcome.settled.get(tier);
    return settled ?? (outcome.open?.tier === tier ? outcome.open.bound : null);
  };
  const values = rankedTiers(job).map((tier) => ({
    tier,
    value: tierValue(tier, wiring.score, job.board.policy),
    bound: boundOf(tier),
  }));
  return values.find(({ value, bound }) => bound !== value) ?? null;
}
