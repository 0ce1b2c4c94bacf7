/**
 * Judges a given wiring by what brute force would have been free to plug: every output must be one of the hookups that are
 * allowed, and they must go together. Shares no code with the audit.
 */
import type { Board, Catalogue, WiredFeed } from '../../src/domain/board.js';
import type { Part } from '../../src/domain/part.js';
import type { Pedal } from '../../src/domain/pedal.js';
import type { PartId } from '../../src/domain/quantities.js';
import { isOfOnePedal } from '../../src/domain/source.js';
import type { Supply } from '../../src/domain/supply.js';
import { hookupsOf, type Hookup } from './brute-force-hookups.js';
import { behind } from './brute-force-leads.js';
import { bricksAmong, mayFeedInlets, socketsAmong } from './brute-force-sources.js';
import { inletLike } from './brute-force-inlets.js';
import { isOfInlet } from './wired.js';
import { fits, newUnit, withHookup, type Unit } from './brute-force-unit.js';

/** True when the wiring, inlets included, keeps every rule, for some position of every switch that it leaves open. */
export function isSound(board: Board, catalogue: Catalogue | null, wiring: readonly WiredFeed[]): boolean {
  return (
    keepsLimits(board, catalogue, wiring) &&
    unitsOf(wiring).every((unit) => isSoundUnit(board, catalogue, unit)) &&
    unitsOf(wiring).every(([{ supply, unit }]) => isFed(board, catalogue, wiring, { supply, unit }))
  );
}

/** A fed unit has an inlet that hangs somewhere. */
const isFed = (
  board: Board,
  catalogue: Catalogue | null,
  wiring: readonly WiredFeed[],
  { supply, unit }: Pick<WiredFeed, 'supply' | 'unit'>,
): boolean =>
  suppliesOf(board, catalogue).find(({ id }) => id === supply)?.source.kind !== 'fed' ||
  wiring.some((feed) => isOfInlet(feed) && feed.inletOf.supply === supply && feed.inletOf.unit === unit);

type Outlet = readonly [WiredFeed, ...WiredFeed[]];

const grouped = (feeds: readonly WiredFeed[], keyOf: (feed: WiredFeed) => string): readonly Outlet[] => {
  const groups = new Map<string, [WiredFeed, ...WiredFeed[]]>();
  for (const feed of feeds) {
    const group = groups.get(keyOf(feed));
    if (group === undefined) groups.set(keyOf(feed), [feed]);
    else group.push(feed);
  }
  return [...groups.values()];
};

const unitsOf = (wiring: readonly WiredFeed[]): readonly Outlet[] =>
  grouped(wiring, ({ supply, unit }) => `${supply} ${unit}`);

function isSoundUnit(board: Board, catalogue: Catalogue | null, feeds: Outlet): boolean {
  const supply = suppliesOf(board, catalogue).find(({ id }) => id === feeds[0].supply);
  if (supply === undefined) return false;
  const outlets = grouped(feeds, ({ outputs }) => outputs.join());
  const outputs = outlets.flatMap(([feed]) => feed.outputs);
  if (new Set(outputs).size < outputs.length) return false;
  const choices = outlets.map((outlet) => allowed(board, catalogue, supply, outlet));
  const goTogether = (unit: Unit, rest: readonly (readonly Hookup[])[]): boolean => {
    const [hookups, ...others] = rest;
    if (hookups === undefined) return true;
    return hookups.some((one) => fits(unit, one, board.policy) && goTogether(withHookup(unit, one), others));
  };
  return goTogether(newUnit(supply), choices);
}

/** The hookups that the outlet may be. A pedal with its adapters is a pedal with another inlet. */
function allowed(board: Board, catalogue: Catalogue | null, supply: Supply, outlet: Outlet): readonly Hookup[] {
  const parts = partsOf(board, catalogue);
  const pedals = outlet.map((feed) => withAdapters(board, catalogue, parts, feed));
  if (outlet.some(isOfInlet) && (outlet.length > 1 || outlet[0].join !== null || !mayFeedInlets(supply.source)))
    return [];
  if (isOfOnePedal(supply.source) && outlet.some(({ adapters }) => adapters.length > 0)) return [];
  const known = pedals.filter((pedal) => pedal !== null);
  if (known.length < pedals.length) return [];
  const [first] = outlet;
  const banks = first.outputs.map((output) =>
    supply.banks.findIndex(({ firstOutput, outputs }) => firstOutput <= output && output < firstOutput + outputs),
  );
  return hookupsOf(known, supply, [...parts.values()], board.policy).filter(
    ({ taps, volts, join, chain, tails }) =>
      (isOfOnePedal(supply.source) || tails.every(({ parts: own }) => own.length === 0)) &&
      taps.map(({ bank }) => bank).join() === banks.join() &&
      outlet.every(
        (feed) =>
          feed.millivolts === volts &&
          feed.chain === (chain?.id ?? null) &&
          feed.join?.mode === join?.mode &&
          feed.join?.part === join?.lead.id,
      ),
  );
}

const suppliesOf = ({ gear }: Board, catalogue: Catalogue | null): readonly Supply[] => [
  ...gear.supplies,
  ...(catalogue?.supplies ?? []),
];

const partsOf = (board: Board, catalogue: Catalogue | null): ReadonlyMap<string, Part> =>
  new Map([...board.gear.parts, ...(catalogue?.parts ?? [])].map((part) => [part.id, part]));

/** Null when the adapters do not lead to the inlet. @throws RangeError for an unknown polarity, which no one way is right for */
function withAdapters(
  board: Board,
  catalogue: Catalogue | null,
  parts: ReadonlyMap<string, Part>,
  feed: WiredFeed,
): Pedal | null {
  const { pedals } = board;
  let pedal = pedals.find(({ id }) => id === feed.pedal) ?? inletIn(board, catalogue, feed);
  if (pedal === undefined || feed.adapters.length > 2) return null;
  if (pedal.polarity === 'unknown') throw new RangeError(`${pedal.id} may have either polarity`);
  let { polarity } = pedal;
  for (const id of [...feed.adapters].reverse()) {
    const part = parts.get(id);
    if (part?.role.kind !== 'adapter' || part.gives !== pedal.inlet) return null;
    polarity = behind(part, polarity);
    pedal = { ...pedal, inlet: part.fits, polarity };
  }
  return pedal;
}

function inletIn(board: Board, catalogue: Catalogue | null, feed: WiredFeed): Pedal | undefined {
  const of = isOfInlet(feed) ? feed.inletOf : null;
  const supply = suppliesOf(board, catalogue).find(({ id }) => id === of?.supply);
  return supply === undefined || of === null ? undefined : (inletLike(supply, of.unit) ?? undefined);
}

/** The rules `stock` and `limit`. Units are numbered with the owned ones first, so a higher number is a bought one. */
function keepsLimits(board: Board, catalogue: Catalogue | null, wiring: readonly WiredFeed[]): boolean {
  const { budget, bricks, sockets } = board.policy;
  const units = unitsOf(wiring);
  const supplies = units.flatMap(([{ supply }]) => suppliesOf(board, catalogue).find(({ id }) => id === supply) ?? []);
  if (bricksAmong(supplies) > (bricks ?? Infinity) || socketsAmong(supplies) > (sockets ?? Infinity)) return false;
  const used = usedArticles(board, catalogue, wiring);
  const missing = used.some(({ bought, most }) => bought > most);
  return !missing && moneyFor(board, catalogue, wiring) <= (budget ?? Infinity);
}

/** What must be paid for what is used beyond the owned things, in minor units. */
export const moneyFor = (board: Board, catalogue: Catalogue | null, wiring: readonly WiredFeed[]): number =>
  usedArticles(board, catalogue, wiring).reduce((sum, { paid }) => sum + paid, 0);

type Used = {
  /** How many beyond the owned ones; of units the highest number counts against the stock. */
  readonly bought: number;
  readonly most: number;
  readonly paid: number;
};

function usedArticles(board: Board, catalogue: Catalogue | null, wiring: readonly WiredFeed[]): readonly Used[] {
  const supplies = suppliesOf(board, catalogue).map((supply): Used => {
    const owned = board.owned.supplies.get(supply.id) ?? 0;
    const units = new Set(wiring.filter((feed) => feed.supply === supply.id).map(({ unit }) => unit));
    const beyond = [...units].filter((unit) => unit > owned);
    const bought = Math.max(0, ...beyond.map((unit) => unit - owned));
    return { bought, most: mostOf(supply), paid: beyond.length * (supply.price ?? 0) };
  });
  const uses = [...partUses(wiring), ...batteryUses(board, catalogue, wiring)];
  const parts = [...partsOf(board, catalogue).values()].map((part): Used => {
    const bought = Math.max(0, uses.filter((id) => id === part.id).length - (board.owned.parts.get(part.id) ?? 0));
    return { bought, most: mostOf(part), paid: bought * (part.price ?? 0) };
  });
  return [...supplies, ...parts];
}

const mostOf = ({ price, stock }: Supply | Part): number => (price === null ? 0 : (stock ?? Infinity));

/** The batteries that are paid for. */
export function batteryUses(
  board: Board,
  catalogue: Catalogue | null,
  wiring: readonly Pick<WiredFeed, 'pedal' | 'supply'>[],
): readonly PartId[] {
  const parts = [...partsOf(board, catalogue).values()];
  return wiring.flatMap((feed) => {
    const supply = suppliesOf(board, catalogue).find(
      ({ id, source }) => id === feed.supply && source.kind === 'battery',
    );
    const pedals = board.pedals.filter(({ id }) => id === feed.pedal);
    const [hookup] = supply === undefined ? [] : hookupsOf(pedals, supply, parts, board.policy);
    return (hookup?.tails ?? []).flatMap((tail) => tail.parts.map(({ id }) => id));
  });
}

/** Every lead in use, a chain lead and a join lead once for their outlet. */
const partUses = (wiring: readonly WiredFeed[]): readonly string[] =>
  unitsOf(wiring).flatMap((unit) =>
    grouped(unit, ({ outputs }) => outputs.join()).flatMap((outlet) => [
      ...new Set(outlet.flatMap(({ chain }) => chain ?? [])),
      ...new Set(outlet.flatMap(({ join }) => join?.part ?? [])),
      ...outlet.flatMap(({ adapters }) => adapters),
    ]),
  );
