import type { Pedal } from '../../domain/pedal.js';
import type { PerPedalTier } from '../../domain/pedal-tier.js';
import type { CaseItem } from './items.js';
import { noisesOf, roleIn, type Common, type CaseNoise } from './noise.js';
import type { Standing } from '../today.js';
import type { AlikePedals } from './pedal-class.js';
import type { ChainShape, PlaceShape, UnitShape } from './shape.js';
import type { ShapeTaken } from './totals.js';

/** One way to feed a pedal at a place, and what it costs besides. */
export type CaseWay = {
  readonly route: number;
  readonly join: number | null;
  readonly counts: PerPedalTier<boolean>;
  readonly exposed: boolean;
  /** Exposed, and not so today. */
  readonly newlyExposed: boolean;
  readonly moved: boolean;
};

/** A pedal alone on one output or on two that are joined, in the dearest or cheapest of several ways. */
type CasePlace = {
  readonly item: number;
  /** The bank of each output taken. */
  readonly banks: readonly number[];
  readonly burdens: readonly number[];
  readonly ways: readonly CaseWay[];
};

type Link = ShapeTaken & {
  readonly item: number;
  /** How many of the item one chain may have. */
  readonly count: number;
  readonly way: CaseWay;
  readonly burdens: readonly number[];
};

export type CaseChain = {
  readonly bank: number;
  readonly most: ShapeTaken;
  readonly leads: ChainShape['leads'];
  readonly links: readonly Link[];
  /** What the chain takes of each total beside its pedals. */
  readonly burdens: readonly number[];
};

/** What a unit could carry in one case; what fills its outputs is limited by `outputs` and `caps` alone. */
export type CaseModel = {
  /** How many pedals each item has. */
  readonly counts: readonly number[];
  /** Of every bank. */
  readonly outputs: readonly number[];
  readonly caps: readonly number[];
  readonly places: readonly CasePlace[];
  readonly chains: readonly CaseChain[];
};

/** A case: how the common ground is counted and how the banks stand; null for a bank is any setting, for each output. */
export type Case = {
  readonly common: Common;
  readonly settings: readonly (number | null)[];
  /** Nobody counts as exposed: a relaxation. */
  readonly relaxed: boolean;
};

export type CaseContent = {
  readonly shape: UnitShape;
  readonly items: readonly CaseItem[];
  readonly classes: readonly AlikePedals[];
};

export function caseModel(of: Case, content: CaseContent): CaseModel {
  const { shape, items } = content;
  const sole = of.common.noise.kind === 'sole' ? of.common.noise.item : null;
  const isLone = of.common.ground === 'unknown';
  const isLimited = isLone || (sole !== null && (items[sole]?.count ?? 0) > 1);
  /**
   * One more total: only one pedal of the sole digital item may be on the common ground, and a pedal whose ground is unknown
   * shares it with no other.
   */
  const withSole: WithSole = (burdens, bank, item) =>
    isLimited ? [...burdens, !isIsolated(shape, bank) && item !== null && (isLone || item === sole) ? 1 : 0] : burdens;
  return {
    counts: items.map(({ count }) => count),
    outputs: shape.banks.map(({ outputs }) => outputs),
    caps: isLimited ? [...shape.caps, 1] : shape.caps,
    places: placesIn(of, content, withSole),
    chains: chainsIn(of, content, withSole),
  };
}

/** An item of null is none: the chain by itself. */
type WithSole = (burdens: readonly number[], bank: number, item: number | null) => readonly number[];

export const isIsolated = ({ banks }: UnitShape, bank: number): boolean => banks[bank]?.isolated === true;

function placesIn(of: Case, { shape, items, classes }: CaseContent, withSole: WithSole): readonly CasePlace[] {
  const places = new Map<string, { place: Omit<CasePlace, 'ways'>; ways: CaseWay[] }>();
  for (const [item, { pedal: index }] of items.entries()) {
    const { pedal, standing } = classes[index] ?? {};
    for (const shaped of shape.places) {
      if (shaped.pedal !== index || pedal === undefined || !isSet(of, shaped.seats)) continue;
      const bank = shaped.seats[0]?.bank ?? 0;
      const role = isIsolated(shape, bank) ? 'uncounted' : roleOnCommon(of.common, item, pedal);
      if (role === 'absent') continue;
      const place = placeOf(shaped, item, withSole(shaped.burdens, bank, item));
      const key = JSON.stringify(place);
      const ways = places.get(key)?.ways ?? [];
      ways.push({
        route: shaped.route,
        join: shaped.join,
        counts: shaped.counts,
        moved: shaped.moved,
        ...exposure(role === 'counted', standing),
      });
      places.set(key, { place, ways });
    }
  }
  return [...places.values()].map(({ place, ways }) => ({ ...place, ways }));
}

const exposure = (exposed: boolean, standing: Standing | undefined): Pick<CaseWay, 'exposed' | 'newlyExposed'> => ({
  exposed,
  newlyExposed: exposed && standing?.exposed !== true,
});

/** Whether a pedal may be on the common ground, and whether it counts as exposed there. */
function roleOnCommon({ ground, noise }: Common, item: number, pedal: Pedal): ReturnType<typeof roleIn> {
  return pedal.ground === (ground ?? pedal.ground) ? roleIn(noise, item, pedal) : 'absent';
}

const placeOf = ({ seats }: PlaceShape, item: number, burdens: readonly number[]) => ({
  item,
  banks: seats.map(({ bank }) => bank),
  burdens,
});

const isSet = ({ settings }: Case, seats: PlaceShape['seats']): boolean =>
  seats.every(({ bank, setting }) => (settings[bank] ?? setting) === setting);

function chainsIn(of: Case, content: CaseContent, withSole: WithSole): readonly CaseChain[] {
  const { shape, items, classes } = content;
  return shape.chains.flatMap((chain) => {
    if (!isSet(of, [chain.seat])) return [];
    if (!isIsolated(shape, chain.seat.bank)) {
      const isGround = (of.common.ground ?? chain.ground) === chain.ground;
      return isGround ? chainIn(chain, of.common.noise, content, withSole) : [];
    }
    const among = items.flatMap(({ pedal }, item) => (chain.links.some((link) => link.pedal === pedal) ? [item] : []));
    const noises: readonly CaseNoise[] = of.relaxed ? [{ kind: 'free' }] : noisesOf(among, items, classes);
    return noises.flatMap((noise) => chainIn(chain, noise, content, withSole));
  });
}

function chainIn(
  chain: ChainShape,
  noise: CaseNoise,
  { items, classes }: CaseContent,
  withSole: WithSole,
): readonly CaseChain[] {
  const { bank } = chain.seat;
  const longest = chain.leads.reduce((most, { tails }) => Math.max(most, tails), 0);
  const links = items.flatMap(({ pedal: index, count }, item) => {
    const { pedal, standing } = classes[index] ?? {};
    return chain.links.flatMap((link): readonly Link[] => {
      if (link.pedal !== index || pedal === undefined) return [];
      const role = roleIn(noise, item, pedal);
      if (role === 'absent') return [];
      const isSole = noise.kind === 'sole' && noise.item === item;
      const { route, counts, moved } = link;
      const way: CaseWay = { route, join: null, counts, moved, ...exposure(role === 'counted', standing) };
      const most = isSole ? 1 : Math.min(count, longest);
      const burdens = withSole(link.burdens, bank, item);
      return [{ item, count: most, load: link.load, surge: link.surge, way, burdens }];
    });
  });
  const pedals = links.reduce((sum, { count }) => sum + count, 0);
  const { most, leads } = chain;
  return pedals < 2 ? [] : [{ bank, most, leads, links, burdens: withSole(chain.burdens, bank, null) }];
}
