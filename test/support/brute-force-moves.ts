/**
 * The best way to re-plug a tiny board by trying everything: all hookups, and for each set of them all numbers that its units
 * and outputs could have. Shares no code with what plans and counts moves.
 */
import type { Board, Catalogue, WiredFeed } from '../../src/domain/board.js';
import type { Pedal } from '../../src/domain/pedal.js';
import type { Score } from '../../src/domain/plan.js';
import type { PedalId } from '../../src/domain/quantities.js';
import type { Supply } from '../../src/domain/supply.js';
import { bestUnits } from './brute-force.js';
import type { Hookup } from './brute-force-hookups.js';
import { exposedOf, scoreOf } from './brute-force-score.js';
import { domainsOf, type Unit } from './brute-force-unit.js';

type Options = { readonly partial: boolean; readonly keep?: readonly PedalId[] };

/** The score of a best plan under the aim `moves`; null when there is none. */
export function bruteForceMoves(board: Board, catalogue: Catalogue, { partial, keep = [] }: Options): Score | null {
  const shop = { board, catalogue };
  const before = exposedBefore(board, catalogue);
  const best = bestUnits(shop, partial, 'moves', (units, left) => {
    if (left.some(({ id }) => keep.includes(id))) return null;
    const elsewhere = fewestMoved(units, board, keep);
    if (elsewhere === null) return null;
    const moved = elsewhere + left.filter(({ id }) => board.wiring.some(({ pedal }) => pedal === id)).length;
    const exposed = units.flatMap(domainsOf).flatMap(exposedOf);
    const newlyExposed = exposed.filter(({ id }) => !before.has(id)).length;
    return { ...scoreOf(units, left.length, shop), moved, newlyExposed };
  });
  return best?.score ?? null;
}

/**
 * The fewest pedals that are not where the wiring has them, over all numbers of units and outputs that keep some pedals in
 * their place; null when none does.
 */
export function fewestMoved(units: readonly Unit[], board: Board, keep: readonly PedalId[] = []): number | null {
  let moved = 0;
  for (const supply of new Set(units.map((unit) => unit.supply))) {
    const ofSupply = units.filter((unit) => unit.supply === supply);
    const numbers = countUp(1, Math.max(board.owned.supplies.get(supply.id) ?? 0, ofSupply.length));
    const fewest = fewestOfUnits(ofSupply, numbers, board.wiring, keep);
    if (fewest === null) return null;
    moved += fewest;
  }
  return moved;
}

function fewestOfUnits(
  units: readonly Unit[],
  numbers: readonly number[],
  wiring: readonly WiredFeed[],
  keep: readonly PedalId[],
): number | null {
  const [unit, ...rest] = units;
  if (unit === undefined) return 0;
  const totals = numbers.flatMap((number) => {
    const here = fewestOfOutputs(unit.hookups, unit.supply, [], { number, wiring, keep });
    const others = here === null ? null : fewestOfUnits(rest, without(numbers, [number]), wiring, keep);
    return here === null || others === null ? [] : [here + others];
  });
  return totals.length === 0 ? null : Math.min(...totals);
}

/** The fewest of one unit's pedals that are moved when it has a number, over all numbers of its outputs; null when some to keep are. */
export const fewestMovedOn = ({ hookups, supply }: Unit, here: Here): number | null =>
  fewestOfOutputs(hookups, supply, [], here);

export type Here = {
  readonly number: number;
  readonly wiring: readonly WiredFeed[];
  readonly keep: readonly PedalId[];
};

function fewestOfOutputs(
  hookups: readonly Hookup[],
  supply: Supply,
  taken: readonly number[],
  here: Here,
): number | null {
  const [hookup, ...rest] = hookups;
  if (hookup === undefined) return 0;
  const totals = outputsFor(hookup, supply, taken).flatMap((outputs) => {
    const moved = hookup.pedals.filter((pedal) => isMoved(pedal, hookup, outputs, supply, here));
    if (moved.some(({ id }) => here.keep.includes(id))) return [];
    const others = fewestOfOutputs(rest, supply, [...taken, ...outputs], here);
    const counted = moved.filter(({ id }) => here.wiring.some((wired) => wired.pedal === id)).length;
    return others === null ? [] : [counted + others];
  });
  return totals.length === 0 ? null : Math.min(...totals);
}

/** All choices of free outputs for the hookup's taps, each of the tap's bank. */
function outputsFor(hookup: Hookup, supply: Supply, taken: readonly number[]): readonly (readonly number[])[] {
  return hookup.taps.reduce<readonly (readonly number[])[]>(
    (choices, tap) =>
      choices.flatMap((chosen) => {
        const bank = supply.banks[tap.bank];
        const all = bank === undefined ? [] : countUp(bank.firstOutput, bank.outputs);
        return without(all, [...taken, ...chosen]).map((output) => [...chosen, output]);
      }),
    [[]],
  );
}

function isMoved(
  pedal: Pedal,
  hookup: Hookup,
  outputs: readonly number[],
  supply: Supply,
  { number, wiring }: Here,
): boolean {
  const wired = wiring.find((feed) => feed.pedal === pedal.id);
  if (wired === undefined) return true;
  const same =
    wired.supply === supply.id &&
    wired.unit === number &&
    wired.millivolts === hookup.volts &&
    outputs.length === wired.outputs.length &&
    outputs.every((output) => wired.outputs.includes(output));
  return !same;
}

/** The pedals that share a ground with a digital one as they are plugged; grounds meet in whatever hangs on both. */
export function exposedBefore(board: Board, catalogue: Catalogue | null): ReadonlySet<PedalId> {
  const supplies = [...board.gear.supplies, ...(catalogue?.supplies ?? [])];
  const groundsOf = ({ supply: id, unit, outputs }: WiredFeed): readonly string[] =>
    outputs.map((output) => {
      const supply = supplies.find((each) => each.id === id);
      const bank = supply?.banks.find(
        ({ firstOutput, outputs: count }) => firstOutput <= output && output < firstOutput + count,
      );
      return `${id} ${unit} ${bank?.isolated === true ? output : 'common'}`;
    });
  const meets = (feed: WiredFeed): ReadonlySet<PedalId> => {
    const grounds = new Set(groundsOf(feed));
    let before = 0;
    while (grounds.size > before) {
      before = grounds.size;
      for (const other of board.wiring)
        if (groundsOf(other).some((ground) => grounds.has(ground)))
          for (const ground of groundsOf(other)) grounds.add(ground);
    }
    const near = board.wiring.filter((other) => groundsOf(other).some((ground) => grounds.has(ground)));
    return new Set(near.map(({ pedal }) => pedal));
  };
  const exposed = board.wiring.filter((feed) => {
    const near = meets(feed);
    const pedal = board.pedals.find(({ id }) => id === feed.pedal);
    return (
      pedal?.highGain === true && board.pedals.some((other) => other !== pedal && other.digital && near.has(other.id))
    );
  });
  return new Set(exposed.map(({ pedal }) => pedal));
}

const countUp = (from: number, count: number): readonly number[] => Array.from({ length: count }, (_, at) => from + at);

const without = (numbers: readonly number[], taken: readonly number[]): readonly number[] =>
  numbers.filter((number) => !taken.includes(number));
