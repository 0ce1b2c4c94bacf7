import { gathered } from '../../solver/gathered.js';
import { remembered } from '../../solver/remembered.js';
import { isMoney, type Criterion } from '../domain/aim.js';
import { mostCounted, perLeadTier } from '../domain/counted-tiers.js';
import { perPedalTier } from '../domain/pedal-tier.js';
import { greatestCommonDivisor } from '../domain/quantities.js';
import { allPedals, mostInlets, mostUnits } from '../loadout/bench.js';
import { pedalTierJudges } from '../loadout/pedal-tiers.js';
import type { Question } from './question.js';

/** What all values of a tier are multiples of: for money the largest unit that every price has, those of noise and of supplies in use included. */
export const unitOf = (tier: Criterion, question: Question): number =>
  isMoney(tier) ? extentsOf(question).moneyUnit : 1;

/** The most that a tier can come to: every pedal and every inlet on a unit of its own with as many leads as may be, two adapters for a polarity. */
export const mostOf = (tier: Criterion, question: Question): number => extentsOf(question).most[tier];

type Extents = { readonly moneyUnit: number; readonly most: Readonly<Record<Criterion, number>> };

/** Asked for again and again of one question. */
const known = new WeakMap<Question, Extents>();

const extentsOf = (question: Question): Extents =>
  remembered(known, question, () => ({ moneyUnit: moneyUnitOf(question), most: mostOfTiers(question) }));

function moneyUnitOf({ supplies, bench }: Question): number {
  const { noisePrice, supplyPrice } = bench.policy;
  const prices = [...supplies.map(({ supply }) => supply.price ?? 0), ...leadPrices(bench), noisePrice, supplyPrice];
  return prices.reduce<number>(greatestCommonDivisor, 0) || 1;
}

const leadPrices = ({ kinds }: Question['bench']): readonly number[] =>
  gathered(kinds, ({ supplyOf }) => supplyOf.map(({ price }) => price));

function mostOfTiers({ bench, supplies }: Question): Extents['most'] {
  const [pedals, units] = [allPedals(bench), mostUnits(bench)];
  const { noisePrice, supplyPrice } = bench.policy;
  const members = gathered(bench.classes, (each) => (each.inlet === null ? each.members : []));
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
  const money =
    units * Math.max(0, ...supplies.map(({ supply }) => supply.price ?? 0)) +
    (parts + mostBatteries(supplies)) * Math.max(0, ...leadPrices(bench));
  const outlay = money + supplyPrice * units;
  const cost = outlay + noisePrice * exposed;
  return {
    ...perPedalTier((tier) => members.filter(pedalTierJudges[tier].mayCount).length),
    ...perLeadTier((tier) => mostCounted(tier, leads)),
    unpowered: pedals,
    bricks: units,
    sockets: units,
    exposed,
    money,
    outlay,
    cost,
    newCost: cost,
    moved: bench.classes.reduce((sum, each) => (each.berth === null ? sum : sum + each.members.length), 0),
  };
}

/** All batteries that could be paid for, in whichever pedal. */
const mostBatteries = (supplies: Question['supplies']): number =>
  supplies.reduce(
    (sum, { supply, solos }) =>
      supply.source.kind === 'battery' ? sum + Math.max(0, ...solos.map(({ route }) => route.length)) : sum,
    0,
  );
