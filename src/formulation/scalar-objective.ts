import { countedBeside, isMoney, type Criterion, type MoneyTier } from '../domain/aim.js';
import { countedTiers, perCountedTier, type PerCountedTier } from '../domain/counted-tiers.js';
import { tierValues, type Digit } from './digits.js';
import type { Question } from './question.js';
import { mostOf, unitOf } from './tier-extents.js';

/** What a plan, or a part of one, adds up to; money in minor units. */
export type Measures = PerCountedTier<number> & {
  readonly unpowered: number;
  readonly money: number;
  readonly exposed: number;
  /** Of those exposed the ones that are not exposed today. */
  readonly newlyExposed: number;
  /** Pedals that are plugged in today and do not stay. */
  readonly moved: number;
  readonly bricks: number;
  readonly sockets: number;
};

/** A lexicographic order made scalar: several tiers as digits of one whole number, Σ weight × (tier's value / unit). */
export type ScalarObjective = {
  /** The most important first. */
  readonly tiers: readonly Digit[];
  /** What one of each measure adds to the number; for money what one `moneyUnit` adds. */
  readonly weights: Measures;
  /** Minor units of money that all prices are multiples of. */
  readonly moneyUnit: number;
  /** No plan that is worth looking at has a greater number. */
  readonly greatest: number;
};

/** What earlier steps have settled: their numbers may not grow. */
export type SettledStep = { readonly objective: ScalarObjective; readonly value: number };

/** Numbers up to this leave an engine's double precision enough digits to tell the last tier's values apart. */
const largestNumber = 2 ** 43;

/** The objectives that together are the question's whole order, as few as precision allows; one of no tier for any plan. */
export function scalarObjectives(question: Question): readonly ScalarObjective[] {
  const groups: Criterion[][] = [];
  // One more than the greatest number of the last group.
  let numbers = Infinity;
  for (const tier of question.tiers) {
    const digits = 1 + mostOf(tier, question) / unitOf(tier, question);
    numbers *= digits;
    if (numbers - 1 <= largestNumber) groups.at(-1)?.push(tier);
    else {
      groups.push([tier]);
      numbers = digits;
    }
  }
  return (groups.length === 0 ? [[]] : groups).map((tiers) => scalarObjective(tiers, question));
}

/** What must not grow beyond the question's own limits, as if earlier steps had settled it. */
export const limitedAtFirst = (question: Question): readonly SettledStep[] =>
  question.mostExposed === null
    ? []
    : [{ objective: scalarObjective(['exposed'], question), value: question.mostExposed }];

/**
 * What a step has settled, tier by tier: that none of them grows says as much as that their number does not, as no plan has a
 * smaller number. Its large weights would leave dual prices, which are whole, nothing to say.
 */
export const settledTiers = (objective: ScalarObjective, value: number, question: Question): readonly SettledStep[] =>
  tierValues(objective, value).map(([tier, reached]) => {
    const alone = scalarObjective([tier], question);
    return { objective: alone, value: reached / unitOf(tier, question) };
  });

/**
 * The objective of a step, with no number worth looking at that only plans have which are no better than the one to be beaten. What earlier
 * steps have settled may be better already.
 */
export function beatingObjective(
  objective: ScalarObjective,
  { beating, tiers }: Pick<Question, 'beating' | 'tiers'>,
  settled: ReadonlyMap<Criterion, number>,
): ScalarObjective {
  if (beating === undefined || [...settled].some(([tier, value]) => value !== beating.get(tier))) return objective;
  let greatest = 0;
  for (const { tier, unit, weight } of objective.tiers) {
    const value = beating.get(tier) ?? Infinity;
    const digit = Math.floor(value / unit);
    greatest += digit * weight;
    // Whatever the later tiers come to, where this one is below a value between two of its digits.
    if (digit * unit < value) return { ...objective, greatest: Math.min(objective.greatest, greatest + weight - 1) };
  }
  const isLast = objective.tiers.at(-1)?.tier === tiers.at(-1);
  return { ...objective, greatest: Math.min(objective.greatest, isLast ? greatest - 1 : greatest) };
}

function scalarObjective(tiers: readonly Criterion[], question: Question): ScalarObjective {
  const moneyUnit = unitOf('money', question);
  const digits: Digit[] = [];
  let weight = 1;
  let greatest = 0;
  for (const tier of [...tiers].reverse()) {
    const unit = unitOf(tier, question);
    digits.unshift({ tier, unit, weight });
    greatest += (weight * mostOf(tier, question)) / unit;
    weight = greatest + 1;
  }
  const of = (tier: Criterion): number => digits.find((digit) => digit.tier === tier)?.weight ?? 0;
  const { noisePrice, supplyPrice } = question.bench.policy;
  const ofMoney = (counts: (tier: MoneyTier) => boolean): number =>
    digits.reduce((sum, digit) => (isMoney(digit.tier) && counts(digit.tier) ? sum + digit.weight : sum), 0);
  const ofNoise = (noise: 'exposed' | 'newlyExposed'): number =>
    ofMoney((tier) => countedBeside[tier].noise === noise) * (noisePrice / moneyUnit);
  const weights = {
    unpowered: of('unpowered'),
    money: ofMoney(() => true),
    exposed: of('exposed') + ofNoise('exposed'),
    newlyExposed: ofNoise('newlyExposed'),
    moved: of('moved'),
    bricks: of('bricks') + ofMoney((tier) => countedBeside[tier].supplies) * (supplyPrice / moneyUnit),
    sockets: of('sockets'),
    ...perCountedTier(of),
  };
  return { tiers: digits, weights, moneyUnit, greatest };
}

/** The number of some measures. */
export const scalarValue = ({ weights, moneyUnit }: ScalarObjective, measures: Measures): number =>
  weights.unpowered * measures.unpowered +
  weights.money * (measures.money / moneyUnit) +
  weights.exposed * measures.exposed +
  weights.newlyExposed * measures.newlyExposed +
  weights.moved * measures.moved +
  weights.bricks * measures.bricks +
  weights.sockets * measures.sockets +
  countedTiers.reduce((sum, tier) => sum + weights[tier] * measures[tier], 0);
