import { countsLead, perLeadTier, type PerLeadTier } from '../domain/counted-tiers.js';
import { perPedalTier } from '../domain/pedal-tier.js';
import { natureOf } from '../domain/source.js';
import { likeOf, type Bench } from '../loadout/bench.js';
import type { Hung, Loadout } from '../loadout/loadout.js';
import { isIsolated } from '../loadout/supply-uses.js';
import type { ChainPlace, SoloUse } from '../loadout/uses.js';
import { keptOf } from './output-numbers.js';
import type { Measures } from './scalar-objective.js';

/** What a loadout takes and what it adds to a plan, but for money. */
export type LoadoutMeasures = {
  /** How many pedals of each class, of those that it feeds. */
  readonly pedals: ReadonlyMap<number, number>;
  /** How many leads of each kind, of those that it uses. */
  readonly leads: ReadonlyMap<number, number>;
  readonly measures: Omit<Measures, 'unpowered' | 'money'>;
};

/** Measured once: a loadout is asked about in every question that it is handed on to, and whenever a plan is settled. */
const known = new WeakMap<
  Loadout,
  { readonly of: Pick<Bench, 'classes' | 'kinds'>; readonly found: LoadoutMeasures }
>();

/** What it takes and adds on a board with these classes and kinds of leads. */
export function loadoutMeasures(
  loadout: Loadout,
  { classes, kinds }: Pick<Bench, 'classes' | 'kinds'>,
): LoadoutMeasures {
  const earlier = known.get(loadout);
  if (earlier?.of.classes === classes && earlier.of.kinds === kinds) return earlier.found;
  const of = { classes, kinds };
  const found = measured(loadout, of);
  known.set(loadout, { of, found });
  return found;
}

function measured(loadout: Loadout, bench: Pick<Bench, 'classes' | 'kinds'>): LoadoutMeasures {
  const { supply, hung } = loadout;
  const pedals = new Map<number, number>();
  const leads = new Map<number, number>();
  const ways: (SoloUse | ChainPlace)[] = [];
  const common: number[] = [];
  let exposed: readonly number[] = [];
  for (const each of hung) {
    if (each.kind === 'chain') addOne(leads, each.lead);
    const own = waysOn(each);
    for (const way of own) {
      ways.push(way);
      addOne(pedals, way.pedal);
      for (const kind of leadsOfWay(way)) addOne(leads, kind);
    }
    if (!isIsolated(outputsOf(each), supply)) common.push(...pedalsOn(each));
    else if (own.length > 1) exposed = [...exposed, ...exposedAmong(pedalsOn(each), bench)];
  }
  if (common.length > 1) exposed = [...exposed, ...exposedAmong(common, bench)];
  const { bricks, sockets } = hung.length === 0 ? { bricks: 0, sockets: 0 } : natureOf(supply.source);
  return {
    pedals,
    leads,
    measures: {
      exposed: exposed.length,
      newlyExposed: countOf(exposed, (pedal) => bench.classes[pedal]?.exposedToday !== true),
      moved: movedBy(loadout, ways, bench),
      bricks,
      sockets,
      ...perPedalTier((tier) => countOf(ways, (way) => way[tier])),
      ...perLeadTier((tier) => leadsCounted(tier, leads, bench)),
    },
  };
}

function addOne(counts: Map<number, number>, key: number): void {
  counts.set(key, (counts.get(key) ?? 0) + 1);
}

function countOf<Thing>(things: readonly Thing[], counts: (thing: Thing) => boolean): number {
  let count = 0;
  for (const thing of things) if (counts(thing)) count += 1;
  return count;
}

function leadsCounted(
  tier: keyof PerLeadTier<unknown>,
  leads: ReadonlyMap<number, number>,
  { kinds }: Pick<Bench, 'kinds'>,
): number {
  let sum = 0;
  for (const [index, count] of leads) {
    const kind = kinds[index];
    if (kind === undefined || countsLead(tier, kind)) sum += count;
  }
  return sum;
}

/** How many pedals that are plugged in today do not stay where they are. */
function movedBy(loadout: Loadout, ways: readonly (SoloUse | ChainPlace)[], bench: Pick<Bench, 'classes'>): number {
  const plugged = countOf(ways, ({ pedal }) => bench.classes[pedal]?.berth !== null);
  return plugged === 0 ? 0 : plugged - keptOf(loadout, bench);
}

export const outputsOf = (hung: Hung): readonly { readonly bank: number; readonly setting: number }[] =>
  hung.kind === 'solo' ? hung.use.outputs : [hung.pool.output];

export const waysOn = (hung: Hung): readonly (SoloUse | ChainPlace)[] =>
  hung.kind === 'solo' ? [hung.use] : hung.places;

export const pedalsOn = (hung: Hung): readonly number[] => waysOn(hung).map(({ pedal }) => pedal);

/** The leads of a pedal's own, and one that joins outputs for it; the lead of a chain is nobody's. */
export const leadsOfWay = (way: SoloUse | ChainPlace): readonly number[] =>
  'join' in way && way.join !== null ? [...way.route, way.join.lead] : way.route;

/** High-gain pedals that share a ground with another pedal that is digital. */
function exposedAmong(domain: readonly number[], bench: Pick<Bench, 'classes'>): readonly number[] {
  const digital = domain.filter((pedal) => likeOf(pedal, bench).digital).length;
  return domain.filter((pedal) => {
    const like = likeOf(pedal, bench);
    return like.highGain && digital > (like.digital ? 1 : 0);
  });
}
