import type { Policy } from '../../domain/board.js';
import { factorOfThousandths, type Factor } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { ask, planOf } from '../asking/ask.js';
import { furthest } from '../asking/furthest.js';
import { noWays, type Change, type FactorName, type LastingName, type Raised, type Ways } from './way-out.js';

/** Numbers of the policy that may have three decimals. The larger one is, the fewer plans are possible. */
export type DemandName = FactorName | LastingName;

type Demand = {
  /** In thousandths: no factor may go below 1, and what has to last has to last a moment. */
  readonly lowest: number;
  /** Null where the policy does not state it. */
  readonly read: (policy: Policy) => Factor | null;
  readonly written: (policy: Policy, to: Factor) => Partial<Policy>;
  readonly change: (raised: Raised<Factor>) => Change;
};

const headroom = (factor: keyof Policy['headroom']): Demand => ({
  lowest: 1000,
  read: (policy) => policy.headroom[factor],
  written: (policy, to) => ({ headroom: { ...policy.headroom, [factor]: to } }),
  change: (raised) => ({ kind: 'factor', factor, ...raised }),
});

const demands: Readonly<Record<DemandName, Demand>> = {
  alone: headroom('alone'),
  chained: headroom('chained'),
  supply: headroom('supply'),
  guess: {
    lowest: 1000,
    read: ({ guess }) => guess,
    written: (_, guess) => ({ guess }),
    change: (raised) => ({ kind: 'factor', factor: 'guess', ...raised }),
  },
  bank: {
    lowest: 1,
    read: ({ runtime }) => runtime?.hours ?? null,
    written: ({ runtime }, hours) => ({ runtime: runtime === null ? null : { ...runtime, hours } }),
    change: (raised) => ({ kind: 'hours', of: 'bank', ...raised }),
  },
  battery: {
    lowest: 1,
    read: ({ batteries }) => batteries?.change ?? null,
    written: ({ batteries }, change) => ({ batteries: batteries === null ? null : { ...batteries, change } }),
    change: (raised) => ({ kind: 'hours', of: 'battery', ...raised }),
  },
};

/**
 * The largest number of the policy with which a plan exists, with everything else as it is, in the thousandths that a board
 * file can say.
 */
export async function demandWay(name: DemandName, kit: Kit, effort: Effort): Promise<Ways> {
  const { lowest, read, change } = demands[name];
  const from = read(kit.board.policy);
  const start = from === null ? lowest : Math.ceil((from.numerator * 1000) / from.denominator);
  if (from === null || start <= lowest) return noWays;
  const found = await furthest({
    lowest,
    highest: start - 1,
    kitAt: (thousandths) => at(thousandths, name, kit),
    planAt: async (thousandths) => planOf(await ask(at(thousandths, name, kit), { tiers: [] }, effort)),
  });
  if (found === null || found === 'unknown') return { ways: [], whole: found === null };
  const { step, wiring } = found;
  return {
    ways: [{ change: change({ from, to: factorOfThousandths(step) }), kit: at(step, name, kit), wiring }],
    whole: true,
  };
}

/** The board with another number. */
export const at = (thousandths: number, name: DemandName, kit: Kit): Kit =>
  withPolicy(kit, demands[name].written(kit.board.policy, factorOfThousandths(thousandths)));
