import type { Bench } from './bench.js';
import { bestPattern, placeValue } from './chain-pattern.js';
import { framesOf, type Frame } from './frame.js';
import type { Hung, Loadout } from './loadout.js';
import { jobOf, type Content } from './content.js';
import { fillWithChains } from './mixed-fill.js';
import { placeItems } from './placement.js';
import type { PatternStore } from './rents.js';
import { fillWithSolos, type Filling } from './solo-fill.js';
import type { SupplyUses } from './supply-uses.js';
import type { Tags } from './tags.js';

/** The best loadouts of one supply, asked again and again with other tags. */
export type Carrier = {
  /**
   * The loadouts that are worth more than the floor, at most one a frame, and what no loadout exceeds. An answer without
   * loadouts whose bound is at most the floor is proof that there is none.
   */
  readonly best: (tags: Tags, counts: readonly number[], floor: number, effort?: Effort) => Carried;
};

/** `quick`: loadouts that come easily and a bound that may be too high; `exact`: as good as can be. */
export type Effort = 'quick' | 'exact';

export type Carried = { readonly bound: number; readonly loadouts: readonly Valued[] };
export type Valued = { readonly loadout: Loadout; readonly value: number };

/** Everything that can be worked out about a supply before there are tags. */
export function carrierOf(uses: SupplyUses, bench: Bench): Carrier {
  const frames = framesOf(uses, bench);
  const store: PatternStore = new Map();
  return {
    best: (tags, counts, floor, effort = 'exact') => {
      const loadouts: Valued[] = [];
      let bound = 0;
      for (const frame of frames) {
        const filling = filled(frame, { tags, counts, floor: Math.max(0, floor), effort, store });
        bound = Math.max(bound, filling.bound);
        if (filling.found === null) continue;
        const loadout = loadoutOf(frame, filling.found.contents);
        if (frame.exact || fits(loadout, frame)) loadouts.push({ loadout, value: filling.found.value });
      }
      if (floor >= 0 || loadouts.length > 0 || bound > 0) return { bound, loadouts };
      return leastBad(frames, tags, counts);
    },
  };
}

/**
 * Where using a unit is worth more than the unit costs, even a content that is worth nothing or less is of use: then the
 * best has one pedal, or is one chain.
 */
function leastBad(frames: readonly Frame[], tags: Tags, counts: readonly number[]): Carried {
  let bound = -Infinity;
  let best: Loadout | null = null;
  for (const frame of frames) {
    for (const option of frame.solos) {
      const value = placeValue(option, tags);
      if (value <= bound || (counts[option.pedal] ?? 0) === 0 || !within(option.weights, frame)) continue;
      bound = value;
      best = loadoutOf(frame, [{ kind: 'solo', option }]);
    }
    for (const chain of frame.chains) {
      const { pattern } = bestPattern(chain, tags, counts, frame.capacities, bound);
      if (pattern === null) continue;
      bound = pattern.value;
      best = loadoutOf(frame, [{ kind: 'chain', pattern }]);
    }
  }
  return { bound, loadouts: best === null ? [] : [{ loadout: best, value: bound }] };
}

const within = (weights: readonly number[], { capacities }: Frame): boolean =>
  weights.every((weight, at) => weight <= (capacities[at] ?? 0));

/** What a filling is asked for. */
type Wish = {
  readonly tags: Tags;
  readonly counts: readonly number[];
  readonly floor: number;
  readonly effort: Effort;
  readonly store: PatternStore;
};

function filled(frame: Frame, { tags, counts, floor, effort, store }: Wish): Filling<Content> {
  if (frame.outputs.length === 1 && frame.outputs[0] === 1) return onOneOutput(frame, tags, counts, floor);
  if (frame.chains.length > 0) return fillWithChains(jobOf(frame, tags, counts), floor, effort, store);
  const { bound, found } = fillWithSolos(frame, tags, counts, floor);
  if (found === null) return { bound, found };
  return { bound, found: { ...found, contents: found.contents.map((option) => ({ kind: 'solo', option })) } };
}

/** A single output carries its best pedal or its best chain. */
function onOneOutput(frame: Frame, tags: Tags, counts: readonly number[], floor: number): Filling<Content> {
  let best: { value: number; content: Content } | null = null;
  let most = 0;
  let complete = true;
  for (const option of frame.solos) {
    const value = placeValue(option, tags);
    if ((counts[option.pedal] ?? 0) === 0 || value <= Math.max(most, 0)) continue;
    if (!within(option.weights, frame)) continue;
    most = value;
    best = { value, content: { kind: 'solo', option } };
  }
  for (const chain of frame.chains) {
    const search = bestPattern(chain, tags, counts, frame.capacities, Math.max(most, floor));
    complete &&= search.complete;
    if (search.pattern === null) continue;
    most = search.pattern.value;
    best = { value: most, content: { kind: 'chain', pattern: search.pattern } };
  }
  const bound = complete ? Math.max(most, frame.chains.length > 0 ? floor : 0) : Infinity;
  return best === null || best.value <= floor
    ? { bound, found: null }
    : { bound, found: { value: best.value, contents: [best.content] } };
}

function loadoutOf({ uses, mode }: Frame, contents: readonly Content[]): Loadout {
  const hung = contents.map((content): Hung => {
    if (content.kind === 'solo') return { kind: 'solo', use: content.option.use };
    const { chain, lead, places } = content.pattern;
    return { kind: 'chain', pool: chain.pool, lead, places: places.map(({ place }) => place) };
  });
  return { supply: uses.supply, mode, hung };
}

/** The unit's rules once more, in big integers. */
function fits(loadout: Loadout, frame: Frame): boolean {
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
