import type { Pedal } from '../domain/pedal.js';
import type { Bank, JoinMode, Supply } from '../domain/supply.js';
import type { LeadKind } from './lead-kinds.js';
import type { Load } from './load.js';
import { exitOf, inParallel, inSeries, loadAlone, outletOf, polaritiesOf, type Outlet } from './outlet.js';
import { behind, type Exit, type Route } from './routes.js';
import type { Bench } from './supply-uses.js';
import { weightsOf, type OutputLoad, type TotalLimit } from './totals.js';
import type { OutputUse, SoloUse } from './uses.js';

/** Every way in which a pedal can hang alone on one output or one join, but those that another way makes needless. */
export function soloUses(supply: Supply, limits: readonly TotalLimit[], bench: Bench): readonly SoloUse[] {
  const seats = [...singleSeats(supply), ...joinSeats(supply, bench.kinds)];
  return bench.classes.flatMap(({ like }, pedal) => {
    const uses = seats.flatMap((seat) => usesOf(seat, like, pedal, limits, bench));
    return uses.filter((use, index) => !uses.some((other, at) => replaces(other, use, at < index, supply)));
  });
}

/** One output or one join at given settings, before a pedal is put there. */
type Seat = {
  readonly outputs: readonly OutputUse[];
  readonly join: SoloUse['join'];
  readonly exit: Exit;
  readonly outlet: Outlet;
  readonly loads: (load: Load) => readonly OutputLoad[];
};

function* settingsOf(bank: Bank, index: number): Generator<{ use: OutputUse; outlet: Outlet }> {
  for (const [setting, value] of bank.settings.entries()) {
    yield { use: { bank: index, setting }, outlet: outletOf(bank, value) };
  }
}

function singleSeats(supply: Supply): readonly Seat[] {
  return supply.banks.flatMap((bank, index) =>
    [...settingsOf(bank, index)].map(({ use, outlet }) => ({
      outputs: [use],
      join: null,
      exit: exitOf(bank),
      outlet,
      loads: (load) => [{ bank: index, millivolts: outlet.millivolts, load, repeats: false }],
    })),
  );
}

function joinSeats(supply: Supply, kinds: readonly LeadKind[]): readonly Seat[] {
  return supply.banks.flatMap((first, at) =>
    supply.banks.slice(at).flatMap((second, offset) => {
      const modes = joinModes(first, second, offset === 0);
      const exit = commonExit(first, second);
      if (modes.length === 0 || exit === null) return [];
      return kinds.flatMap((lead) =>
        lead.role.kind === 'join' && modes.includes(lead.role.mode) && lead.fits === first.plug
          ? seatsBehind({ first, second, at, to: at + offset, lead, mode: lead.role.mode, exit: behind(exit, lead) })
          : [],
      );
    }),
  );
}

/** Rule `join`: both outputs isolated, both makers' leave, and two outputs there to be joined. */
function joinModes(first: Bank, second: Bank, same: boolean): readonly JoinMode[] {
  if (!first.isolated || !second.isolated || (same && first.outputs < 2)) return [];
  return first.joins.filter((mode) => second.joins.includes(mode));
}

/** The exit of both banks' straight leads, where they agree in power, plug and polarity; null where they do not. */
function commonExit(first: Bank, second: Bank): Exit | null {
  if (first.power !== second.power || first.plug !== second.plug) return null;
  const polarities = polaritiesOf(first).filter((polarity) => polaritiesOf(second).includes(polarity));
  return first.power === 'DC' && polarities.length === 0 ? null : { plug: first.plug, polarities };
}

type JoinPlace = { first: Bank; second: Bank; at: number; to: number; lead: LeadKind; mode: JoinMode; exit: Exit };

function seatsBehind({ first, second, at, to, lead, mode, exit }: JoinPlace): readonly Seat[] {
  const seats: Seat[] = [];
  for (const one of settingsOf(first, at)) {
    for (const two of settingsOf(second, to)) {
      if (mode === 'parallel' && one.outlet.millivolts !== two.outlet.millivolts) continue;
      if (at === to && (two.use.setting < one.use.setting || !settingsMix(first, one.use, two.use))) continue;
      seats.push({
        outputs: [one.use, two.use],
        join: { mode, lead: lead.index },
        exit,
        outlet: mode === 'series' ? inSeries(one.outlet, two.outlet) : inParallel(one.outlet, two.outlet),
        loads: (load) => [
          { bank: at, millivolts: one.outlet.millivolts, load, repeats: false },
          { bank: to, millivolts: two.outlet.millivolts, load, repeats: mode === 'parallel' },
        ],
      });
    }
  }
  return seats;
}

const settingsMix = (bank: Bank, one: OutputUse, two: OutputUse): boolean =>
  bank.switching === 'each' || one.setting === two.setting;

function usesOf(seat: Seat, like: Pedal, pedal: number, limits: readonly TotalLimit[], bench: Bench): SoloUse[] {
  const load = loadAlone(like, seat.outlet, bench.policy);
  if (load === null) return [];
  return bench.routes(seat.exit, like).map((route: Route) => ({
    kind: 'solo',
    pedal,
    outputs: seat.outputs,
    join: seat.join,
    route,
    offPreferred: like.prefers !== null && like.prefers !== seat.outlet.millivolts,
    weights: weightsOf(limits, seat.loads(load), bench.policy),
  }));
}

/**
 * Whether whoever has `other` never needs `use`: it takes no more outputs, leads or totals, asks for no other setting of
 * a bank that is switched together, and is no further from the preferred volts. Of two that are alike the earlier stays.
 */
function replaces(other: SoloUse, use: SoloUse, earlier: boolean, supply: Supply): boolean {
  if (other === use || (other.offPreferred && !use.offPreferred)) return false;
  if (other.join !== null && other.join.lead !== use.join?.lead) return false;
  if (!other.outputs.every((output, index) => sits(output, placesFor(other, use, index), supply))) return false;
  if (!within(other.route, use.route)) return false;
  if (!other.weights.every((weight, index) => weight <= (use.weights[index] ?? 0n))) return false;
  return earlier || !alike(other, use);
}

/** A single output may take the place of either output of a join; joined outputs must match one to one. */
const placesFor = (other: SoloUse, use: SoloUse, index: number): readonly OutputUse[] =>
  other.join === null ? use.outputs : use.outputs.slice(index, index + 1);

function sits(output: OutputUse, places: readonly OutputUse[], supply: Supply): boolean {
  const together = supply.banks[output.bank]?.switching === 'together';
  return places.some(({ bank, setting }) => bank === output.bank && (!together || setting === output.setting));
}

const within = (route: Route, other: Route): boolean => route.every((kind) => count(route, kind) <= count(other, kind));

const count = (route: Route, kind: number): number => route.filter((each) => each === kind).length;

const alike = (one: SoloUse, two: SoloUse): boolean =>
  one.offPreferred === two.offPreferred &&
  one.outputs.length === two.outputs.length &&
  one.route.length === two.route.length &&
  one.weights.every((weight, index) => weight === two.weights[index]);
