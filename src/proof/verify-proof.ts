import { tierValue, type Tier } from '../domain/aim.js';
import type { Board, Catalogue } from '../domain/board.js';
import type { Score } from '../domain/plan.js';
import type { Proof } from '../domain/proof.js';
import { toldApart } from './apart.js';
import { groundOf, type StepClaim, type ProofGround } from './claim.js';
import { Flaw } from './flaw.js';
import { greatestBelow } from './greatest-below.js';
import { measureOf, numberOf } from './measure.js';
import { checkRanking } from './ranking.js';
import { standingsOf } from './today.js';
import { casesIn, checkTree, type OnCase } from './tree.js';

/** What a proof shows of a plan with a certain score. */
export type ProofVerdict =
  | {
      readonly kind: 'holds';
      /** In the order of the aim: no plan has less of a tier without having more of an earlier one. */
      readonly tiers: readonly { readonly tier: Tier; readonly value: number }[];
      /** How many cases were looked at. */
      readonly cases: number;
    }
  | { readonly kind: 'fails'; readonly reason: string };

/** What a proof shows of a board that no plan can power. */
export type ImpossibilityVerdict =
  | {
      readonly kind: 'holds';
      /** Every plan leaves at least so many pedals without power. */ readonly unpowered: number;
      readonly cases: number;
    }
  | { readonly kind: 'fails'; readonly reason: string };

/** Told before each case of a proof is looked at: which one that is, and how many there are at the most. */
export type VerifyProgress = (looked: number, all: number) => void;

/**
 * Checks, in exact integers and from the input alone, that no plan is better than one with this score. Whether there is a
 * plan with this score is a matter of the audit.
 */
export function verifyProof(
  board: Board,
  catalogue: Catalogue,
  proof: Proof,
  score: Score,
  onProgress?: VerifyProgress,
): ProofVerdict {
  return orReason(() => {
    checkSubject(board, proof);
    if (proof.impossible === true) throw new Flaw('it says that no plan exists');
    if (!proof.partial && score.unpowered > 0)
      throw new Flaw('it speaks of plans that power every pedal, and the plan leaves some out');
    const ground = groundOf(board, catalogue, proof.partial, standingsFor(board, catalogue, proof));
    checkRanking(proof, ground);
    const cases = checkSteps(proof, ground, score, counting(proof, onProgress));
    const listed = proof.steps.flatMap(({ tiers }) => tiers.map(({ tier }) => tier));
    return {
      kind: 'holds',
      tiers: listed.map((tier) => ({ tier, value: tierValue(tier, score, board.policy) })),
      cases,
    };
  });
}

/** Checks that every plan leaves a pedal without power, even where plans may be partial. */
export function verifyImpossible(
  board: Board,
  catalogue: Catalogue,
  proof: Proof,
  onProgress?: VerifyProgress,
): ImpossibilityVerdict {
  return orReason(() => {
    checkSubject(board, proof);
    if (proof.impossible !== true) throw new Flaw('it does not say that no plan exists');
    const [step, ...others] = proof.steps;
    const [tier, ...otherTiers] = step?.tiers ?? [];
    const isOne = tier?.tier === 'unpowered' && tier.unit === 1 && tier.weight === 1;
    if (step === undefined || !isOne || others.length + otherTiers.length > 0)
      throw new Flaw('its only step must count the pedals without power, one by one');
    if (step.value < 1) throw new Flaw('it leaves no pedal without power');
    if ((proof.wishes?.keep ?? []).length > 0)
      throw new Flaw('it says that no plan exists, and keeps pedals where they are');
    const ground = groundOf(board, catalogue, true, null);
    const cases = checkTree(step.tree, claimOf(proof, 0, ground, new Map()), counting(proof, onProgress));
    return { kind: 'holds', unpowered: step.value, cases };
  });
}

/** How pedals are plugged today, where the aim looks at that. @throws Flaw when there are wishes and it does not. */
function standingsFor(
  board: Board,
  catalogue: Catalogue,
  { aim, wishes }: Proof,
): ReturnType<typeof standingsOf> | null {
  if (aim === 'moves') return standingsOf(board, catalogue, wishes?.keep ?? []);
  if (wishes !== undefined) throw new Flaw(`it has wishes, which the aim ${aim} does not know`);
  return null;
}

function checkSubject(board: Board, proof: Proof): void {
  if (proof.board !== board.name) throw new Flaw(`it is about the board "${proof.board}", not "${board.name}"`);
}

function counting({ steps }: Proof, onProgress?: VerifyProgress): OnCase {
  if (onProgress === undefined) return () => undefined;
  const all = steps.reduce((sum, { tree }) => sum + casesIn(tree), 0);
  let looked = 0;
  return () => {
    looked += 1;
    onProgress(looked, all);
  };
}

function checkSteps(proof: Proof, ground: ProofGround, score: Score, onCase: OnCase): number {
  const reached = new Map<Tier, number>();
  return proof.steps.reduce((cases, step, index) => {
    const name = proof.steps.length === 1 ? '' : `step ${index + 1}: `;
    const found = numberOf(step.tiers, score, ground.board.policy);
    if (BigInt(step.value) !== found) throw new Flaw(`${name}its value is ${step.value}; the plan's is ${found}`);
    try {
      const looked = checkTree(step.tree, claimOf(proof, index, ground, new Map(reached)), onCase);
      for (const { tier } of step.tiers) reached.set(tier, tierValue(tier, score, ground.board.policy));
      return cases + looked;
    } catch (error) {
      throw error instanceof Flaw ? new Flaw(`${name}${error.message}`) : error;
    }
  }, 0);
}

/** `reached` is what the tiers of earlier steps come to: no plan that keeps to these steps has another value in any. */
function claimOf({ steps }: Proof, index: number, ground: ProofGround, reached: ReadonlyMap<Tier, number>): StepClaim {
  const measured = steps.slice(0, index + 1).map(({ tiers, value }) => ({
    measure: measureOf(tiers, ground.board.policy),
    value: BigInt(value),
  }));
  const own = measured[index];
  const step = steps[index];
  if (own === undefined || step === undefined) throw new RangeError(`there is no step ${index}`);
  return {
    ...toldApart(ground, step.apart ?? []),
    scale: BigInt(step.scale),
    value: own.value,
    below: greatestBelow(own.value, step.tiers, reached, ground),
    measure: own.measure,
    earlier: measured.slice(0, index),
  };
}

function orReason<Verdict>(check: () => Verdict): Verdict | { readonly kind: 'fails'; readonly reason: string } {
  try {
    return check();
  } catch (error) {
    if (error instanceof Flaw) return { kind: 'fails', reason: error.message };
    throw error;
  }
}
