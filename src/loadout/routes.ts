import { gathered } from '../../solver/gathered.js';
import { remembered } from '../../solver/remembered.js';
import { polarities, type Pedal, type Polarity } from '../domain/pedal.js';
import type { LeadKind } from './lead-kinds.js';

/**
 * The adapters of a pedal's own tail as indices of lead kinds, from the supply's side; at most two, mostly none. For a pedal
 * of unknown polarity: what it takes to be right for either, each kind as often as the reading that needs it most.
 */
export type Route = readonly number[];

/** The adapters to use for either way in which a label may read, from the supply's side; all of them are of the route. */
type ReadRoutes = Readonly<Record<Polarity, readonly number[]>>;

/** What stands at the end of an output's lead or chain lead. */
export type Exit = {
  readonly plug: string;
  /** The polarities that it can have: one, both with a polarity switch, none for AC. */
  readonly polarities: readonly Polarity[];
};

/** The same for exits that are alike. */
export const keyOfExit = ({ plug, polarities: given }: Exit): string => `${plug} ${given.join()}`;

/** The other polarity. */
export const reversed = (polarity: Polarity): Polarity =>
  polarity === 'centre-negative' ? 'centre-positive' : 'centre-negative';

/** The exit behind one more lead. */
export const behind = (exit: Exit, lead: LeadKind): Exit => ({
  plug: lead.gives,
  polarities: lead.reverses ? exit.polarities.map(reversed) : exit.polarities,
});

/** Finds the ways through at most two adapters from an exit to a pedal's inlet. */
export type Router = (exit: Exit) => (pedal: Pedal) => readonly Route[];

/**
 * All routes but those that another one makes needless: a route that contains another, or one that is longer than and
 * cannot cost less than another whose leads have no limit.
 */
export function router(kinds: readonly LeadKind[]): Router {
  const adapters = kinds.filter(({ role }) => role.kind === 'adapter');
  const known = new Map<string, ReturnType<Router>>();
  return (exit) => remembered(known, keyOfExit(exit), () => routerFrom(exit, adapters, kinds));
}

function routerFrom(exit: Exit, adapters: readonly LeadKind[], kinds: readonly LeadKind[]): ReturnType<Router> {
  const known = new Map<Pedal, readonly Route[]>();
  return (pedal) => remembered(known, pedal, () => needed(routesOf(exit, pedal, adapters), kinds));
}

/**
 * How a route serves both readings of an unknown polarity.
 * @throws RangeError when it is no route from that exit
 */
export function readRoutes(route: Route, exit: Exit, pedal: Pedal, kinds: readonly LeadKind[]): ReadRoutes {
  const found = pairsOf(exit, pedal, kinds).find((pair) => {
    const union = unionOf(pair);
    return union.length === route.length && within(union, route);
  });
  if (found === undefined) throw new RangeError(`${pedal.id} has no leads for either polarity there`);
  return found;
}

const routesOf = (exit: Exit, pedal: Pedal, adapters: readonly LeadKind[]): readonly Route[] =>
  pedal.polarity === 'unknown' ? pairsOf(exit, pedal, adapters).map(unionOf) : allRoutes(exit, pedal, adapters);

/** Every way for the one reading with every way for the other. */
function pairsOf(exit: Exit, pedal: Pedal, kinds: readonly LeadKind[]): readonly ReadRoutes[] {
  const adapters = kinds.filter(({ role }) => role.kind === 'adapter');
  const waysFor = (polarity: Polarity): readonly Route[] => allRoutes(exit, { ...pedal, polarity }, adapters);
  const positive = waysFor('centre-positive');
  return gathered(waysFor('centre-negative'), (negative) =>
    positive.map((other) => ({ 'centre-negative': negative, 'centre-positive': other })),
  );
}

/** Each kind as often as the reading that needs it most. */
const unionOf = (pair: ReadRoutes): Route =>
  polarities.reduce<Route>((union, polarity) => {
    const own = pair[polarity];
    const beyond = gathered([...new Set(own)], (kind) =>
      Array.from({ length: Math.max(0, count(own, kind) - count(union, kind)) }, () => kind),
    );
    return [...union, ...beyond];
  }, []);

const count = (route: Route, kind: number): number => route.filter((each) => each === kind).length;

/** Whether all of the one route is in the other. */
export const within = (route: Route, other: Route): boolean =>
  route.every((kind) => count(route, kind) <= count(other, kind));

function allRoutes(exit: Exit, pedal: Pedal, adapters: readonly LeadKind[]): Route[] {
  if (reaches(exit, pedal)) return [[]];
  const routes: Route[] = [];
  for (const first of adapters) {
    if (first.fits !== exit.plug) continue;
    const middle = behind(exit, first);
    if (reaches(middle, pedal)) {
      routes.push([first.index]);
      continue;
    }
    for (const second of adapters) {
      if (second.fits === middle.plug && reaches(behind(middle, second), pedal))
        routes.push([first.index, second.index]);
    }
  }
  return routes;
}

const reaches = (exit: Exit, pedal: Pedal): boolean =>
  exit.plug === pedal.inlet && (pedal.polarity === null || exit.polarities.some((each) => each === pedal.polarity));

function needed(routes: readonly Route[], kinds: readonly LeadKind[]): readonly Route[] {
  const kept: Route[] = [];
  const multisets = new Set<string>();
  for (const route of [...routes].sort((a, b) => a.length - b.length)) {
    const multiset = JSON.stringify([...route].sort((a, b) => a - b));
    if (multisets.has(multiset) || kept.some((other) => makesNeedless(other, route, kinds))) continue;
    multisets.add(multiset);
    kept.push(route);
  }
  return kept;
}

/** `other` is not longer than `route`. */
function makesNeedless(other: Route, route: Route, kinds: readonly LeadKind[]): boolean {
  if (other.length < route.length && within(other, route)) return true;
  const most = sumOf(
    other,
    kinds,
    (kind) => kind.supplyOf.find(({ pieces }) => pieces === Infinity)?.price ?? Infinity,
  );
  const least = sumOf(route, kinds, (kind) => kind.supplyOf[0]?.price ?? 0);
  return most <= least;
}

const sumOf = (route: Route, kinds: readonly LeadKind[], price: (kind: LeadKind) => number): number =>
  route.reduce((sum, index) => {
    const kind = kinds[index];
    return kind === undefined ? Infinity : sum + price(kind);
  }, 0);
