import { chainBound, type ChainBound } from './chain-bound.js';
import { byDensity, leadSizes } from './chain-pattern.js';
import type { FrameJob, Pool } from './content.js';
import type { Stage } from './label-stages.js';
import { chargedLeads, paidFor, type Rents } from './rents.js';
import type { Barred } from './replacement.js';

/** What a chain that more pedals may join comes to so far. */
export type Begun = {
  readonly pool: number;
  readonly size: number;
  readonly load: number;
  readonly surge: number;
  /** What is left of its pedals' values when rents are paid; its lead is not. */
  readonly net: number;
};

/** What a begun chain can earn at the most with pedals from a stage on, but for some that are barred; all leads are paid. */
export type Prospects = (begun: Begun, from: number, barred: Barred) => number;

/**
 * Two bounds, for every lead the lesser one: the later pedals that fit, the last one in part; and what prices of load and
 * places leave of them.
 */
export function prospectsOf({ pools }: FrameJob, stages: readonly Stage[], rents: Rents): Prospects {
  const known = pools.map((pool, at) => ({
    pool,
    leads: leadsOf(pool, at, stages, rents),
    later: laterOf(at, stages),
  }));
  return ({ pool: at, size, load, surge, net }, from, barred) => {
    const found = known[at];
    if (found === undefined) return -Infinity;
    const { mostLoad, mostSurge, bank, weights } = found.pool.chain;
    const room = Math.min(mostLoad - load, mostSurge - surge);
    const inPart = inPartOf(found.later[from] ?? [], room, barred);
    let most = -Infinity;
    for (const { tails, cost, perLoad, perPedal, rests } of found.leads) {
      if (tails < size) continue;
      const priced = perLoad * room + perPedal * (tails - size) + (rests[from] ?? 0);
      most = Math.max(most, (tails === size ? 0 : Math.min(priced, inPart)) - cost);
    }
    // No chain earns more than its output's rent.
    return Math.min(net + most - paidFor(weights, rents), rents.outputs[bank] ?? 0);
  };
}

/** A lead with prices, and by stage what the pedals from there on earn under them. */
type PricedLead = ChainBound & { readonly tails: number; readonly cost: number; readonly rests: Float64Array };

function leadsOf(from: Pool, pool: number, stages: readonly Stage[], rents: Rents): readonly PricedLead[] {
  const { chain } = from;
  const placed = stages.flatMap(({ places }) => places[pool] ?? []);
  const sack = { values: placed.map(({ net }) => net), loads: placed.map(({ place }) => place.load) };
  return leadSizes(chargedLeads(from, rents)).map(({ tails, cost }) => {
    const bounded = chainBound(sack, Math.min(chain.mostLoad, chain.mostSurge), tails, -Infinity);
    const rests = new Float64Array(stages.length + 1);
    for (let stage = stages.length - 1; stage >= 0; stage -= 1) {
      const { net = 0, place } = stages[stage]?.places[pool] ?? {};
      const left = net - bounded.perLoad * (place?.load ?? 0) - bounded.perPedal;
      rests[stage] = (rests[stage + 1] ?? 0) + Math.max(0, left);
    }
    return { ...bounded, tails, cost, rests };
  });
}

/** A later pedal that would earn something in a pool. */
type Later = { readonly stage: number; readonly net: number; readonly load: number };

/** For every stage the pedals from there on that would earn something in a pool, the densest first. */
function laterOf(pool: number, stages: readonly Stage[]): readonly (readonly Later[])[] {
  const all = stages
    .flatMap(({ places }, stage) => {
      const placed = places[pool] ?? null;
      if (placed === null || placed.net <= 0) return [];
      return [{ stage, net: placed.net, load: placed.place.load, value: placed.net, place: placed.place }];
    })
    .sort(byDensity);
  return Array.from({ length: stages.length + 1 }, (_, from) => all.filter(({ stage }) => stage >= from));
}

/** The fractional knapsack of the later pedals' earnings. */
function inPartOf(later: readonly Later[], room: number, barred: Barred): number {
  let [left, sum] = [room, 0];
  for (const { stage, net, load } of later) {
    // What draws nothing finds room even where there is none left.
    if (load > room || (left <= 0 && load > 0) || barred.has(stage)) continue;
    sum += load <= left ? net : Math.ceil((net * left) / load) + 1;
    left -= Math.min(left, load);
  }
  return sum;
}
