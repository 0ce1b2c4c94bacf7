import { allAtTheirBest, type LoadoutContent, type FrameJob } from './content.js';
import { chainsInTurn } from './chains-in-turn.js';
import { greedilyFilled, type Draft } from './greedy-fill.js';
import { fillByLabels } from './label-fill.js';
import { fillByParts } from './part-fill.js';
import { rentsOf, type UnitMemory, type Range, type Span } from './rents.js';
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
  return fillWithin({ pedals: anyNumber, chains: anyNumber }, splits, { job, floor, effort, memory, most });
}

const anyNumber: Range = { least: 0, most: Infinity };

/** How deep the numbers of pedals and chains are split before contents are searched. */
const splits = 4;

type Wish = {
  readonly job: FrameJob;
  readonly floor: number;
  readonly effort: 'quick' | 'exact';
  readonly memory: UnitMemory;
  /** No content is worth more, whatever the rents say. */
  readonly most: number;
};

/**
 * The best content within a span. The numbers of pedals and of chains must be whole: where the relaxation has them in parts,
 * each side is filled by itself, which closes most gaps, for many pedals are worth the same.
 */
function fillWithin(span: Span, depth: number, wish: Wish): Filling<LoadoutContent> {
  const { job, floor, effort, memory, most } = wish;
  const rents = rentsOf(job, span, floor, memory, effort);
  const { numbers } = rents;
  const bound = Math.min(rents.bound, most);
  if (bound <= floor) return { bound, found: null };
  const greedy = greedilyFilled(job, rents.items);
  if (greedy.value > floor) return { bound, found: contentsOf(greedy) };
  if (effort === 'quick') return { bound, found: null };
  const inTurn = depth === splits ? chainsInTurn(job, rents.items, floor) : null;
  if (inTurn !== null) return { bound, found: contentsOf(inTurn) };
  const whole = fillByParts(job, rents, floor);
  if (whole !== null && (whole.found !== null || whole.bound <= floor)) {
    return { ...whole, bound: Math.min(bound, whole.bound) };
  }
  const split = depth === 0 ? undefined : (['pedals', 'chains'] as const).find((of) => isPart(numbers[of]));
  if (split === undefined) return fillByLabels(job, rents, floor);
  for (const side of sidesOf(span, split, numbers[split])) {
    const filling = fillWithin(side, depth - 1, wish);
    if (filling.found !== null) return { bound, found: filling.found };
    // Where one side gives up, the other one can no longer settle it.
    if (filling.bound > floor) return { bound, found: null };
  }
  return { bound: floor, found: null };
}

const isPart = (value: number): boolean => Math.abs(value - Math.round(value)) > 1e-5;

function sidesOf(span: Span, of: keyof Span, value: number): readonly Span[] {
  const whole = Math.floor(value);
  return [
    { ...span, [of]: { ...span[of], least: whole + 1 } },
    { ...span, [of]: { ...span[of], most: whole } },
  ];
}

const contentsOf = ({ items, value }: Draft): NonNullable<Filling<LoadoutContent>['found']> => ({
  value,
  contents: items.map(({ content }) => content),
});
