import { compareScores, tiersOf, tierValue, type Aim, type Tier } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Today } from '../../loadout/today.js';
import { proofFormat, type Proof, type ProofStep, type ProofWishes } from '../../domain/proof.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Answer, Gap } from '../answer.js';
import { beyondThePlan } from '../asking/search-options.js';
import { ask, type Ask, type SolverAnswer } from '../asking/ask.js';
import { quickPlans } from './first-plans.js';
import { reasonsOf } from './reasons.js';

/** A board to be powered, and how. */
export type ChooseJob = {
  readonly kit: Kit;
  readonly aim: Aim;
  readonly partial: boolean;
  /** How the board is plugged now, for the aim `moves`. */
  readonly today: Today;
  /** What the kit and today's wiring were made to keep to; none when left out. */
  readonly wishes?: ProofWishes;
  readonly effort: Effort;
};

type Stopped = Extract<SolverAnswer, { kind: 'stopped' }>;

/** The tiers that can differ: without leave for a partial plan every pedal is powered. */
const rankedTiers = ({ aim, partial, kit }: ChooseJob): readonly Tier[] =>
  tiersOf(aim, kit.board.policy).filter((tier) => partial || tier !== 'unpowered');

/**
 * The best plan, audited, or why there is none.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function answerTo(job: ChooseJob): Promise<Answer> {
  const { kit, aim, partial, today, effort } = job;
  const asked: Ask = { tiers: rankedTiers(job), partial, today };
  const outcome = await ask(kit, asked, effort);
  switch (outcome.kind) {
    case 'impossible': {
      const reasons = await reasonsOf(kit, beyondThePlan(effort));
      const proof = effort.proof === true ? await impossibilityProof(job) : null;
      return { kind: 'impossible', aim, reasons, ...(proof === null ? {} : { proof }) };
    }
    case 'stopped':
      return bestFound(job, asked, outcome);
    case 'plan': {
      const { wiring, evidence } = outcome;
      const reasons = wiring.unpowered.length === 0 ? [] : await reasonsOf(kit, beyondThePlan(effort), 'pedals only');
      const proof = proofOf(job, outcome.proof);
      return {
        kind: 'plan',
        aim,
        wiring,
        gap: null,
        reasons,
        evidence,
        ...(proof === null ? {} : { proof }),
      };
    }
  }
}

function proofOf(
  { kit: { board }, aim, partial, wishes }: ChooseJob,
  steps: readonly ProofStep[] | null,
): Proof | null {
  if (steps === null) return null;
  const kept = wishes === undefined || Object.keys(wishes).length === 0 ? {} : { wishes };
  return { format: proofFormat, board: board.name, aim, partial, ...kept, steps };
}

/**
 * That every plan, were it allowed to leave pedals out, leaves out some; null when it could not be shown so. Where pedals have to
 * stay, that is another matter.
 */
async function impossibilityProof(job: ChooseJob): Promise<Proof | null> {
  const { kit, effort, today } = job;
  if (today.pinned.size > 0) return null;
  const outcome = await ask(kit, { tiers: ['unpowered'], partial: true }, { ...effort, onProgress: undefined });
  const proof = outcome.kind === 'plan' ? proofOf({ ...job, partial: true }, outcome.proof) : null;
  return proof === null ? null : { ...proof, impossible: true };
}

function bestFound(job: ChooseJob, asked: Ask, outcome: Stopped): Answer {
  const { kit, aim } = job;
  const plans = [...outcome.plans, ...quickPlans(kit, asked)];
  const best = plans.reduce<JudgedPlan | null>(
    (found, wiring) =>
      found !== null && compareScores(found.score, wiring.score, aim, kit.board.policy) <= 0 ? found : wiring,
    null,
  );
  if (best === null) return { kind: 'stopped', aim };
  return { kind: 'plan', aim, wiring: best, gap: gapOf(job, best, outcome), reasons: [] };
}

/** The first tier in which the plan has not been shown to be best; null when it has been in all. */
function gapOf(job: ChooseJob, wiring: JudgedPlan, outcome: Stopped): Gap | null {
  const boundOf = (tier: Tier): number | null => {
    const settled = outcome.settled.get(tier);
    return settled ?? (outcome.open?.tier === tier ? outcome.open.bound : null);
  };
  const values = rankedTiers(job).map((tier) => ({
    tier,
    value: tierValue(tier, wiring.score, job.kit.board.policy),
    bound: boundOf(tier),
  }));
  return values.find(({ value, bound }) => bound !== value) ?? null;
}
