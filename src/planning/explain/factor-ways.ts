import { audit, isSound } from '../../audit/audit.js';
import type { Policy } from '../../domain/board.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { factorOfThousandths, type Factor } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { ask } from '../asking/ask.js';
import { noWays, type FactorName, type Ways } from './way-out.js';

/** No factor may go below 1. */
const lowest = 1000;

/**
 * The largest factor of the policy with which a plan exists, with everything else as it is, in the thousandths that a board
 * file can say. The larger it is, the fewer plans are possible, so it is sought between one that does and one that does not;
 * each plan on the way also shows how far up it goes itself.
 */
export async function factorWay(factor: FactorName, kit: Kit, effort: Effort): Promise<Ways> {
  const from = factorOf(kit.board.policy, factor);
  const start = Math.ceil((from.numerator * 1000) / from.denominator);
  if (start <= lowest) return noWays;
  const first = await ask(at(lowest, factor, kit), { tiers: [] }, effort);
  if (first.kind !== 'plan') return { ways: [], whole: first.kind === 'impossible' };
  let best = { wiring: first.wiring, thousandths: reachOf(first.wiring, lowest, start - 1, factor, kit) };
  let least = start;
  // A plan's own reach is mostly the answer: one step above it is asked first, then halfway.
  let next = best.thousandths + 1;
  while (next < least) {
    const solved = await ask(at(next, factor, kit), { tiers: [] }, effort);
    if (solved.kind === 'stopped') return { ways: [], whole: false };
    if (solved.kind === 'impossible') least = next;
    else best = { wiring: solved.wiring, thousandths: reachOf(solved.wiring, next, least - 1, factor, kit) };
    next = Math.ceil((best.thousandths + least) / 2);
    if (best.thousandths + 1 >= least) break;
  }
  const changed = at(best.thousandths, factor, kit);
  const to = factorOf(changed.board.policy, factor);
  return {
    ways: [{ change: { kind: 'factor', factor, from, to }, kit: changed, wiring: best.wiring }],
    whole: true,
  };
}

/** The largest factor, between two bounds of which the lower one does, with which the plan breaks no rule. */
function reachOf(wiring: JudgedPlan, lower: number, upper: number, factor: FactorName, kit: Kit): number {
  let [sound, most] = [lower, upper];
  while (sound < most) {
    const middle = Math.ceil((sound + most) / 2);
    const { board, catalogue } = at(middle, factor, kit);
    if (isSound(audit(board, catalogue, wiring.feeds, { partial: false }))) sound = middle;
    else most = middle - 1;
  }
  return sound;
}

const factorOf = ({ headroom, guess }: Policy, factor: FactorName): Factor =>
  factor === 'guess' ? guess : headroom[factor];

/** The board with another factor. */
export function at(thousandths: number, factor: FactorName, kit: Kit): Kit {
  const { headroom } = kit.board.policy;
  const value = factorOfThousandths(thousandths);
  return withPolicy(kit, factor === 'guess' ? { guess: value } : { headroom: { ...headroom, [factor]: value } });
}
