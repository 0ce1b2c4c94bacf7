import { gathered } from '../../solver/gathered.js';
import type { Pedal } from '../domain/pedal.js';
import { pedalTiers } from '../domain/pedal-tier.js';
import { millivolts, type Millivolts } from '../domain/quantities.js';
import type { Supply } from '../domain/supply.js';
import { takenAlone } from './outlet.js';
import type { PedalClass } from './pedal-class.js';
import { within, type Route } from './routes.js';
import { tiersCounting } from './pedal-tiers.js';
import { seatsOf, type OutletSeat } from './seats.js';
import type { Bench } from './bench.js';
import { matchesBerth } from './berth-match.js';
import { weightsOf, type TotalLimit } from './totals.js';
import type { OutputSetting, SoloUse } from './uses.js';

/** Every way in which a pedal can hang alone on one output or one join, but those that another way makes needless. */
export function soloUses(supply: Supply, limits: readonly TotalLimit[], bench: Bench): readonly SoloUse[] {
  const seats = seatsOf(supply, bench.kinds).map((seat) => ({ seat, routesTo: bench.routes(seat.exit) }));
  const ofClass = ({ like, berth, pinned }: PedalClass, pedal: number): readonly SoloUse[] => {
    const uses: SoloUse[] = [];
    for (const routed of seats) uses.push(...usesOf(routed, like, pedal, limits, bench));
    if (uses.length < 2) return uses;
    // Nothing replaces where a pedal is plugged today, save for the same with fewer leads.
    const isHome = (use: SoloUse): boolean =>
      berth !== null && matchesBerth(berth, supply, use.outputs, voltsOf(use, supply));
    // Of a pedal that is kept to a place, what reaches into a bank is replaced by nothing that does not.
    const keepsPlace = (other: SoloUse, use: SoloUse): boolean =>
      (isHome(other) || !isHome(use)) && (!pinned || reachesAsFar(other, use));
    return uses.filter(
      (use, index) => !uses.some((other, at) => replaces(other, use, at < index, supply) && keepsPlace(other, use)),
    );
  };
  return gathered(bench.classes, ofClass);
}

const reachesAsFar = (other: SoloUse, use: SoloUse): boolean =>
  use.outputs.every(({ bank }) => other.outputs.some((output) => output.bank === bank));

/** What the pedal gets: the sum of both outputs for a series join. */
export function voltsOf({ outputs, join }: Pick<SoloUse, 'outputs' | 'join'>, supply: Supply): Millivolts {
  const [first = 0, second = 0] = outputs.map(
    ({ bank, setting }) => supply.banks[bank]?.settings[setting]?.millivolts ?? 0,
  );
  return millivolts(join?.mode === 'series' ? first + second : first);
}

type RoutedSeat = { readonly seat: OutletSeat; readonly routesTo: ReturnType<Bench['routes']> };

function usesOf(
  { seat, routesTo }: RoutedSeat,
  like: Pedal,
  pedal: number,
  limits: readonly TotalLimit[],
  bench: Bench,
): readonly SoloUse[] {
  const taken = takenAlone(like, seat.outlet, bench.policy);
  if (taken === null) return [];
  return routesTo(like).map((route: Route) => ({
    pedal,
    outputs: seat.outputs,
    join: seat.join,
    exit: seat.exit,
    route,
    ...tiersCounting(like, seat.outlet.millivolts),
    weights: weightsOf(limits, seat.takes(taken), bench.policy),
  }));
}

/**
 * Whether whoever has `other` never needs `use`: it takes no more outputs, leads or totals, asks for no other setting of
 * a bank that is switched together, and counts in no tier in which `use` does not. Of two that are alike the earlier stays.
 */
function replaces(other: SoloUse, use: SoloUse, earlier: boolean, supply: Supply): boolean {
  if (other === use || (other.join !== null && other.join.lead !== use.join?.lead)) return false;
  if (!other.outputs.every((output, index) => sits(output, placesFor(other, use, index), supply))) return false;
  if (pedalTiers.some((tier) => other[tier] && !use[tier])) return false;
  if (!within(other.route, use.route)) return false;
  if (!other.weights.every((weight, index) => weight <= (use.weights[index] ?? 0n))) return false;
  return earlier || !alike(other, use);
}

/** A single output may take the place of either output of a join; joined outputs must match one to one. */
const placesFor = (other: SoloUse, use: SoloUse, index: number): readonly OutputSetting[] =>
  other.join === null ? use.outputs : use.outputs.slice(index, index + 1);

function sits(output: OutputSetting, places: readonly OutputSetting[], supply: Supply): boolean {
  return places.some(
    ({ bank, setting }) =>
      bank === output.bank && (setting === output.setting || supply.banks[bank]?.switching !== 'together'),
  );
}

const alike = (one: SoloUse, two: SoloUse): boolean =>
  pedalTiers.every((tier) => one[tier] === two[tier]) &&
  one.outputs.length === two.outputs.length &&
  one.route.length === two.route.length &&
  one.weights.every((weight, index) => weight === two.weights[index]);
