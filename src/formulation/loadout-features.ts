import { gathered } from '../../solver/gathered.js';
import { inletSorts } from '../loadout/inlet-classes.js';
import { hasOnePrice } from '../loadout/lead-kinds.js';
import type { Loadout } from '../loadout/loadout.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import { leadsOfWay, waysOn } from './loadout-measures.js';
import type { SettledStep } from './scalar-objective.js';
import type { Question } from './question.js';

/** The numbers of the features: pedal classes first, then lead kinds, then these. */
export type Features = {
  readonly leads: number;
  readonly unit: number;
  readonly bricks: number;
  readonly sockets: number;
  readonly money: number;
  readonly earlier: number;
  /** From here on one for each sort of inlets: the units in use that have such an inlet. */
  readonly fed: number;
  /** From here on one for each of these pairs: pedals of the class that take a lead of the kind, as their own or to join outputs. */
  readonly taking: number;
  readonly pairs: readonly TakingPair[];
  readonly count: number;
};

type TakingPair = { readonly pedal: number; readonly lead: number };

/** The features of a program; `pairs` are those of which it is counted who takes a lead. */
export function featuresOf(
  { bench }: Question,
  earlier: readonly SettledStep[],
  pairs: readonly TakingPair[] = [],
): Features {
  const leads = bench.classes.length;
  const unit = leads + bench.kinds.length;
  const [bricks, sockets, money, steps] = [unit + 1, unit + 2, unit + 3, unit + 4];
  const fed = steps + earlier.length;
  const taking = fed + inletSorts(bench).length;
  return { leads, unit, bricks, sockets, money, earlier: steps, fed, taking, pairs, count: taking + pairs.length };
}

/**
 * Who may take a lead of a kind that is limited, or of several prices. A relaxation may put parts of a loadout that takes more than there
 * are beside parts of one that takes none, and all that is counted of either is whole.
 */
export function takingPairs({ bench }: Question, supplies: readonly SupplyUses[]): readonly TakingPair[] {
  const scarce = new Set(gathered(bench.kinds, (kind) => (hasOnePrice(kind) ? [] : [kind.index])));
  if (scarce.size === 0) return [];
  const pairs = new Map<string, TakingPair>();
  for (const { solos, chains } of supplies) {
    for (const way of [...solos, ...gathered(chains, ({ places }) => places)]) {
      for (const lead of leadsOfWay(way)) {
        if (scarce.has(lead)) pairs.set(`${way.pedal} ${lead}`, { pedal: way.pedal, lead });
      }
    }
  }
  return [...pairs.values()];
}

/** How much of each feature that counts who takes which lead the loadout has; what is nothing is left out. */
export function takenIn({ hung }: Loadout, { taking, pairs }: Features): readonly (readonly [number, number])[] {
  if (pairs.length === 0) return [];
  const counts = pairs.map(() => 0);
  for (const way of gathered(hung, waysOn)) {
    for (const lead of leadsOfWay(way)) {
      const at = pairs.findIndex((pair) => pair.pedal === way.pedal && pair.lead === lead);
      if (at >= 0) counts[at] = (counts[at] ?? 0) + 1;
    }
  }
  return gathered(counts, (count, at) => (count === 0 ? [] : [[taking + at, count] as const]));
}
