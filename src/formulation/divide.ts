import { gathered } from '../../solver/gathered.js';
import type { Loadout } from '../loadout/loadout.js';
import { feedable, type SupplyUses } from '../loadout/supply-uses.js';
import type { ChainPlace, ChainPool, SoloUse } from '../loadout/uses.js';
import { pedalsOn } from './loadout-measures.js';
import { mostLeftOut, type Question } from './question.js';

/**
 * The question as several that together leave no plan out, by where one of the pedals hangs that parts of loadouts disagree
 * about: on a unit of each supply that it hangs on there, elsewhere, or nowhere; of a pedal whose unit is certain, by its
 * ways there. Units of a supply are alike, so which of them it is is of no account. Null when all of this is certain.
 */
export function divided(question: Question, parts: readonly Loadout[]): readonly Question[] | null {
  for (const pedal of mostDisputed(question, parts)) {
    const apart = withOneApart(question, pedal);
    const isUsed = ({ supply, unit }: SupplyUses): boolean =>
      parts.some((part) => part.supply === supply && part.unit === unit && pedalsIn(part).includes(pedal));
    const questions = byPlace(apart.question, apart.pedal, isUsed);
    if (questions !== null) return questions;
  }
  return null;
}

const pedalsIn = ({ hung }: Loadout): readonly number[] => gathered(hung, pedalsOn);

/** The classes of pedals on the parts, those first that are fed more often than there are, then by how many parts they are on. */
function mostDisputed({ bench }: Question, parts: readonly Loadout[]): readonly number[] {
  const onParts = bench.classes.map((_, pedal) => parts.filter((part) => pedalsIn(part).includes(pedal)).length);
  return [...bench.classes.keys()]
    .filter((pedal) => (onParts[pedal] ?? 0) > 0)
    .sort((one, other) => (onParts[other] ?? 0) - (onParts[one] ?? 0));
}

/** The question with a class that has no other member than one of the pedals of this class; that one is fed if any is. */
function withOneApart(question: Question, pedal: number): { readonly question: Question; readonly pedal: number } {
  const { bench, required } = question;
  const of = bench.classes[pedal];
  const [first, ...others] = of?.members ?? [];
  const [like] = others;
  if (of === undefined || first === undefined || like === undefined) return { question, pedal };
  const apart = bench.classes.length;
  const classes = [
    ...bench.classes.with(pedal, { ...of, like, members: others }),
    { ...of, like: first, members: [first] },
  ];
  const twice = <Use extends { readonly pedal: number }>(uses: readonly Use[]): readonly Use[] => [
    ...uses,
    ...uses.filter((use) => use.pedal === pedal).map((use) => ({ ...use, pedal: apart })),
  ];
  const supplies = question.supplies.map((uses) => ({
    ...uses,
    solos: twice(uses.solos),
    chains: uses.chains.map((pool) => ({ ...pool, places: twice(pool.places) })),
  }));
  const needed = required.get(pedal) ?? 0;
  const counts = new Map(required).set(apart, Math.min(1, needed)).set(pedal, Math.max(0, needed - 1));
  return { question: { ...question, bench: { ...bench, classes }, supplies, required: counts }, pedal: apart };
}

/** Null when it is certain where the pedal hangs, and how. */
function byPlace(question: Question, pedal: number, isUsed: (uses: SupplyUses) => boolean): readonly Question[] | null {
  const feeding = question.supplies.filter((uses) => feedable(uses).has(pedal));
  const mayBeLeftOut = mostLeftOut(question, pedal) > 0;
  const [only] = feeding;
  if (feeding.length === 1 && only !== undefined && unitsOf(only) === 1 && !mayBeLeftOut) {
    const ways = waysOn(only, pedal);
    return ways.length < 2 ? null : ways.map((way) => narrowed(question, pedal, (_, each) => isSameWay(each, way)));
  }
  const fed = { ...question, required: new Map(question.required).set(pedal, 1) };
  const elsewhere = feeding.filter((uses) => !isUsed(uses));
  return [
    ...feeding.filter(isUsed).map((uses) => onOneOf(uses, fed, pedal)),
    ...(elsewhere.length === 0 ? [] : [narrowed(fed, pedal, (uses) => elsewhere.includes(uses))]),
    ...(mayBeLeftOut ? [narrowed(question, pedal, () => false)] : []),
  ];
}

const unitsOf = ({ owned, forSale }: SupplyUses): number => owned + forSale;

/** The pedal on one unit of a supply, an owned one where there is one; it is told apart from the others. */
function onOneOf(uses: SupplyUses, question: Question, pedal: number): Question {
  if (unitsOf(uses) === 1) return narrowed(question, pedal, (each) => each === uses);
  const [owned, forSale] = uses.owned > 0 ? [1, 0] : [0, 1];
  const one = { ...uses, owned, forSale, unit: freeNumber(uses, question) };
  const others = { ...uses, owned: uses.owned - owned, forSale: uses.forSale - forSale };
  const supplies = gathered(question.supplies, (each) => (each === uses ? [one, others] : [each]));
  return narrowed({ ...question, supplies }, pedal, (each) => each === one);
}

/** The first number that no unit of the supply has that is told apart. */
function freeNumber({ supply }: SupplyUses, { supplies, today }: Question): number {
  const taken = new Set([
    ...supplies.filter((uses) => uses.supply === supply).map(({ unit }) => unit),
    ...[...today.berths.values()].filter((berth) => berth.supply === supply.id).map(({ unit }) => unit),
  ]);
  let number = 1;
  while (taken.has(number)) number += 1;
  return number;
}

/** A way in which a pedal hangs: by itself, or in a chain of a pool with a lead of some kind. */
type Way = { readonly use: SoloUse | ChainPlace; readonly pool: ChainPool | null; readonly lead: number | null };

const isSameWay = (one: Way, other: Way): boolean =>
  one.use === other.use && one.pool === other.pool && one.lead === other.lead;

const alone = (use: SoloUse): Way => ({ use, pool: null, lead: null });

const waysOn = ({ solos, chains }: SupplyUses, pedal: number): readonly Way[] =>
  [
    ...solos.map(alone),
    ...gathered(chains, (pool) =>
      gathered(pool.places, (use) => pool.leads.map((lead) => ({ use, pool, lead: lead.kind }))),
    ),
  ].filter(({ use }) => use.pedal === pedal);

/** The question with no other ways for a pedal than these. What is struck out may be what made a supply as good as another. */
function narrowed(question: Question, pedal: number, keeps: (uses: SupplyUses, way: Way) => boolean): Question {
  const supplies = gathered(question.supplies, (uses) => {
    if (!feedable(uses).has(pedal)) return [uses];
    const solos = uses.solos.filter((use) => use.pedal !== pedal || keeps(uses, alone(use)));
    const chains = gathered(uses.chains, (pool) => narrowedPool(pool, pedal, (way) => keeps(uses, way)));
    return solos.length === 0 && chains.length === 0 ? [] : [{ ...uses, solos, chains }];
  });
  return { ...question, supplies, narrowed: true };
}

/** The chains of a pool with the leads that the pedal may hang on, and those with others. */
function narrowedPool(pool: ChainPool, pedal: number, keeps: (way: Way) => boolean): readonly ChainPool[] {
  const own = pool.places.filter((use) => use.pedal === pedal);
  const others = pool.places.filter((use) => use.pedal !== pedal);
  const isKept = ({ kind }: ChainPool['leads'][number]): boolean => own.some((use) => keeps({ use, pool, lead: kind }));
  const kept = { ...pool, leads: pool.leads.filter(isKept) };
  const rest = { ...pool, leads: pool.leads.filter((lead) => !isKept(lead)), places: others };
  return [kept, rest].filter(({ leads, places }) => leads.length > 0 && places.length > 0);
}
