import { withoutPedals, withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { priceText } from '../../domain/money.js';
import { minorUnits } from '../../domain/quantities.js';
import { ask } from '../asking/ask.js';
import { atMost } from '../asking/within.js';
import type { Effort } from '../../formulation/optimiser.js';
import { limitedBy, limitNames, type LimitName } from '../limit-names.js';
import type { Reason } from '../answer.js';
import { feedersOf } from '../refusals/feeders.js';
import { refusalsOf } from '../refusals/refusals.js';
import { conflictOf } from '../conflict/conflict.js';
import { unownedReason } from './unowned.js';

/** How long a smallest set of pedals is sought where a limit says already what is in the way, in milliseconds. */
const patienceMs = 4_000;

/**
 * Why a board cannot be powered: leads of today's wiring that nobody owns, the pedals that nothing can feed, and for the others
 * the limits of the policy that are too tight and a smallest set of pedals that cannot be fed together. `pedals only` asks for
 * the pedals that nothing can feed alone.
 */
export async function reasonsOf(
  kit: Kit,
  effort: Effort,
  scope: 'all' | 'pedals only' = 'all',
): Promise<readonly Reason[]> {
  const feeders = feedersOf(kit);
  const unfed = kit.board.pedals.filter(({ id }) => (feeders.get(id) ?? []).length === 0);
  const pedals = unfed.map((pedal): Reason => ({
    kind: 'pedal',
    pedal: pedal.id,
    refusals: refusalsOf(pedal, kit),
  }));
  if (scope === 'pedals only') return pedals;
  const unowned = await unownedReason(kit, effort);
  const first = [...(unowned === null ? [] : [unowned]), ...pedals];
  if (unfed.length === kit.board.pedals.length) return first;
  const rest = withoutPedals(
    unfed.map(({ id }) => id),
    kit,
  );
  const tight = await tightLimits(rest, effort);
  const patience = tight.length > 0 ? patienceMs : Infinity;
  const conflict = await atMost(patience, effort, (limited) => togetherReason(rest, limited));
  // One pedal alone is no conflict where a limit says all there is to say.
  const explained = conflict === null || (tight.length > 0 && conflict.pedals.length === 1);
  return [...first, ...tight, ...(explained ? [] : [conflict])];
}

/** A smallest set of pedals that cannot all be powered; null when all can, or when the time runs out first. */
async function togetherReason(kit: Kit, effort: Effort): Promise<Extract<Reason, { kind: 'together' }> | null> {
  const conflict = await conflictOf(kit, effort, { factsStand: true });
  if (conflict === null || conflict.size === 'open') return null;
  const { pedals, size } = conflict;
  const message =
    pedals.length === 1
      ? 'this pedal can only be fed in company, and nothing on the board keeps it company'
      : `each of these ${pedals.length} pedals can be fed, and all but any one of them, but not all at once`;
  return { kind: 'together', pedals, smallest: size === 'smallest', message };
}

/** The limits that are too tight, and the least that would do in place of each. */
async function tightLimits(kit: Kit, effort: Effort): Promise<readonly Reason[]> {
  const { board } = kit;
  const reasons: Reason[] = [];
  for (const limit of limitNames) {
    const allowed = board.policy[limit];
    if (allowed === null) continue;
    // With the other limits as they are; where these are too tight themselves, without them.
    const alone = await leastOf(limit, [limit], kit, effort);
    const least = alone ?? (await leastOf(limit, limitNames, kit, effort));
    if (least === null || least.needed <= allowed) continue;
    const { needed, wiring } = least;
    const message = limitMessage(limit, allowed, needed, board);
    const isEnough = alone !== null && limit === 'budget';
    reasons.push({ kind: 'limit', limit, allowed, needed, message, ...(isEnough && { cheapest: wiring }) });
  }
  return reasons;
}

/** The least that a plan needs of what a limit caps when some limits are lifted; null when it is impossible even so. */
async function leastOf(
  limit: LimitName,
  lifted: readonly LimitName[],
  kit: Kit,
  effort: Effort,
): Promise<{ readonly needed: number; readonly wiring: JudgedPlan } | null> {
  const tier = limitedBy[limit];
  const free = withPolicy(kit, Object.fromEntries(lifted.map((each) => [each, null])));
  const outcome = await ask(free, { tiers: [tier] }, effort);
  const needed = outcome.kind === 'plan' ? outcome.values.get(tier) : undefined;
  return outcome.kind === 'plan' && needed !== undefined ? { needed, wiring: outcome.wiring } : null;
}

function limitMessage(limit: LimitName, allowed: number, needed: number, board: Board): string {
  if (limit === 'budget') {
    const money = (amount: number): string => priceText(minorUnits(amount), board);
    return `the budget is ${money(allowed)}; powering every pedal takes at least ${money(needed)}`;
  }
  const what = limit === 'bricks' ? 'supplies in use' : 'mains sockets';
  return `${what} are limited to ${allowed}; powering every pedal takes at least ${needed}`;
}
