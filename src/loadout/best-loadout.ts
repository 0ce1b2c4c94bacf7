import type { Bench } from './bench.js';
import { candidatesOf, leadCostsOf, placeValue, type Pattern } from './chain-pattern.js';
import { bestChains, type ChainFound, type ChainQuestion } from './chain-search.js';
import { framesOf, type ChainOption, type UnitFrame } from './frame.js';
import type { Hung, Loadout } from './loadout.js';
import { jobOf, type LoadoutContent } from './content.js';
import { fillWithChains } from './mixed-fill.js';
import { placeItems } from './placement.js';
import { noMemory, type UnitMemory } from './rents.js';
import { fillWithSolos, type Filling } from './solo-fill.js';
import type { SupplyUses } from './supply-uses.js';
import type { LoadoutDuals } from './loadout-duals.js';

/** The best loadouts of one supply, asked again and again under other dual prices: the pricing problem. */
export type LoadoutPricer = {
  /**
   * The loadouts that are worth more than the floor, at most one a frame, and what no loadout exceeds. An answer without
   * loadouts whose bound is at most the floor is proof that there is none.
   */
  readonly best: (
    duals: LoadoutDuals,
    counts: readonly number[],
    floor: number,
    effort?: PricingEffort,
  ) => PricedLoadouts;
  /** For every class of pedals that can hang by itself the best loadout of one of them. */
  readonly alone: (duals: LoadoutDuals) => ReadonlyMap<number, Valued>;
};

/** `quick`: loadouts that come easily and a bound that may be too high; `exact`: as good as can be. */
type PricingEffort = 'quick' | 'exact';

type PricedLoadouts = { readonly bound: number; readonly loadouts: readonly Valued[] };
type Valued = { readonly loadout: Loadout; readonly value: number };

/** Everything that can be worked out about a supply before there are dual prices. */
export function loadoutPricer(uses: SupplyUses, bench: Bench): LoadoutPricer {
  const frames = framesOf(uses, bench);
  const memory = noMemory();
  return {
    alone: (duals) => bestAlone(frames, duals),
    best: (duals, counts, floor, effort = 'exact') => {
      const loadouts: Valued[] = [];
      let bound = 0;
      for (const frame of frames) {
        for (const filling of filled(frame, { duals, counts, floor: Math.max(0, floor), effort, memory })) {
          bound = Math.max(bound, filling.bound);
          if (filling.found === null) continue;
          const loadout = loadoutOf(frame, filling.found.contents);
          if (frame.exact || fits(loadout, frame)) loadouts.push({ loadout, value: filling.found.value });
        }
      }
      if (floor >= 0 || loadouts.length > 0 || bound > 0) return { bound, loadouts };
      return leastBad(frames, duals, counts);
    },
  };
}

function bestAlone(frames: readonly UnitFrame[], duals: LoadoutDuals): ReadonlyMap<number, Valued> {
  const best = new Map<number, Valued>();
  for (const frame of frames) {
    for (const option of frame.solos) {
      const value = placeValue(option, duals);
      if (value <= (best.get(option.pedal)?.value ?? -Infinity) || !within(option.weights, frame)) continue;
      best.set(option.pedal, { loadout: loadoutOf(frame, [{ kind: 'solo', option }]), value });
    }
  }
  return best;
}

/**
 * Where using a unit is worth more than the unit costs, even a content that is worth nothing or less is of use: then the
 * best has one pedal, or is one chain.
 */
function leastBad(frames: readonly UnitFrame[], duals: LoadoutDuals, counts: readonly number[]): PricedLoadouts {
  let bound = -Infinity;
  let best: Loadout | null = null;
  for (const frame of frames) {
    for (const option of frame.solos) {
      const value = placeValue(option, duals);
      if (value <= bound || (counts[option.pedal] ?? 0) === 0 || !within(option.weights, frame)) continue;
      bound = value;
      best = loadoutOf(frame, [{ kind: 'solo', option }]);
    }
    for (const chain of frame.chains) {
      const [found] = bestChains(chainQuestion(chain, duals, counts), bound).found;
      if (found === undefined) continue;
      bound = found.value;
      best = loadoutOf(frame, [{ kind: 'chain', pattern: patternOf(chain, found, duals) }]);
    }
  }
  return { bound, loadouts: best === null ? [] : [{ loadout: best, value: bound }] };
}

const within = (weights: readonly number[], { capacities }: UnitFrame): boolean =>
  weights.every((weight, at) => weight <= (capacities[at] ?? 0));

/** What a filling is asked for. */
type Wish = {
  readonly duals: LoadoutDuals;
  readonly counts: readonly number[];
  readonly floor: number;
  readonly effort: PricingEffort;
  readonly memory: UnitMemory;
};

/** Fillings of a frame. Each has a bound for some of the ways to fill it; the greatest is one for all. */
function filled(frame: UnitFrame, wish: Wish): readonly Filling<LoadoutContent>[] {
  const { duals, counts, floor, effort, memory } = wish;
  if (frame.outputs.length === 1 && frame.outputs[0] === 1) return onOneOutput(frame, wish);
  if (frame.chains.length > 0) return [fillWithChains(jobOf(frame, duals, counts), floor, effort, memory)];
  const { bound, found } = fillWithSolos(frame, duals, counts, floor, effort);
  if (found === null) return [{ bound, found }];
  return [{ bound, found: { ...found, contents: found.contents.map((option) => ({ kind: 'solo', option })) } }];
}

/** A single output carries one pedal or one chain. */
function onOneOutput(frame: UnitFrame, { duals, counts, floor }: Wish): readonly Filling<LoadoutContent>[] {
  const fillings: Filling<LoadoutContent>[] = [];
  let most = floor;
  for (const option of frame.solos) {
    const value = placeValue(option, duals);
    if ((counts[option.pedal] ?? 0) === 0 || value <= most || !within(option.weights, frame)) continue;
    most = value;
    fillings.push({ bound: most, found: { value, contents: [{ kind: 'solo', option }] } });
  }
  for (const chain of frame.chains) {
    const { bound, found } = bestChains(chainQuestion(chain, duals, counts), most);
    most = Math.max(most, found[0]?.value ?? most);
    fillings.push({ bound, found: null });
    for (const each of found) {
      const content = { kind: 'chain' as const, pattern: patternOf(chain, each, duals) };
      fillings.push({ bound, found: { value: each.value, contents: [content] } });
    }
  }
  return fillings.length === 0 ? [{ bound: floor, found: null }] : fillings;
}

const chainQuestion = (chain: ChainOption, duals: LoadoutDuals, counts: readonly number[]): ChainQuestion => ({
  chain,
  candidates: candidatesOf(chain, duals, counts),
  leads: leadCostsOf(chain, duals),
});

const patternOf = (chain: ChainOption, { places, value }: ChainFound, duals: LoadoutDuals): Pattern => ({
  chain,
  places,
  value,
  lead: leadCostsOf(chain, duals)[places.length]?.kind ?? -1,
});

function loadoutOf({ uses, mode }: UnitFrame, contents: readonly LoadoutContent[]): Loadout {
  const hung = contents.map((content): Hung => {
    if (content.kind === 'solo') return { kind: 'solo', use: content.option.use };
    const { chain, lead, places } = content.pattern;
    return { kind: 'chain', pool: chain.pool, lead, places: places.map(({ place }) => place) };
  });
  return { supply: uses.supply, unit: uses.unit, mode, hung };
}

/** The unit's rules once more, in big integers. */
function fits(loadout: Loadout, frame: UnitFrame): boolean {
  const weightsOf = (hung: Hung): readonly bigint[] =>
    frame.uses.limits.map((_, index) =>
      hung.kind === 'solo'
        ? (hung.use.weights[index] ?? 0n)
        : hung.places.reduce((sum, { weights }) => sum + (weights[index] ?? 0n), 0n),
    );
  const items = loadout.hung.map((hung) => ({
    outputs: hung.kind === 'solo' ? hung.use.outputs : [hung.pool.output],
    mode: null,
    weights: weightsOf(hung),
    sole: 0,
  }));
  return placeItems(frame.uses, [frame.mode], items) !== null;
}
