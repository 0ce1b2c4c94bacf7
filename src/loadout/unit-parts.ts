import { gathered } from '../../solver/gathered.js';
import { chainBound, type ChainBound } from './chain-bound.js';
import { leadSizes, type LeadCosts } from './chain-pattern.js';
import { chainItem, type ContentItem, type FrameJob, type Pool } from './content.js';
import type { Line, Placed } from './fill-lines.js';
import type { PlaceOption } from './frame.js';
import { chargedLeads, netOf, paidFor, type Rents } from './rents.js';

/** A pedal by itself or a whole chain that may be part of something better than the floor. */
export type Part = {
  readonly value: number;
  /** By how much it earns less than its outputs' rents. */
  readonly loss: number;
  /** The lines of its pedals, each as often as it has pedals of it, in rising order. */
  readonly lines: readonly number[];
  /** What it takes of the outputs of every bank, and of every limit. */
  readonly takes: readonly number[];
  readonly item: () => ContentItem;
};

/** Beginnings of chains that are looked at, and parts that are listed, before there are too many. */
const mostSteps = 12_000;
const mostParts = 3_000;

/**
 * Every part that loses less than so much against the rents; of those with the same pedals that take no less the ones that are
 * worth no more are left out. Null where there are too many to list.
 */
export function partsOf(job: FrameJob, lines: readonly Line[], rents: Rents, gap: number): readonly Part[] | null {
  const { frame, pools } = job;
  const rooms = [...frame.outputs, ...frame.capacities];
  const byLines = new Map<string, readonly Part[]>();
  let count = 0;
  const note = (part: Part): void => {
    if (part.loss >= gap || part.takes.some((taken, at) => taken > (rooms[at] ?? 0))) return;
    const key = part.lines.join();
    const alike = byLines.get(key) ?? [];
    if (alike.some((other) => covers(other, part))) return;
    const kept = [...alike.filter((other) => !covers(part, other)), part];
    byLines.set(key, kept);
    count += kept.length - alike.length;
  };
  for (const [line, { solos }] of lines.entries()) for (const item of solos) note(soloPart(item, line, job, rents));
  let left = mostSteps;
  for (const [at, pool] of pools.entries()) {
    left = notePool({ pool, placed: placedIn(lines, at), rents, gap, job }, note, left);
    if (left < 0 || count > mostParts) return null;
  }
  return [...byLines.values()].flat();
}

const covers = (one: Part, two: Part): boolean =>
  one.value >= two.value && one.takes.every((taken, at) => taken <= (two.takes[at] ?? 0));

const takenOf = ({ frame }: FrameJob, banks: readonly number[], weights: readonly number[]): readonly number[] => [
  ...frame.outputs.map((_, bank) => banks.filter((each) => each === bank).length),
  ...weights,
];

function soloPart(item: ContentItem, line: number, job: FrameJob, rents: Rents): Part {
  const { value, banks, weights } = item;
  const rent = banks.reduce((sum, bank) => sum + (rents.outputs[bank] ?? 0), 0);
  return {
    value,
    loss: rent - netOf(item, rents),
    lines: [line],
    takes: takenOf(job, banks, weights),
    item: () => item,
  };
}

/** A line's pedals in a pool. */
type PlacedLine = Placed & { readonly line: number; readonly count: number };

const placedIn = (lines: readonly Line[], pool: number): readonly PlacedLine[] =>
  gathered(lines, ({ places, count }, line) => {
    const placed = places[pool] ?? null;
    return placed === null ? [] : [{ ...placed, line, count }];
  });

type PoolJob = {
  readonly pool: Pool;
  readonly placed: readonly PlacedLine[];
  readonly rents: Rents;
  readonly gap: number;
  readonly job: FrameJob;
};

/** A lead with prices, and by line what its pedals and the later ones earn under them. */
type Size = ChainBound & { readonly tails: number; readonly cost: number; readonly rests: readonly number[] };

function sizesOf(chain: Pool['chain'], leads: LeadCosts, placed: readonly PlacedLine[]): readonly Size[] {
  const each = gathered(placed, (one) => new Array<PlacedLine>(Math.min(one.count, chain.mostTails)).fill(one));
  const sack = { values: each.map(({ net }) => net), loads: each.map(({ place }) => place.load) };
  return leadSizes(leads).map(({ tails, cost }) => {
    const bounded = chainBound(sack, Math.min(chain.mostLoad, chain.mostSurge), tails, -Infinity);
    const rests = [0];
    for (const { net, place, count } of placed.toReversed()) {
      const left = net - bounded.perLoad * place.load - bounded.perPedal;
      rests.unshift((rests[0] ?? 0) + count * Math.max(0, left));
    }
    return { ...bounded, tails, cost, rests };
  });
}

/** What the pedals of a chain add up to so far. */
type Sums = {
  readonly load: number;
  readonly surge: number;
  readonly soles: number;
  readonly net: number;
  readonly value: number;
};

const nothingYet: Sums = { load: 0, surge: 0, soles: 0, net: 0, value: 0 };

/** Line by line all chains of a pool that lose less than the gap. @returns the steps that are left; below zero when it gave up. */
function notePool({ pool, placed, rents, gap, job }: PoolJob, note: (part: Part) => void, steps: number): number {
  const { chain, leads } = pool;
  const charged = chargedLeads(pool, rents);
  const beside = paidFor(chain.weights, rents) + (rents.outputs[chain.bank] ?? 0);
  const sizes = sizesOf(chain, charged, placed);
  const places: PlaceOption[] = [];
  const lines: number[] = [];
  let left = steps;
  const mayDo = ({ load, surge, net }: Sums, from: number): boolean => {
    const room = Math.min(chain.mostLoad - load, chain.mostSurge - surge);
    return sizes.some(
      ({ tails, cost, perLoad, perPedal, rests }) =>
        tails > places.length &&
        net + perLoad * room + perPedal * (tails - places.length) + (rests[from] ?? 0) - cost - beside > -gap,
    );
  };
  const noteChain = ({ value, net }: Sums): void => {
    const cost = leads[places.length]?.cost ?? Infinity;
    const hung = [...places];
    const weights = chain.weights.map((own, at) => hung.reduce((sum, place) => sum + (place.weights[at] ?? 0), own));
    const takes = takenOf(job, [chain.bank], weights);
    const item = (): ContentItem => chainItem(pool, hung);
    const loss = beside + (charged[places.length]?.cost ?? Infinity) - net;
    note({ value: value - cost, loss, lines: [...lines], takes, item });
  };
  const extend = (sums: Sums, from: number, used: number): void => {
    left -= 1;
    if (left < 0) return;
    if (places.length > 1) noteChain(sums);
    if (places.length >= chain.mostTails) return;
    for (let at = from; at < placed.length && mayDo(sums, at); at += 1) {
      const one = placed[at];
      const taken = at === from ? used : 0;
      // What is worth nothing joins a chain only as one of two: without it a longer one is as good.
      if (one === undefined || taken >= one.count || (one.value <= 0 && places.length > 1)) continue;
      const more = withPlace(sums, one);
      if (more.load > chain.mostLoad || more.surge > chain.mostSurge || more.soles > 1) continue;
      places.push(one.place);
      lines.push(one.line);
      extend(more, at, taken + 1);
      places.pop();
      lines.pop();
    }
  };
  extend(nothingYet, 0, 0);
  return left;
}

const withPlace = ({ load, surge, soles, net, value }: Sums, one: PlacedLine): Sums => ({
  load: load + one.place.load,
  surge: surge + one.place.surge,
  soles: soles + (one.place.sole ? 1 : 0),
  net: net + one.net,
  value: value + one.value,
});
