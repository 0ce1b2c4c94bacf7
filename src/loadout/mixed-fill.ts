import { allAtTheirBest, type LoadoutContent, type FrameJob } from './content.js';
import { chainsInTurn } from './chains-in-turn.js';
import { greedilyFilled, type Draft } from './greedy-fill.js';
import { fillByParts } from './part-fill.js';
import { rentsOf, type Counted, type UnitMemory, type Range, type Span } from './rents.js';
import type { Filling } from './solo-fill.js';

/**
 * The most that pedals, alone and in chains, are worth on one unit with several outputs: first a bound by rents and a quick
 * filling; where neither decides, a search that is exact.
 */
export function fillWithChains(
  job: FrameJob,
  floor: number,
  effort: 'quick' | 'exact',
  memory: UnitMemory,
): Filling<LoadoutContent> {
  const most = allAtTheirBest(job);
  if (most <= floor) return { bound: most, found: null };
  return fillWithin(new Map(), splits, { job, floor, effort, memory, most, relaxations: { left: mostRelaxations } });
}

const anyNumber: Range = { least: 0, most: Infinity };

/** How deep numbers of pedals and chains are split before contents are searched. */
const splits = 8;
/** Relaxations for all sides together, twice what hard boards were seen to need: nobody can stop a filling. */
const mostRelaxations = 40;

type Wish = {
  readonly job: FrameJob;
  readonly floor: number;
  readonly effort: 'quick' | 'exact';
  readonly memory: UnitMemory;
  /** No content is worth more, whatever the rents say. */
  readonly most: number;
  readonly relaxations: { left: number };
};

/**
 * The best content within a span. The numbers of pedals, of chains and of those that need a longer lead must be whole: where the
 * relaxation has them in parts, each side is filled by itself, which closes most gaps, for many pedals are worth the same, and a
 * relaxation takes parts of many long chains that share the pedals that draw least.
 */
function fillWithin(span: Span, depth: number, wish: Wish): Filling<LoadoutContent> {
  const { job, floor, effort, memory, most, relaxations } = wish;
  relaxations.left -= 1;
  const rents = rentsOf(job, span, floor, memory, effort);
  const bound = Math.min(rents.bound, most);
  if (bound <= floor) return { bound, found: null };
  const greedy = greedilyFilled(job, rents.items);
  if (greedy.value > floor) return { bound, found: contentsOf(greedy) };
  if (effort === 'quick') return { bound, found: null };
  const inTurn = depth === splits ? chainsInTurn(job, rents.items, floor) : null;
  if (inTurn !== null) return { bound, found: contentsOf(inTurn) };
  const split = depth === 0 ? undefined : [...rents.numbers].find(([, number]) => isPart(number));
  // Between the whole and what cannot be split further there are mostly too many parts to list.
  if (split === undefined || depth === splits) {
    const listed = fillByParts(job, rents, floor);
    if (listed !== null && (listed.found !== null || listed.bound <= floor)) {
      return { ...listed, bound: Math.min(bound, listed.bound) };
    }
  }
  if (split === undefined) return { bound, found: null };
  const filling = ofSides(sidesOf(span, ...split), depth - 1, wish);
  return { ...filling, bound: Math.min(bound, filling.bound) };
}

/** The best of what is on either side; unknown where there are no more relaxations for it. */
function ofSides(sides: readonly Span[], depth: number, wish: Wish): Filling<LoadoutContent> {
  if (wish.relaxations.left <= 0) return { bound: Infinity, found: null };
  let bound = wish.floor;
  for (const side of sides) {
    const filling = fillWithin(side, depth, wish);
    if (filling.found !== null) return { bound: Infinity, found: filling.found };
    bound = Math.max(bound, filling.bound);
  }
  return { bound, found: null };
}

const isPart = (value: number): boolean => Math.abs(value - Math.round(value)) > 1e-5;

function sidesOf(span: Span, of: Counted, number: number): readonly Span[] {
  const whole = Math.floor(number);
  const now = span.get(of) ?? anyNumber;
  return [new Map(span).set(of, { ...now, least: whole + 1 }), new Map(span).set(of, { ...now, most: whole })];
}

const contentsOf = ({ items, value }: Draft): NonNullable<Filling<LoadoutContent>['found']> => ({
  value,
  contents: items.map(({ content }) => content),
});
