import { countedBeside, isMoney, type Criterion, type MoneyTier } from '../domain/aim.js';
import { countedTiers, isLeadTier, mostCounted, perCountedTier, type PerCountedTier } from '../domain/counted-tiers.js';
import { isPedalTier } from '../domain/pedal-tier.js';
import { greatestCommonDivisor } from '../domain/quantities.js';
import { allPedals, mostInlets, mostUnits } from '../loadout/bench.js';
import { pedalTierJudges } from '../loadout/pedal-tiers.js';
import { tierValues, type Digit } from './digits.js';
import type { Question } from './question.js';

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
  for (const tier of question.tiers) {
    const last = groups.at(-1);
    if (last !== undefined && scalarObjective([...last, tier], question).greatest <= largestNumber) last.push(tier);
    else groups.push([tier]);
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
    return { objective: alone, value: reached / (isMoney(tier) ? alone.moneyUnit : 1) };
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
  const moneyUnit = moneyUnitOf(question);
  const digits: Digit[] = [];
  let weight = 1;
  let greatest = 0;
  for (const tier of [...tiers].reverse()) {
    const unit = isMoney(tier) ? moneyUnit : 1;
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

/** The largest unit that every price is a multiple of, those of noise and of supplies in use included. */
function moneyUnitOf({ supplies, bench }: Question): number {
  const leads = bench.kinds.flatMap(({ supplyOf }) => supplyOf.map(({ price }) => price));
  const { noisePrice, supplyPrice } = bench.policy;
  const prices = [...supplies.map(({ supply }) => supply.price ?? 0), ...leads, noisePrice, supplyPrice];
  return prices.reduce<number>(greatestCommonDivisor, 0) || 1;
}

/** The most that a tier can come to: every pedal and every inlet on a unit of its own with as many leads as may be, two adapters for a polarity. */
export function mostOf(tier: Criterion, { bench, supplies }: Question): number {
  const [pedals, units] = [allPedals(bench), mostUnits(bench)];
  const { noisePrice, supplyPrice } = bench.policy;
  const members = bench.classes.flatMap((each) => (each.inlet === null ? each.members : []));
  const exposed = members.some(({ digital }) => digital) ? members.filter(({ highGain }) => highGain).length : 0;
  const some = (role: string): number => (bench.kinds.some((kind) => kind.role.kind === role) ? 1 : 0);
  const chains = bench.policy.chains === 'allow' ? some('chain') : 0;
  const adapters = members.reduce((sum, { polarity }) => sum + (polarity === 'unknown' ? 4 : 2), 2 * mostInlets(bench));
  const leads = {
    adapter: adapters * some('adapter'),
    join: pedals * some('join'),
    chain: Math.floor(pedals / 2) * chains,
  };
  const parts = leads.adapter + leads.join + leads.chain;
  const dearestPart = Math.max(0, ...bench.kinds.flatMap(({ supplyOf }) => supplyOf.map(({ price }) => price)));
  const money =
    units * Math.max(0, ...supplies.map(({ supply }) => supply.price ?? 0)) +
    (parts + mostBatteries(supplies)) * dearestPart;
  if (isPedalTier(tier)) return members.filter(pedalTierJudges[tier].mayCount).length;
  if (isLeadTier(tier)) return mostCounted(tier, leads);
  switch (tier) {
    case 'unpowered':
      return pedals;
    case 'bricks':
    case 'sockets':
      return units;
    case 'exposed':
      return exposed;
    case 'money':
      return money;
    case 'outlay':
      return money + supplyPrice * units;
    case 'cost':
    case 'newCost':
      return money + supplyPrice * units + noisePrice * exposed;
    case 'moved':
      return bench.classes.reduce((sum, each) => (each.berth === null ? sum : sum + each.members.length), 0);
  }
}

/** All batteries that could be paid for, in whichever pedal. */
const mostBatteries = (supplies: Question['supplies']): number =>
  supplies.reduce(
    (sum, { supply, solos }) =>
      supply.source.kind === 'battery' ? sum + Math.max(0, ...solos.map(({ route }) => route.length)) : sum,
    0,
  );

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
