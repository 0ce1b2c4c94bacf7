import type { Objective } from '../../../solver/program.js';
import { countedBeside, isMoney, type Criterion } from '../../../src/domain/aim.js';
import { isLeadTier } from '../../../src/domain/counted-tiers.js';
import { allPedals } from '../../../src/loadout/bench.js';
import type { Digit } from '../../../src/formulation/digits.js';
import type { Model } from './model.js';
import { Sum } from './program-builder.js';
import type { Question } from '../../../src/formulation/question.js';

/** One step of the search: one tier of the aim, or several at once as digits of one number. */
export type CompactStep = {
  readonly objective: Objective;
  /** The tiers it stands for, the most important first. */
  readonly tiers: readonly Digit[];
};

/**
 * Tiers are folded into one number as long as its coefficients stay below this: an engine's double precision tells apart
 * some ten million times as much. One step is solved and confirmed in less than half the time of two.
 */
const largestCoefficient = 1e9;

/** The steps that together are the question's whole order; one without an objective when any plan will do. */
export function stepsOf(model: Model, question: Question): readonly CompactStep[] {
  const steps: Criterion[][] = [];
  for (const tier of question.tiers) {
    const last = steps.at(-1);
    // Money has no greatest value that is known beforehand, so it can only be the first digit.
    if (last !== undefined && !isMoney(tier) && foldable([...last, tier], model, question)) last.push(tier);
    else steps.push([tier]);
  }
  if (steps.length === 0) steps.push([]);
  return steps.map((tiers) => stepOf(tiers, model, question));
}

/** How many values a counted tier has at the most: a pedal takes two adapters and a share of a chain or join lead. */
function valuesOf(tier: Criterion, { bench }: Question): number {
  return (isLeadTier(tier) ? 3 : 1) * allPedals(bench) + 1;
}

function foldable(tiers: readonly Criterion[], model: Model, question: Question): boolean {
  const [first, ...others] = tiers;
  if (first === undefined) return true;
  const weight = others.reduce((product, tier) => product * valuesOf(tier, question), 1);
  const measure = measureOf(first, model, question);
  const unit = BigInt(unitOf(first, measure));
  return measure.shares.every(([, coefficient]) => Number(coefficient / unit) * weight <= largestCoefficient);
}

function stepOf(tiers: readonly Criterion[], model: Model, question: Question): CompactStep {
  const sum = new Sum();
  const digits: Digit[] = [];
  let weight = 1;
  for (const tier of [...tiers].reverse()) {
    const measure = measureOf(tier, model, question);
    const unit = unitOf(tier, measure);
    digits.unshift({ tier, weight, unit });
    for (const [column, share] of measure.shares) sum.add(column, (share / BigInt(unit)) * BigInt(weight));
    if (!isMoney(tier)) weight *= valuesOf(tier, question);
  }
  return { objective: { name: tiers.join(', '), terms: sum.terms(), constant: 0 }, tiers: digits };
}

/** Money counts in the largest unit that all prices are multiples of; everything else in ones. */
const unitOf = (tier: Criterion, measure: Sum): number => (isMoney(tier) ? Number(measure.divisor() || 1n) : 1);

/** Money + noise price × pedals exposed, or newly so + supply price × supplies in use; or the tier's own sum. */
function measureOf(tier: Criterion, { measures }: Model, { bench: { policy } }: Question): Sum {
  if (!isMoney(tier)) return measures[tier];
  const { noise, supplies } = countedBeside[tier];
  const sum = new Sum().plus(measures.money);
  if (noise !== null) sum.plus(measures[noise], policy.noisePrice);
  return supplies ? sum.plus(measures.bricks, policy.supplyPrice) : sum;
}
