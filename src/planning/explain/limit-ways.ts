import { minorUnits } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { withPolicy } from '../../domain/changed-kit.js';
import { criterionValue } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import { ask } from '../asking/ask.js';
import { limitedBy, type LimitName } from '../limit-names.js';
import { notFound, noWays, type Change, type Raised, type Ways } from './way-out.js';

/** The least that would do in place of one limit, with everything else as it is. */
export async function limitWay(limit: LimitName, kit: Kit, effort: Effort): Promise<Ways> {
  const from = kit.board.policy[limit];
  if (from === null) return noWays;
  const lifted = withPolicy(kit, { [limit]: null });
  const tier = limitedBy[limit];
  const solved = await ask(lifted, { tiers: [tier] }, effort);
  if (solved.kind !== 'plan') return notFound(solved);
  const to = minorUnits(criterionValue(tier, solved.wiring, kit.board.policy));
  const change: Change = limit === 'budget' ? { kind: limit, from: minorUnits(from), to } : { kind: limit, from, to };
  const raised = withPolicy(kit, { [limit]: to });
  return {
    ways: [{ change, kit: raised, wiring: solved.wiring, ...(tier === 'money' && { cheapest: true }) }],
    whole: true,
  };
}

/** Where several limits have to be raised at once: the least money, and then the fewest supplies at that. */
export async function limitsWay(kit: Kit, effort: Effort): Promise<Ways> {
  const { budget, bricks, sockets } = kit.board.policy;
  const lifted = withPolicy(kit, { budget: null, bricks: null, sockets: null });
  const solved = await ask(lifted, { tiers: ['money', 'bricks'] }, effort);
  if (solved.kind !== 'plan') return notFound(solved);
  const { score, sockets: taken } = solved.wiring;
  const raise = <Value extends number>(from: Value | null, to: Value): Raised<Value> | null =>
    from === null || to <= from ? null : { from, to };
  const change: Change = {
    kind: 'limits',
    budget: raise(budget, score.money),
    bricks: raise(bricks, score.bricks),
    sockets: raise(sockets, taken),
  };
  const raised = withPolicy(kit, {
    ...(change.budget !== null && { budget: change.budget.to }),
    ...(change.bricks !== null && { bricks: change.bricks.to }),
    ...(change.sockets !== null && { sockets: change.sockets.to }),
  });
  return { ways: [{ change, kit: raised, wiring: solved.wiring, cheapest: true }], whole: true };
}

/** The board with some of its policy otherwise. */
