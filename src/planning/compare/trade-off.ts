import type { ChoosingTier } from '../../domain/aim.js';
import { pedalTiers } from '../../domain/pedal-tier.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { TradeOff, TradeOffPoint } from './comparison.js';
import { ask, type SolverAnswer } from '../asking/ask.js';
import { withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';

type Against = TradeOff['against'];

const cheapest: Readonly<Record<Against, readonly ChoosingTier[]>> = {
  exposed: ['money', 'exposed', 'bricks', 'parts', ...pedalTiers],
  bricks: ['money', 'bricks', 'exposed', 'parts', ...pedalTiers],
};

/**
 * What money buys in quiet and in fewer supplies, for a board that a plan exists for.
 * @throws Error when a plan fails its audit: a defect of boardfeed, never of the input.
 */
export async function tradeOffs(plan: JudgedPlan, kit: Kit, effort: Effort): Promise<readonly TradeOff[]> {
  const free = plan.score.money === 0 ? [plan] : [];
  const exposed = await tradeOff('exposed', free, kit, effort);
  const [first] = exposed.points;
  const bricks = await tradeOff('bricks', first === undefined ? free : [...free, first.wiring], kit, effort);
  return [exposed, bricks];
}

/**
 * Every pair of money and exposed pedals, or money and bricks, that nothing else beats: from the cheapest plan on again and
 * again the cheapest with fewer of the other, until there is none ("On a bicriterion formulation of the problems of
 * integrated system identification and system optimization", 1971: one of the two becomes a limit). Each plan has the
 * least of the other figure among the cheapest ones, so that none is beaten, and the limit falls by no more than one below
 * what is there, so that none is missed. Where it has to stop is asked before, for that is told far sooner than that money
 * buys nothing any more. Of `inHand` it is known that nothing is cheaper.
 */
async function tradeOff(against: Against, inHand: readonly JudgedPlan[], kit: Kit, effort: Effort): Promise<TradeOff> {
  const tiers = cheapest[against];
  const fewest = await ask(kit, { tiers: [against] }, effort);
  const least = fewest.kind === 'plan' ? fewest.wiring.score[against] : 0;
  const known = inHand.find(({ score }) => score[against] <= least);
  let proven: Found = known === undefined ? await ask(kit, { tiers }, effort) : { kind: 'plan', wiring: known };
  if (proven.kind === 'impossible') throw new Error('a plan that exists was not found when it was sought again');
  const points: TradeOffPoint[] = [];
  while (proven.kind === 'plan') {
    const { wiring }: { readonly wiring: JudgedPlan } = proven;
    const amount: number = wiring.score[against];
    points.push({ money: wiring.score.money, amount, wiring });
    if (amount <= least) return { against, points, complete: true };
    proven =
      against === 'exposed'
        ? await ask(kit, { tiers, mostExposed: amount - 1 }, effort)
        : await ask(withPolicy(kit, { bricks: amount - 1 }), { tiers }, effort);
  }
  return { against, points, complete: proven.kind === 'impossible' };
}

/** A plan that is known, or what the solver says. */
type Found = Pick<Extract<SolverAnswer, { kind: 'plan' }>, 'kind' | 'wiring'> | Exclude<SolverAnswer, { kind: 'plan' }>;
