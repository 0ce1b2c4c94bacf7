import type { Pedal, Polarity } from '../domain/pedal.js';
import type { LeadKind } from './lead-kinds.js';

/** The adapters of a pedal's own tail as indices of lead kinds, from the supply's side; at most two, mostly none. */
export type Route = readonly number[];

/** What stands at the end of an output's lead or chain lead. */
export type Exit = {
  readonly plug: string;
  /** The polarities that it can have: one, both with a polarity switch, none for AC. */
  readonly polarities: readonly Polarity[];
};

/** The other polarity. */
export const reversed = (polarity: Polarity): Polarity =>
  polarity === 'centre-negative' ? 'centre-positive' : 'centre-negative';

/** The exit behind one more lead. */
export const behind = (exit: Exit, lead: LeadKind): Exit => ({
  plug: lead.gives,
  polarities: lead.reverses ? exit.polarities.map(reversed) : exit.polarities,
});

/** Finds the ways through at most two adapters from an exit to a pedal's inlet. */
export type Router = (exit: Exit, pedal: Pedal) => readonly Route[];

/**
 * All routes but those that another one makes needless: a route that contains another, or one that is longer than and
 * cannot cost less than another whose leads have no limit.
 */
export function router(kinds: readonly LeadKind[]): Router {
  const adapters = kinds.filter(({ role }) => role.kind === 'adapter');
  const known = new Map<string, readonly Route[]>();
  return (exit, pedal) => {
    const key = JSON.stringify([exit.plug, exit.polarities, pedal.inlet, pedal.polarity, pedal.power]);
    let routes = known.get(key);
    if (routes === undefined) {
      routes = needed(allRoutes(exit, pedal, adapters), kinds);
      known.set(key, routes);
    }
    return routes;
  };
}

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
  exit.plug === pedal.inlet && (pedal.polarity === null || exit.polarities.includes(pedal.polarity));

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
  if (other.length < route.length && other.every((kind) => route.includes(kind))) return true;
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
