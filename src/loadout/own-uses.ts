import { isOwnAdapterOf } from '../domain/own-adapter.js';
import type { Supply } from '../domain/supply.js';
import type { Bench } from './bench.js';
import { exitOf } from './outlet.js';
import { tiersCounting } from './pedal-tiers.js';
import type { SoloUse } from './uses.js';

/** The one way in which the adapter that a pedal came with is used: it goes into that pedal as it is. */
export function usesOnOwn(supply: Supply, { classes }: Bench): readonly SoloUse[] {
  const [bank] = supply.banks;
  const [setting] = bank?.settings ?? [];
  if (bank === undefined || setting === undefined) return [];
  return classes.flatMap(({ like }, pedal) =>
    isOwnAdapterOf(supply, like)
      ? [
          {
            pedal,
            outputs: [{ bank: 0, setting: 0 }],
            join: null,
            exit: exitOf(bank),
            route: [],
            ...tiersCounting(like, setting.millivolts),
            weights: [],
          },
        ]
      : [],
  );
}
