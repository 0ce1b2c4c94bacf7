import {
  candidatesOf,
  leadCostsOf,
  placeValue,
  type ChainCandidate,
  type LeadCosts,
  type Pattern,
} from './chain-pattern.js';
import type { ChainOption, UnitFrame, PlaceOption, SoloOption } from './frame.js';
import type { LoadoutDuals } from './loadout-duals.js';

/** What may take an output, or two. */
export type LoadoutContent =
  { readonly kind: 'solo'; readonly option: SoloOption } | { readonly kind: 'chain'; readonly pattern: Pattern };

/** A content with what it is worth and what it takes. */
export type ContentItem = {
  readonly content: LoadoutContent;
  readonly value: number;
  readonly banks: readonly number[];
  readonly pedals: readonly number[];
  readonly weights: readonly number[];
};

/** A pool of chains under given dual prices. */
export type Pool = {
  readonly chain: ChainOption;
  readonly leads: LeadCosts;
  /** Every class by its best route. */
  readonly candidates: readonly ChainCandidate[];
};

/** A frame under given dual prices: what is worth hanging there. */
export type FrameJob = {
  readonly frame: UnitFrame;
  /** How many pedals there are of each class. */
  readonly counts: readonly number[];
  readonly solos: readonly ContentItem[];
  readonly pools: readonly Pool[];
};

export function jobOf(frame: UnitFrame, duals: LoadoutDuals, counts: readonly number[]): FrameJob {
  const solos: ContentItem[] = [];
  for (const option of frame.solos) {
    const value = placeValue(option, duals);
    if (value <= 0 || (counts[option.pedal] ?? 0) === 0) continue;
    const content = { kind: 'solo' as const, option };
    solos.push({ content, value, banks: option.banks, pedals: [option.pedal], weights: option.weights });
  }
  const pools = frame.chains
    .map((chain) => ({ chain, leads: leadCostsOf(chain, duals), candidates: candidatesOf(chain, duals, counts) }))
    .filter((pool) => pool.candidates.some(({ value }) => value > 0) || bonusOf(pool) > 0);
  return { frame, counts, solos, pools };
}

/** By how much a chain is worth more than its pedals, where more of its leads are wanted than they cost. */
export const bonusOf = ({ leads }: Pick<Pool, 'leads'>): number => Math.max(0, -(leads[2]?.cost ?? 0));

/** By class what one pedal is worth, wherever that is most. */
export function pedalsAtTheirBest({ solos, pools }: FrameJob): ReadonlyMap<number, number> {
  const best = new Map<number, number>();
  const note = (pedal: number, value: number): void => {
    if (value > (best.get(pedal) ?? 0)) best.set(pedal, value);
  };
  for (const { pedals, value } of solos) note(pedals[0] ?? 0, value);
  for (const { candidates } of pools) for (const { place, value } of candidates) note(place.pedal, value);
  return best;
}

/** What all pedals are worth together, each at its best, and every output's chain: no content is worth more. */
export function allAtTheirBest(job: FrameJob): number {
  const { frame, pools, counts } = job;
  const bonuses = frame.outputs.map((count, bank) => {
    return count * Math.max(0, ...pools.filter(({ chain }) => chain.bank === bank).map(bonusOf));
  });
  const worth = [...pedalsAtTheirBest(job)].map(([pedal, value]) => value * (counts[pedal] ?? 0));
  return [...worth, ...bonuses].reduce((sum, value) => sum + value, 0);
}

/** The pedals of a chain as one item; its lead is the cheapest with enough tails. */
export function chainItem({ chain, leads, candidates }: Pool, places: readonly PlaceOption[]): ContentItem {
  const lead = leads[places.length] ?? { kind: -1, cost: Infinity };
  const valueOf = ({ pedal }: PlaceOption): number =>
    candidates.find(({ place }) => place.pedal === pedal)?.value ?? -Infinity;
  const value = places.reduce((sum, place) => sum + valueOf(place), -lead.cost);
  const weights = chain.weights.map((own, at) => places.reduce((sum, place) => sum + (place.weights[at] ?? 0), own));
  return {
    content: { kind: 'chain', pattern: { chain, places, lead: lead.kind, value } },
    value,
    banks: [chain.bank],
    pedals: places.map(({ pedal }) => pedal),
    weights,
  };
}

/** What an item takes of a unit. */
type Taken = Pick<ContentItem, 'banks' | 'pedals' | 'weights'>;

/** What is left of a unit while it is being filled. */
export class FrameRoom {
  readonly outputs: number[];
  readonly pedals: number[];
  readonly weights: number[];

  constructor({ frame, counts }: Pick<FrameJob, 'frame' | 'counts'>) {
    this.outputs = [...frame.outputs];
    this.pedals = [...counts];
    this.weights = [...frame.capacities];
  }

  fits({ banks, pedals, weights }: Taken): boolean {
    const [first, second] = banks;
    if ((this.outputs[first ?? 0] ?? 0) < (first === second ? 2 : 1)) return false;
    if (second !== undefined && (this.outputs[second] ?? 0) < 1) return false;
    if (weights.some((weight, at) => weight > (this.weights[at] ?? 0))) return false;
    return pedals.every((pedal) => (this.pedals[pedal] ?? 0) >= occurrences(pedals, pedal));
  }

  take({ banks, pedals, weights }: Taken): void {
    for (const bank of banks) this.outputs[bank] = (this.outputs[bank] ?? 0) - 1;
    for (const pedal of pedals) this.pedals[pedal] = (this.pedals[pedal] ?? 0) - 1;
    weights.forEach((weight, at) => (this.weights[at] = (this.weights[at] ?? 0) - weight));
  }
}

function occurrences(pedals: readonly number[], pedal: number): number {
  let count = 0;
  for (const each of pedals) if (each === pedal) count += 1;
  return count;
}
