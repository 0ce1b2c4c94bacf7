import type { CaseChain } from './case-model.js';
import type { ShapeTaken } from './totals.js';

/** What the pedals of a chain are worth; all in whole steps. */
type ChainWorth = {
  /** By link, what it adds after its rents. */
  readonly links: readonly number[];
  /** By link, whether it is worth nothing even without rents: then it only ever serves as the second pedal of two. */
  readonly idle: readonly boolean[];
  /** What the lead costs by number of pedals. */
  readonly leads: readonly number[];
};

/**
 * Visits every chain of two pedals or more that adds at least `least` after its lead, as its links, one entry a pedal. The
 * visitor returns what it asks for from then on. Branches are cut off by what the rest could add at most: in whole numbers,
 * so that rounding never cuts off too much.
 */
export function searchChains(
  chain: CaseChain,
  worth: ChainWorth,
  least: number,
  visit: (links: readonly number[], adds: number) => number,
): void {
  const queue = queueOf(chain, worth);
  const longest = worth.leads.length - 1;
  const taken: number[] = [];
  let asked = least;

  const extend = (from: number, load: number, surge: number, sum: number): void => {
    const count = taken.length;
    const leads = leadsFor(count + 1, worth);
    // A pedal takes no less at switch-on than its load.
    const room = Math.min(chain.most.load - load, chain.most.surge - surge);
    for (let at = from; at < queue.length; at += 1) {
      const next = queue[at];
      if (next === undefined) return;
      const rest = Math.min(next.restSum, next.density * room, (longest - count) * next.restBest);
      if (sum + rest - leads.more < asked) return;
      // Of the same pedals the first are taken first.
      if (at > from && queue[at - 1]?.link === next.link) continue;
      if (!isAtMost(next, chain.most.load - load, chain.most.surge - surge) || (next.idle && count > 1)) continue;
      taken.push(next.link);
      const adds = sum + next.adds - leads.now;
      if (count > 0 && adds >= asked) asked = visit(taken, adds);
      const goesOn = count + 1 < longest && (count === 0 || !next.idle);
      if (goesOn) extend(at + 1, load + next.load, surge + next.surge, sum + next.adds);
      taken.pop();
    }
  };
  extend(0, 0, 0, 0);
}

const isAtMost = (taken: ShapeTaken, load: number, surge: number): boolean =>
  taken.load <= load && taken.surge <= surge;

/** What the lead costs for so many pedals, and at least for that many and any more that make a chain. */
const leadsFor = (pedals: number, { leads }: ChainWorth): { readonly now: number; readonly more: number } => ({
  now: leads[pedals] ?? Infinity,
  more: leads[Math.max(2, pedals)] ?? Infinity,
});

/** A pedal that may be taken next, and what it and those behind it could add. */
type Candidate = ShapeTaken & {
  readonly link: number;
  readonly adds: number;
  readonly idle: boolean;
  /** At least what it, or any behind it, adds a unit of load. */
  readonly density: number;
  readonly restSum: number;
  readonly restBest: number;
};

/** One entry a pedal, those first that add most for their load, idle ones last. */
function queueOf({ links }: CaseChain, worth: ChainWorth): readonly Candidate[] {
  const entries = links.flatMap(({ count, load, surge }, link) => {
    const adds = worth.links[link] ?? -Infinity;
    const idle = worth.idle[link] === true;
    const ratio = adds / load;
    // A quotient that was rounded down is below the true one by less than one.
    const density = adds > 0 ? Math.floor(ratio) + 1 : 0;
    return adds === -Infinity ? [] : [{ link, count, adds, idle, load, surge, ratio, density }];
  });
  entries.sort((first, second) => Number(first.idle) - Number(second.idle) || second.ratio - first.ratio);
  const queue: Candidate[] = [];
  let [restSum, restBest] = [0, 0];
  for (const { count, ratio: _ratio, ...entry } of entries.toReversed()) {
    for (let copy = 0; copy < count; copy += 1) {
      restSum += Math.max(0, entry.adds);
      restBest = Math.max(restBest, entry.adds);
      queue.push({ ...entry, restSum, restBest });
    }
  }
  return queue.reverse();
}
