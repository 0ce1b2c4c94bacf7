import type { Kit } from '../../domain/kit.js';
import { microamps, type Microamps } from '../../domain/quantities.js';
import type { Violation } from '../../domain/violation.js';
import type { Effort } from '../../formulation/optimiser.js';
import { nothingToday, type Today } from '../../loadout/today.js';
import { check } from '../check/check.js';
import { answerTo } from '../choose/answer-to.js';
import { beyondThePlan, effortOf, type SearchOptions } from '../asking/search-options.js';
import { within } from '../asking/within.js';
import { installedAs, type Installed } from './installed.js';
import { largestPedals, type LargestPedals } from './largest-pedal.js';
import { morePedals, mostMore } from './more-pedals.js';

/** Why it is not known what there is to spare. */
export type NoBasis =
  /** The wiring in the file is complete and breaks rules, the worst first. */
  | { readonly kind: 'unsafe'; readonly findings: readonly Violation[] }
  /** Not every pedal has a place in the wiring, and no plan gives them one. */
  | { readonly kind: 'impossible' }
  | { readonly kind: 'stopped' };

export type Basis = {
  readonly kind: 'basis';
  /** Whether it is the wiring in the file, or a plan because that one is not complete. */
  readonly of: 'wiring' | 'plan';
  readonly installed: Installed;
};

/** What fits while every pedal stays where it is, or when any of them may be moved. */
export type Room = LargestPedals & {
  /** How many more 9 V pedals that draw what is `counted`; null when it was not settled in time. */
  readonly more: number | null;
  /** No fewer of them than so many. */
  readonly atLeast: number;
};

export type Spare = Omit<Basis, 'kind'> & {
  readonly kind: 'spare';
  readonly asPlugged: Room;
  readonly replugged: Room;
  /** What each of the pedals draws that are counted, in microamps, and the count at which counting ends. */
  readonly counted: { readonly microamps: Microamps; readonly most: number };
  /** Whether all of it was settled. */
  readonly whole: boolean;
};

/** How long each of these is sought, in milliseconds: on boards of usual size it takes a fraction of that. */
const patienceMs = 10_000;

/** The draw of the pedals that are counted. */
const usualMore: Microamps = microamps(100_000);

/**
 * What is left to feed more pedals from, with nothing bought: after the wiring in the file or, where that is not complete, after
 * the best plan. Counted by the program that makes the plans.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function spare(kit: Kit, options: SearchOptions = {}): Promise<Spare | NoBasis> {
  const told = effortOf(options);
  const basis = await basisOf(kit, told);
  if (basis.kind !== 'basis') return basis;
  const { installed } = basis;
  const effort = beyondThePlan(told);
  const asPlugged = await roomFor(installed.asPlugged, installed, effort);
  const moved = await roomFor(nothingToday, installed, effort);
  // What fits while all stays fits in any case.
  const replugged = { ...moved, atLeast: Math.max(moved.atLeast, asPlugged.atLeast) };
  const whole = [asPlugged, replugged].every(
    ({ more, largest, quietest }) => more !== null && largest !== 'unknown' && quietest !== 'unknown',
  );
  return { ...basis, kind: 'spare', asPlugged, replugged, counted: { microamps: usualMore, most: mostMore }, whole };
}

async function roomFor(today: Today, installed: Installed, effort: Effort): Promise<Room> {
  const limited = <Found>(look: (effort: Effort) => Promise<Found>): Promise<Found> => within(patienceMs, effort, look);
  const more = await limited((each) => morePedals(usualMore, today, installed, each));
  return { ...more, ...(await limited((each) => largestPedals(today, installed, each))) };
}

/** The wiring that is there or planned, as it stands once it is plugged. */
export async function basisOf(kit: Kit, effort: Effort): Promise<Basis | NoBasis> {
  const { board } = kit;
  // Kept places are never plugged.
  if (board.wiring.length === board.pedals.filter(({ kept }) => kept === null).length) {
    const { status, findings, wiring } = check(kit);
    if (status === 'unsafe') return { kind: 'unsafe', findings };
    return { kind: 'basis', of: 'wiring', installed: installedAs(kit, wiring) };
  }
  const answer = await answerTo({ kit, aim: 'cost', partial: false, today: nothingToday, effort });
  if (answer.kind !== 'plan') return { kind: answer.kind };
  if (answer.gap !== null) return { kind: 'stopped' };
  return { kind: 'basis', of: 'plan', installed: installedAs(kit, answer.wiring) };
}
