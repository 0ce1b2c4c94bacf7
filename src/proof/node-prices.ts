import { countsLead, leadTiers, perCountedTier } from '../domain/counted-tiers.js';
import { perPedalTier, type PerPedalTier } from '../domain/pedal-tier.js';
import type { ProofTags } from '../domain/proof.js';
import type { Condition } from './conditions.js';
import { kindsNamed, pedalsNamed } from './conditions.js';
import { exactNumber, Flaw } from './flaw.js';
import { sortNamed, type InletSort } from './inlets.js';
import type { Measure } from './measure.js';
import type { StepClaim } from './claim.js';
import { inletKey, unitCounts } from './sources.js';
import type { StockGroup, StockLeadKind } from './stock.js';

/** What tags make of everything: the part of the bound that no unit changes, and what units are judged by. */
export type NodePrices = PerPedalTier<number> & {
  /** The bound if no unit carried more than it costs, in scaled numbers. */
  readonly base: bigint;
  readonly exposed: number;
  readonly newlyExposed: number;
  readonly moved: number;
  /** What a unit of the group costs. */
  readonly unit: (group: StockGroup) => number;
  /** What each pedal is worth on a unit of the group, by its place on the board, then what inlets are. */
  readonly pedals: (group: StockGroup) => readonly number[];
  /** How many pedals of each class one unit of the group holds at the most, where conditions say so; by class. */
  readonly mostPedals: (group: StockGroup) => readonly number[];
  /** What each lead kind costs on a unit of the group; Infinity where there is none. */
  readonly leads: (group: StockGroup) => readonly number[];
  /** The same for groups to which the same conditions apply. */
  readonly key: (group: StockGroup) => string;
};

/** A condition on the way to a node, with its tag. */
type Tagged = Condition & { readonly tag: bigint };

/** @throws Flaw when tags have the wrong sign, or speak of what there is not. */
export function nodePrices(tags: ProofTags, path: readonly Condition[], claim: StepClaim): NodePrices {
  const tagged = taggedConditions(tags, path);
  const prices = effectivePrices(tags, claim);
  const pedals = pedalTags(tags, claim);
  const listed = listedKinds(tags, claim.stock.kinds);
  const leads = claim.stock.kinds.map((kind, index) => leadCost(kind, listed.get(index), prices));
  const limits = limitTags(tags, claim);
  const inlets = inletTags(tags, claim);
  const tagAt = [...pedals, ...claim.inlets.flatMap((sort) => sort.members.map(() => inlets.get(sort)?.fed ?? 0n))];
  const base =
    pedals.reduce((sum, tag) => sum + tag, 0n) +
    lostOnInlets(inlets) +
    limits +
    tagged.reduce((sum, { tag, amount }) => sum + tag * BigInt(amount), 0n) +
    [...listed].reduce((sum, [kind, tag]) => sum + pieceTerm(claim.stock.kinds[kind], tag, prices), 0n) +
    (claim.partial ? pedals.reduce((sum, tag, place) => sum + leftOut(place, tag, prices, claim), 0n) : 0n);
  const applying = (group: StockGroup, counts: Condition['counts']): readonly Tagged[] =>
    tagged.filter((condition) => condition.counts === counts && condition.tag !== 0n && condition.concerns(group));
  const worth = (place: number, conditions: readonly Tagged[]): bigint =>
    conditions.reduce((sum, { pedals: of, tag }) => (of.has(place) ? sum + tag : sum), tagAt[place] ?? 0n);
  const cost = (kind: number, conditions: readonly Tagged[]): number => {
    const own = leads[kind] ?? null;
    if (own === null) return Infinity;
    return exactNumber(conditions.reduce((sum, { kinds, tag }) => (kinds.has(kind) ? sum - tag : sum), own));
  };
  return {
    base,
    exposed: exactNumber(prices.exposed),
    newlyExposed: exactNumber(prices.newlyExposed),
    moved: exactNumber(prices.moved),
    ...perPedalTier((tier) => exactNumber(prices[tier])),
    unit: (group) => {
      const conditions = applying(group, 'units').reduce((sum, { tag }) => sum + tag, 0n);
      const { bricks, sockets } = unitCounts(group.supply.source);
      const counted = bricks * prices.bricks + sockets * prices.sockets;
      return exactNumber(counted + prices.money(group.price) + paidBy(group, inlets) - conditions);
    },
    pedals: (group) => {
      const conditions = applying(group, 'pedals');
      return tagAt.map((_, place) => exactNumber(worth(place, conditions)));
    },
    mostPedals: (group) =>
      claim.classes.map(({ members }) =>
        path
          .filter((condition) => holdsDown(condition, group, members))
          .reduce((most, { amount }) => Math.min(most, amount), members.length),
      ),
    leads: (group) => {
      const conditions = applying(group, 'leads');
      return leads.map((_, kind) => cost(kind, conditions));
    },
    key: (group) =>
      tagged
        .flatMap((condition, index) =>
          (condition.tag !== 0n || limitsPedals(condition)) && condition.concerns(group) ? [index] : [],
        )
        .join(),
  };
}

type InletTags = ReadonlyMap<InletSort, { readonly fed: bigint; readonly paid: bigint }>;

/** As many inlets of a sort are fed as units with such an inlet are in use: so much is gained by one, and lost by the other. */
function inletTags({ inlets = [] }: ProofTags, claim: StepClaim): InletTags {
  const listed = new Map<InletSort, { readonly fed: bigint; readonly paid: bigint }>();
  for (const { supplies, fed, paid } of inlets) {
    const sort = sortNamed(supplies, claim.inlets);
    if (listed.has(sort)) throw new Flaw(`it names the inlets of ${supplies.join(', ')} twice`);
    mustBe(fed >= 0 && paid >= 0, `the inlets of ${supplies.join(', ')}`);
    listed.set(sort, { fed: BigInt(fed), paid: BigInt(paid) });
  }
  return listed;
}

/** What is lost where as many units as can be are in use, and pay more than their inlets gain. */
const lostOnInlets = (inlets: InletTags): bigint =>
  [...inlets].reduce((sum, [{ members }, { fed, paid }]) => sum + BigInt(members.length) * least(0n, fed - paid), 0n);

function paidBy({ supply }: StockGroup, inlets: InletTags): bigint {
  const own = inletKey(supply);
  return own === null ? 0n : ([...inlets].find(([{ key }]) => key === own)?.[1].paid ?? 0n);
}

const limitsPedals = ({ counts, side }: Condition): boolean => counts === 'pedals' && side === 'at most';

/** Whether it limits all of these pedals on all units of the group together, and so on each of them. */
const holdsDown = (condition: Condition, group: StockGroup, members: readonly number[]): boolean =>
  limitsPedals(condition) && condition.concerns(group) && members.every((member) => condition.pedals.has(member));

/** What a plan saves at the most that leaves a pedal without power, which moves it where it is plugged; one that is kept is not left out. */
function leftOut(place: number, tag: bigint, { unpowered, moved }: Prices, { classes }: StepClaim): bigint {
  const standing = classes.find(({ members }) => members.includes(place))?.standing;
  if (standing?.kept === true) return 0n;
  return least(0n, unpowered + (standing === undefined || standing.place === null ? 0n : moved) - tag);
}

type Prices = Measure & { readonly sockets: bigint };

/** The scaled worth of one of each thing, dearer by what the tags ask of it; no aim ranks sockets. */
function effectivePrices(tags: ProofTags, { scale, measure, earlier }: StepClaim): Prices {
  const past = tags.earlier ?? earlier.map(() => 0);
  if (past.length !== earlier.length) throw new Flaw(`it has ${past.length} tags for ${earlier.length} earlier steps`);
  for (const tag of past) mustBe(tag <= 0, 'an earlier step');
  const effective = (of: (each: Measure) => bigint): bigint =>
    past.reduce(
      (sum, tag, step) => sum - BigInt(tag) * (earlier[step] === undefined ? 0n : of(earlier[step].measure)),
      scale * of(measure),
    );
  return {
    unpowered: effective((each) => each.unpowered),
    exposed: effective((each) => each.exposed),
    newlyExposed: effective((each) => each.newlyExposed),
    moved: effective((each) => each.moved),
    bricks: effective((each) => each.bricks) - BigInt(tags.bricks ?? 0),
    sockets: -BigInt(tags.sockets ?? 0),
    ...perCountedTier((tier) => effective((each) => each[tier])),
    money: (amount) => effective((each) => each.money(amount)) - BigInt(tags.budget ?? 0) * BigInt(amount),
  };
}

function limitTags(tags: ProofTags, { limits, earlier }: StepClaim): bigint {
  const term = (tag: number, limit: number | null, name: string): bigint => {
    mustBe(tag <= 0, name);
    if (tag !== 0 && limit === null) throw new Flaw(`it has a tag for ${name}, which the board does not limit`);
    return BigInt(tag) * BigInt(limit ?? 0);
  };
  return (
    term(tags.bricks ?? 0, limits.bricks, 'the bricks') +
    term(tags.sockets ?? 0, limits.sockets, 'the mains sockets') +
    term(tags.budget ?? 0, limits.budget, 'the budget') +
    (tags.earlier ?? []).reduce((sum, tag, step) => sum + BigInt(tag) * (earlier[step]?.value ?? 0n), 0n)
  );
}

function taggedConditions({ conditions }: ProofTags, path: readonly Condition[]): readonly Tagged[] {
  const tags = conditions ?? path.map(() => 0);
  if (tags.length !== path.length) throw new Flaw(`it has ${tags.length} tags for ${path.length} conditions`);
  return path.map((condition, index) => {
    const tag = tags[index] ?? 0;
    mustBe(condition.side === 'at most' ? tag <= 0 : tag >= 0, `the condition ${index + 1}`);
    return { ...condition, tag: BigInt(tag) };
  });
}

function pedalTags({ pedals: tags }: ProofTags, { board }: StepClaim): readonly bigint[] {
  pedalsNamed(Object.keys(tags), board);
  return board.pedals.map(({ id }) => BigInt(Object.hasOwn(tags, id) ? (tags[id] ?? 0) : 0));
}

/** The tags of lead kinds, by the kind's place. */
function listedKinds({ leads = [] }: ProofTags, kinds: readonly StockLeadKind[]): ReadonlyMap<number, bigint> {
  const listed = new Map<number, bigint>();
  for (const { parts, tag } of leads) {
    const [kind, ...others] = kindsNamed(parts, kinds);
    if (kind === undefined || others.length > 0) throw new Flaw(`its lead ${parts.join(', ')} is not of one kind`);
    if (listed.has(kind)) throw new Flaw(`it names the lead ${parts.join(', ')} twice`);
    mustBe(tag >= 0, `the lead ${parts.join(', ')}`);
    listed.set(kind, BigInt(tag));
  }
  return listed;
}

/**
 * What one lead costs: its tag, and no less than its cheapest piece does, as a tag below that costs the bound nothing to
 * raise. Null when there is no piece.
 */
function leadCost({ offers, role }: StockLeadKind, tag: bigint | undefined, prices: Measure): bigint | null {
  const [first, ...others] = offers.map(({ price }) => price);
  if (first === undefined) return null;
  const cheapest = prices.money(others.reduce((least, price) => Math.min(least, price), first));
  const counted = leadTiers.reduce((sum, tier) => (countsLead(tier, { role }) ? sum + prices[tier] : sum), 0n);
  return counted + (tag === undefined || tag < cheapest ? cheapest : tag);
}

/** What the tag of a kind asks for more than its pieces cost is lost on every piece. */
function pieceTerm(kind: StockLeadKind | undefined, tag: bigint, prices: Measure): bigint {
  return (kind?.offers ?? []).reduce((sum, { pieces, price }) => {
    const gain = prices.money(price) - tag;
    if (gain >= 0n) return sum;
    if (pieces === Infinity) throw new Flaw('it asks more for a lead than any number of pieces costs');
    return sum + BigInt(pieces) * gain;
  }, 0n);
}

function mustBe(sign: boolean, what: string): void {
  if (!sign) throw new Flaw(`its tag of ${what} has the wrong sign`);
}

const least = (first: bigint, second: bigint): bigint => (first < second ? first : second);
