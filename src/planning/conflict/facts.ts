import type { Policy, Runtime } from '../../domain/board.js';
import { isLead, type Part } from '../../domain/part.js';
import type { Pedal } from '../../domain/pedal.js';
import type { Factor, PartId, SupplyId } from '../../domain/quantities.js';
import type { Bank, Supply } from '../../domain/supply.js';
import { withBoard, withThings } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';

/**
 * What a board, a shop and the rules ask for besides "this pedal has power": each can be taken back by itself, and then more
 * plans are possible, never fewer. What is not among them always holds: the volts, the kind of power and the milliamps that
 * outputs give, how many of them there are, the tails of leads and the joins that makers allow.
 */
const factNames = [
  'mains',
  'plug',
  'polarity',
  'setting',
  'ground',
  'startup',
  'total',
  'runtime',
  'battery',
  'headroom chained',
  'alone',
  'guess',
  'headroom supply',
  'headroom alone',
  'chains',
  'sockets',
  'bricks',
  'budget',
] as const;

export type FactName = (typeof factNames)[number];

/** One of them; stock is a fact for each thing of which only so many can be had. */
export type Fact =
  | { readonly kind: FactName }
  | { readonly kind: 'stock'; readonly of: 'supply'; readonly id: SupplyId }
  | { readonly kind: 'stock'; readonly of: 'part'; readonly id: PartId };

/** All facts that say anything about this board, those first that a person can do the least about. */
export function factsOf(kit: Kit): readonly Fact[] {
  const named = factNames.filter((name) => says[name](kit));
  const limited = <Thing extends Supply | Part>(things: Iterable<Thing>): readonly Thing[] =>
    [...things].filter(({ price, stock }) => price !== null && stock !== null);
  return [
    ...named.filter((name) => !isLimit(name)).map((kind) => ({ kind })),
    ...limited(kit.parts.values()).map(({ id }) => ({ kind: 'stock', of: 'part', id }) as const),
    ...limited(kit.supplies.values()).map(({ id }) => ({ kind: 'stock', of: 'supply', id }) as const),
    ...named.filter(isLimit).map((kind) => ({ kind })),
  ];
}

const isLimit = (name: FactName): boolean => name === 'sockets' || name === 'bricks' || name === 'budget';

const isOne = ({ numerator, denominator }: Factor): boolean => numerator === denominator;

const differ = <Value>(values: readonly Value[]): boolean => new Set(values).size > 1;

/** Whether a fact could make a difference at all. */
const says: Readonly<Record<FactName, (of: Kit) => boolean>> = {
  mains: ({ board }) => board.policy.mains.length > 0,
  plug: (of) => differ(connectorsOf(of)),
  // Where all are alike, a chain or join lead that reverses still makes them differ.
  polarity: (of) => differ(polaritiesOf(of)) || partsOf(of).some(({ reverses }) => reverses),
  setting: (of) => banksOf(of).some(({ switching }) => switching === 'together'),
  ground: ({ board: { pedals } }) =>
    differ(pedals.map(({ ground }) => ground)) || pedals.some(({ ground }) => ground === 'unknown'),
  startup: ({ board }) => board.pedals.some(({ startup }) => startup !== null),
  total: (of) => suppliesOf(of).some(({ total, banks }) => total !== null || banks.some((bank) => bank.total !== null)),
  runtime: ({ board, ...of }) => board.policy.runtime !== null && [...of.supplies.values()].some(isPowerBank),
  battery: ({ board, supplies }) =>
    board.policy.batteries !== null && [...supplies.values()].some(({ source }) => source.kind === 'battery'),
  alone: ({ board }) => board.pedals.some(({ alone }) => alone),
  guess: ({ board }) => !isOne(board.policy.guess) && board.pedals.some(({ figure }) => figure === 'guess'),
  'headroom chained': ({ board }) => !isOne(board.policy.headroom.chained),
  'headroom supply': ({ board }) => !isOne(board.policy.headroom.supply),
  'headroom alone': ({ board }) => !isOne(board.policy.headroom.alone),
  chains: ({ board }) => board.policy.chains === 'never',
  sockets: ({ board }) => board.policy.sockets !== null,
  bricks: ({ board }) => board.policy.bricks !== null,
  budget: ({ board }) => board.policy.budget !== null,
};

const isPowerBank = ({ source }: Supply): boolean => source.kind === 'charge';

const suppliesOf = ({ supplies }: Kit): readonly Supply[] => [...supplies.values()];
const partsOf = ({ parts }: Kit): readonly Part[] => [...parts.values()];
const banksOf = (of: Kit): readonly Bank[] => suppliesOf(of).flatMap(({ banks }) => banks);

const connectorsOf = (of: Kit): readonly string[] => [
  ...of.board.pedals.map(({ inlet }) => inlet),
  ...banksOf(of).map(({ plug }) => plug),
  ...partsOf(of)
    .filter(isLead)
    .flatMap(({ fits, gives }) => [fits, gives]),
];

const polaritiesOf = (of: Kit): readonly unknown[] => [
  ...of.board.pedals.flatMap(({ polarity }) => polarity ?? []),
  ...banksOf(of).flatMap(({ polarity }) => polarity ?? []),
];

/** The same board and shop without some facts. */
export function relaxed(of: Kit, facts: readonly Fact[]): Kit {
  const names = new Set(facts.map(({ kind }) => kind));
  const endless = new Set(facts.flatMap((fact) => (fact.kind === 'stock' ? [`${fact.of} ${fact.id}`] : [])));
  const supply = (each: Supply): Supply => relaxedSupply(withStock(each, endless.has(`supply ${each.id}`)), names);
  const part = (each: Part): Part => relaxedPart(withStock(each, endless.has(`part ${each.id}`)), names);
  const { board } = of;
  const changed = {
    ...board,
    policy: relaxedPolicy(board.policy, names),
    pedals: board.pedals.map((pedal) => relaxedPedal(pedal, names)),
  };
  return withThings(withBoard(of, changed), supply, part);
}

type Names = ReadonlySet<Fact['kind']>;

const one: Factor = { numerator: 1, denominator: 1 };

function relaxedPolicy(policy: Policy, names: Names): Policy {
  const { headroom } = policy;
  return {
    ...policy,
    headroom: {
      alone: names.has('headroom alone') ? one : headroom.alone,
      chained: names.has('headroom chained') ? one : headroom.chained,
      supply: names.has('headroom supply') ? one : headroom.supply,
    },
    guess: names.has('guess') ? one : policy.guess,
    chains: names.has('chains') ? 'allow' : policy.chains,
    mains: names.has('mains') ? [] : policy.mains,
    runtime: names.has('runtime') && policy.runtime !== null ? aMoment : policy.runtime,
    batteries:
      names.has('battery') && policy.batteries !== null
        ? { ...policy.batteries, change: aMoment.hours }
        : policy.batteries,
    sockets: names.has('sockets') ? null : policy.sockets,
    bricks: names.has('bricks') ? null : policy.bricks,
    budget: names.has('budget') ? null : policy.budget,
  };
}

/** So short that any charge does. */
const aMoment: Runtime = { hours: { numerator: 1, denominator: 1000 }, usable: one };

const anyConnector = 'any';

/** Whether any of these facts is taken back. What is not changed stays the same object: it is known as what it was. */
const hasAny = (names: Names, facts: readonly FactName[]): boolean => facts.some((fact) => names.has(fact));

const relaxedPedal = (pedal: Pedal, names: Names): Pedal =>
  hasAny(names, ['plug', 'polarity', 'ground', 'startup', 'alone'])
    ? {
        ...pedal,
        ...(names.has('plug') && { inlet: anyConnector }),
        ...(names.has('polarity') && pedal.polarity !== null && { polarity: 'centre-negative' }),
        ...(names.has('ground') && { ground: 'negative' }),
        ...(names.has('startup') && { startup: null }),
        ...(names.has('alone') && { alone: false }),
      }
    : pedal;

function relaxedSupply(supply: Supply, names: Names): Supply {
  if (!hasAny(names, ['total', 'plug', 'polarity', 'setting'])) return supply;
  const noTotal = names.has('total') && { total: null };
  const banks = supply.banks.map((bank): Bank => ({
    ...bank,
    ...noTotal,
    ...(names.has('plug') && { plug: anyConnector }),
    ...(names.has('polarity') && bank.polarity !== null && { polarity: 'centre-negative' }),
    ...(names.has('setting') && { switching: 'each' }),
  }));
  return { ...supply, ...noTotal, banks };
}

const relaxedPart = (part: Part, names: Names): Part =>
  hasAny(names, ['plug', 'polarity'])
    ? {
        ...part,
        ...(names.has('plug') && { fits: anyConnector, gives: anyConnector }),
        ...(names.has('polarity') && { reverses: false }),
      }
    : part;

const withStock = <Thing extends Supply | Part>(thing: Thing, endless: boolean): Thing =>
  endless && thing.price !== null ? { ...thing, stock: null } : thing;

/** Whether two facts are the same one. */
export const sameFact = (one: Fact, other: Fact): boolean => keyOf(one) === keyOf(other);

export const keyOf = (fact: Fact): string => (fact.kind === 'stock' ? `stock ${fact.of} ${fact.id}` : fact.kind);
