import { gathered } from '../../solver/gathered.js';
import type { Policy } from '../domain/board.js';
import { isOwnSupplyOf, takesNothingElse } from '../domain/own-adapter.js';
import type { Pedal } from '../domain/pedal.js';
import type { Supply } from '../domain/supply.js';
import type { Bench } from './bench.js';
import { pedalLoad } from './load.js';
import { acceptsVolts, exitOf } from './outlet.js';
import { tiersCounting } from './pedal-tiers.js';
import type { Route } from './routes.js';
import type { SoloUse } from './uses.js';

/** The one way in which what belongs to one pedal is used: it goes into that pedal as it is. */
export function usesOnOwn(supply: Supply, bench: Bench): readonly SoloUse[] {
  const [bank] = supply.banks;
  const [setting] = bank?.settings ?? [];
  if (bank === undefined || setting === undefined) return [];
  return gathered(bench.classes, ({ like }, pedal) => {
    const route = isOwnSupplyOf(supply, like) ? takenBy(like, supply, bench) : null;
    if (route === null) return [];
    const counted = tiersCounting(like, setting.millivolts);
    return [
      { pedal, outputs: [{ bank: 0, setting: 0 }], join: null, exit: exitOf(bank), route, ...counted, weights: [] },
    ];
  });
}

/** The batteries that are paid for, as pieces of their kind; nothing of an adapter. Null where the rule `battery` is broken. */
function takenBy(like: Pedal, { source, banks }: Supply, { policy, kinds }: Bench): Route | null {
  if (source.kind !== 'battery') return [];
  const given = banks[0]?.settings[0]?.millivolts;
  const { batteries } = policy;
  if (batteries === null || given === undefined || takesNothingElse(like) || !acceptsVolts(like, given)) return null;
  const load = pedalLoad(like, given, policy);
  const held = BigInt(source.microampHours) * BigInt(policy.guess.denominator);
  if (load === undefined || load * BigInt(batteries.change.numerator) > held * BigInt(batteries.change.denominator))
    return null;
  const kind = kinds.findIndex(({ supplyOf }) => supplyOf.some(({ part }) => part === source.battery));
  if (kind < 0) return null;
  return Array.from({ length: setsFor(load, held, batteries) * source.count }, () => kind);
}

/** ⌈pay × load ÷ mAh⌉. */
function setsFor(load: bigint, held: bigint, { pay }: NonNullable<Policy['batteries']>): number {
  const one = held * BigInt(pay.denominator);
  return Number((load * BigInt(pay.numerator) + one - 1n) / one);
}
