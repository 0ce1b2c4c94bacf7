import type { Supply } from '../domain/supply.js';
import type { Hung } from '../loadout/loadout.js';
import { voltsOf } from '../loadout/solo-uses.js';
import { matchesBerth } from '../loadout/berth-match.js';
import type { Berth } from '../loadout/today.js';
import type { OutputUse } from '../loadout/uses.js';

/** What hangs on a unit, each thing with where its pedals are plugged today. */
export type NumberedUnit = {
  readonly supply: Supply;
  readonly unit: number;
  readonly contents: readonly { readonly hung: Hung; readonly berths: readonly (Berth | null)[] }[];
};

/**
 * The output numbers of everything on a unit, such that as many pedals as can be keep today's; all else takes the lowest
 * numbers that are free in its bank. The two of a join come in rising order.
 */
export function outputNumbers(of: NumberedUnit): readonly (readonly number[])[] {
  const kept = keptNumbers(of.contents.map((content) => wishesOf(content, of)));
  const taken = new Set(kept.flatMap((numbers) => numbers ?? []));
  const take = ({ bank }: OutputUse): number => {
    let number = of.supply.banks[bank]?.firstOutput ?? 0;
    while (taken.has(number)) number += 1;
    taken.add(number);
    return number;
  };
  return of.contents.map(({ hung }, index) => kept[index] ?? outputsOf(hung).map(take));
}

/** How many of a unit's pedals keep their outputs when these are numbered as above. */
export function keptCount(of: NumberedUnit): number {
  const wishes = of.contents.map((content) => wishesOf(content, of));
  return keptNumbers(wishes).reduce((sum, numbers, index) => {
    const wish = wishes[index]?.find(({ outputs }) => outputs === numbers);
    return sum + (wish?.pedals ?? 0);
  }, 0);
}

const outputsOf = (hung: Hung): readonly OutputUse[] => (hung.kind === 'solo' ? hung.use.outputs : [hung.pool.output]);

/** Outputs of today that would spare some pedals the move. */
type Wish = { readonly outputs: readonly number[]; readonly pedals: number };

function wishesOf({ hung, berths }: NumberedUnit['contents'][number], { supply, unit }: NumberedUnit): readonly Wish[] {
  const outputs = outputsOf(hung);
  const volts = voltsOf({ outputs, join: hung.kind === 'solo' ? hung.use.join : null }, supply);
  const wishes = new Map<string, Wish>();
  for (const berth of berths) {
    if (berth?.unit !== unit || !matchesBerth(berth, supply, outputs, volts)) continue;
    const key = berth.outputs.join();
    wishes.set(key, { outputs: berth.outputs, pedals: (wishes.get(key)?.pedals ?? 0) + 1 });
  }
  return [...wishes.values()].sort((a, b) => b.pedals - a.pedals);
}

/** Which wish of each comes true, if any, so that no output is taken twice and most pedals stay: all ways, the best first. */
function keptNumbers(wishes: readonly (readonly Wish[])[]): readonly (readonly number[] | null)[] {
  const most = wishes.map((each) => each[0]?.pedals ?? 0);
  const rest = most.map((_, index) => most.slice(index).reduce((sum, pedals) => sum + pedals, 0));
  let best: { pedals: number; numbers: readonly (readonly number[] | null)[] } = {
    pedals: -1,
    numbers: wishes.map(() => null),
  };
  const grant = (index: number, pedals: number, numbers: readonly (readonly number[] | null)[]): void => {
    if (pedals + (rest[index] ?? 0) <= best.pedals) return;
    if (index === wishes.length) {
      best = { pedals, numbers };
      return;
    }
    const taken = new Set(numbers.flatMap((each) => each ?? []));
    for (const wish of wishes[index] ?? []) {
      if (wish.outputs.some((output) => taken.has(output))) continue;
      grant(index + 1, pedals + wish.pedals, [...numbers, wish.outputs]);
    }
    grant(index + 1, pedals, [...numbers, null]);
  };
  grant(0, 0, []);
  return best.numbers;
}
