import { leadNumbers } from '../../domain/lead-numbers.js';
import { leadTails } from '../../domain/lead-tails.js';
import type { Feed } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Source } from '../../domain/source.js';
import type { Speech } from './speech.js';
import { socketsTaken, unitTitle, type OutputUse, type UnitUse } from './usage.js';
import { outputsText } from './words.js';

/** One end of a lead, at a pedal. */
export type LeadEnd = {
  /** The lead's number, with a letter where a chain has several ends: "7" or "7c". */
  readonly mark: string;
  readonly feed: Feed;
};

/** Everything between one output, or two joined ones, and its pedals: a lead by a number that all reports share. */
export type Lead = {
  /** For life; 0 for a battery, which has no lead. */
  readonly number: number;
  readonly use: OutputUse;
  readonly ends: readonly LeadEnd[];
};

/** One supply unit with its leads. */
export type UnitHookup = {
  readonly unit: UnitUse;
  /** With the unit's number where units of one model could be mixed up: "Quay 6, unit 2". */
  readonly name: string;
  /** The mains socket that it takes, from 1; null for one that stands on none. */
  readonly socket: number | null;
  /** The output that its inlet hangs on: "Quay 6 output 5"; null for one that has no inlet. */
  readonly feeder: string | null;
  readonly leads: readonly Lead[];
};

/** The units in the order in which they are hooked up. */
export function hookupOf({ kit, inventory }: Speech, units: readonly UnitUse[]): readonly UnitHookup[] {
  const feeds = units.flatMap(({ outputs }) => outputs.flatMap((use) => use.feeds));
  const numbers = leadNumbers(kit, feeds);
  const tails = leadTails(kit, feeds);
  const feederOf = ({ supply, unit }: UnitUse): string | null => {
    const feed = feeds.find(({ inletOf }) => inletOf?.supply === supply.id && inletOf.unit === unit);
    const on = units.find((other) => other.supply.id === feed?.supply && other.unit === feed.unit);
    return feed === undefined || on === undefined
      ? null
      : `${unitTitle(inventory, units, on)} ${outputsText(feed.outputs)}`;
  };
  return units.map((unit, at) => ({
    unit,
    name: unitTitle(inventory, units, unit),
    socket: socketAfter[unit.supply.source.kind](socketsTaken(units.slice(0, at))),
    feeder: feederOf(unit),
    leads: unit.outputs.map((use) => {
      const number = numbers.get(use.feeds[0].pedal) ?? 0;
      return { number, use, ends: endsOf(number, tails, use) };
    }),
  }));
}

/** Whether a unit is owned; null for batteries, which are counted one by one among what is bought and what is owned. */
export const isOwnedUnit = ({ supply, owned }: UnitUse): boolean | null =>
  supply.source.kind === 'battery' ? null : owned;

/** A unit's name with whose it is: "Quay 6 (to buy)". */
export const withOwnership = (name: string, owned: boolean | null): string =>
  owned === null ? name : `${name} (${ownershipWord(owned)})`;

export const ownershipWord = (owned: boolean): string => (owned ? 'yours' : 'to buy');

/** What a unit stands on: "mains socket 2", "own charge", or the output that feeds it. */
export const standText = ({ socket, feeder, unit }: Pick<UnitHookup, 'socket' | 'feeder' | 'unit'>): string => {
  if (socket !== null) return `mains socket ${socket}`;
  if (unit.supply.source.kind === 'fed') return feeder ?? 'no output';
  return unit.supply.source.kind === 'battery' ? 'in the pedal' : 'own charge';
};

/** The number of a unit's mains socket where so many are taken already. */
const socketAfter: Readonly<Record<Source['kind'], (taken: number) => number | null>> = {
  mains: (taken) => taken + 1,
  adapter: (taken) => taken + 1,
  charge: () => null,
  fed: () => null,
  battery: () => null,
};

/** In the order of their tails. */
const endsOf = (number: number, tails: ReadonlyMap<PedalId, string>, { feeds }: OutputUse): readonly LeadEnd[] =>
  feeds
    .map((feed) => ({ letter: tails.get(feed.pedal) ?? '', feed }))
    .sort(
      (one, other) =>
        one.letter.length - other.letter.length || (one.letter < other.letter ? -1 : Number(one.letter > other.letter)),
    )
    .map(({ letter, feed }) => ({ mark: number === 0 ? '' : `${number}${letter}`, feed }));
