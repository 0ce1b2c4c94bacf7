import { gathered } from '../../solver/gathered.js';
import { outputsOf as numbersOfBank } from '../domain/kit.js';
import type { Supply } from '../domain/supply.js';
import type { Bench } from '../loadout/bench.js';
import type { Hung, Loadout } from '../loadout/loadout.js';
import { voltsOf } from '../loadout/solo-uses.js';
import { matchesBerth } from '../loadout/berth-match.js';
import type { Berth } from '../loadout/today.js';
import type { OutputSetting } from '../loadout/uses.js';

/** Where a pedal is plugged today, and whether it must stay there. */
export type Resident = { readonly berth: Berth | null; readonly pinned: boolean };

/** What hangs on a unit, each thing with its pedals. */
export type NumberedUnit = {
  readonly supply: Supply;
  readonly unit: number;
  readonly contents: readonly { readonly hung: Hung; readonly residents: readonly Resident[] }[];
};

/**
 * The output numbers of everything on a unit, such that the pedals that must stay keep today's, and of the others as many as
 * can. All else takes numbers that are free in its bank: where its pedals are today, though at other volts, else the lowest
 * on which nothing hangs today, else the lowest. The two of a join come in rising order.
 */
export function outputNumbers(of: NumberedUnit, inUse: ReadonlySet<number>): readonly (readonly number[])[] {
  const kept = keptNumbers(of.contents.map((content) => wishesOf(content, of)));
  const taken = new Set(gathered(kept, (numbers) => numbers ?? []));
  return of.contents.map(({ hung, residents }, index) => {
    const own = new Set(gathered(residents, ({ berth }) => (isOn(berth, of) ? berth.outputs : [])));
    const rank = (number: number): number => (own.has(number) ? 0 : inUse.has(number) ? 2 : 1);
    const take = ({ bank }: OutputSetting): number => {
      const free = numbersOf(of.supply, bank).filter((number) => !taken.has(number));
      const [best = 0] = free.sort((one, other) => rank(one) - rank(other) || one - other);
      taken.add(best);
      return best;
    };
    return (
      kept[index] ??
      outputsOf(hung)
        .map(take)
        .sort((one, other) => one - other)
    );
  });
}

const isOn = (berth: Berth | null, { supply, unit }: NumberedUnit): berth is Berth =>
  berth !== null && berth.supply === supply.id && berth.unit === unit;

function numbersOf({ banks }: Supply, index: number): number[] {
  const bank = banks[index];
  return bank === undefined ? [] : [...numbersOfBank(bank)];
}

/** How many pedals of a loadout keep today's outputs when these are numbered as above; none on a unit that is like all others. */
export function keptOf(
  { supply, unit, hung }: Pick<Loadout, 'supply' | 'unit' | 'hung'>,
  bench: Pick<Bench, 'classes'>,
): number {
  if (unit === null) return 0;
  const contents = hung.map((each) => {
    const classes = each.kind === 'solo' ? [each.use.pedal] : each.places.map(({ pedal }) => pedal);
    const residents = classes.map((pedal): Resident => {
      const { berth = null, pinned = false } = bench.classes[pedal] ?? {};
      return { berth, pinned };
    });
    return { hung: each, residents };
  });
  return keptCount({ supply, unit, contents });
}

export function keptCount(of: NumberedUnit): number {
  const wishes = of.contents.map((content) => wishesOf(content, of));
  return keptNumbers(wishes).reduce((sum, numbers, index) => {
    const wish = wishes[index]?.find(({ outputs }) => outputs === numbers);
    return sum + (wish?.pedals ?? 0);
  }, 0);
}

const outputsOf = (hung: Hung): readonly OutputSetting[] =>
  hung.kind === 'solo' ? hung.use.outputs : [hung.pool.output];

/** Outputs of today that would spare some pedals the move; those that must stay weigh more than all others together. */
type Wish = { readonly outputs: readonly number[]; readonly pedals: number; readonly weight: number };

function wishesOf(
  { hung, residents }: NumberedUnit['contents'][number],
  { supply, unit, contents }: NumberedUnit,
): readonly Wish[] {
  const all = contents.reduce((sum, content) => sum + content.residents.length, 0);
  const outputs = outputsOf(hung);
  const volts = voltsOf({ outputs, join: hung.kind === 'solo' ? hung.use.join : null }, supply);
  const wishes = new Map<string, Wish>();
  for (const { berth, pinned } of residents) {
    if (berth?.unit !== unit || !matchesBerth(berth, supply, outputs, volts)) continue;
    const key = berth.outputs.join();
    const { pedals = 0, weight = 0 } = wishes.get(key) ?? {};
    wishes.set(key, { outputs: berth.outputs, pedals: pedals + 1, weight: weight + (pinned ? all + 1 : 1) });
  }
  return [...wishes.values()].sort((a, b) => b.weight - a.weight);
}

/** Which wish of each comes true, if any, so that no output is taken twice and the most weight stays: all ways, the best first. */
function keptNumbers(wishes: readonly (readonly Wish[])[]): readonly (readonly number[] | null)[] {
  const most = wishes.map((each) => each[0]?.weight ?? 0);
  const rest = most.map((_, index) => most.slice(index).reduce((sum, weight) => sum + weight, 0));
  let best: { weight: number; numbers: readonly (readonly number[] | null)[] } = {
    weight: -1,
    numbers: wishes.map(() => null),
  };
  const grant = (index: number, weight: number, numbers: readonly (readonly number[] | null)[]): void => {
    if (weight + (rest[index] ?? 0) <= best.weight) return;
    if (index === wishes.length) {
      best = { weight, numbers };
      return;
    }
    const taken = new Set(gathered(numbers, (each) => each ?? []));
    for (const wish of wishes[index] ?? []) {
      if (wish.outputs.some((output) => taken.has(output))) continue;
      grant(index + 1, weight + wish.weight, [...numbers, wish.outputs]);
    }
    grant(index + 1, weight, [...numbers, null]);
  };
  grant(0, 0, []);
  return best.numbers;
}
