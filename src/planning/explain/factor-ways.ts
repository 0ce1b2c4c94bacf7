import type { Policy } from '../../domain/board.js';
import { factorOfThousandths, type Factor } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { ask, planOf } from '../asking/ask.js';
import { furthest } from '../asking/furthest.js';
import { noWays, type FactorName, type Ways } from './way-out.js';

/** No factor may go below 1. */
const lowest = 1000;

/**
 * The largest factor of the policy with which a plan exists, with everything else as it is, in the thousandths that a board
 * file can say. The larger it is, the fewer plans are possible.
 */
export async function factorWay(factor: FactorName, kit: Kit, effort: Effort): Promise<Ways> {
  const from = factorOf(kit.board.policy, factor);
  const start = Math.ceil((from.numerator * 1000) / from.denominator);
  if (start <= lowest) return noWays;
  const found = await furthest({
    lowest,
    highest: start - 1,
    kitAt: (thousandths) => at(thousandths, factor, kit),
    planAt: async (thousandths) => planOf(await ask(at(thousandths, factor, kit), { tiers: [] }, effort)),
  });
  if (found === null || found === 'unknown') return { ways: [], whole: found === null };
  const changed = at(found.step, factor, kit);
  const to = factorOf(changed.board.policy, factor);
  return {
    ways: [{ change: { kind: 'factor', factor, from, to }, kit: changed, wiring: found.wiring }],
    whole: true,
  };
}

const factorOf = ({ headroom, guess }: Policy, factor: FactorName): Factor =>
  factor === 'guess' ? guess : headroom[factor];

/** The board with another factor. */
export function at(thousandths: number, factor: FactorName, kit: Kit): Kit {
  const { headroom } = kit.board.policy;
  const value = factorOfThousandths(thousandths);
  return withPolicy(kit, factor === 'guess' ? { guess: value } : { headroom: { ...headroom, [factor]: value } });
}
