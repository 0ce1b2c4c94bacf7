import { cheapestTiers, tierValue, type ChoosingAim } from '../../domain/aim.js';
import type { Policy } from '../../domain/board.js';
import { withPolicy } from '../../domain/changed-kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Effort } from '../../formulation/optimiser.js';
import { ask } from '../asking/ask.js';
import { atMost } from '../asking/within.js';
import type { ChooseJob } from '../choose/answer-to.js';
import { Boxes, everyPoint, everything, isNoWorse, type Box, type BoxAnswer, type Figures } from './box-search.js';
import type { Unbeaten, UnbeatenPoint } from './comparison.js';

type UnbeatenJob = Pick<ChooseJob, 'kit' | 'effort'> & {
  readonly aim: ChoosingAim;
  /** How long each question may take. */
  readonly patience: Patience;
  /** Called with all points that are proven by now, whenever a choice has been sought. */
  readonly onProven: (points: readonly UnbeatenPoint[]) => void;
};

/** Milliseconds for each question about a choice that is shown in any case, and about one of the others; Infinity is no limit. */
export type Patience = { readonly choiceMs: number; readonly otherMs: number };

/** What nothing beats, and figures that no plan is below. */
export type UnbeatenFound = Unbeaten & { readonly least: Figures };

/**
 * All plans that no other beats on money, exposed pedals and supplies in use at once, from a proven best one on: first the cheapest
 * of the quietest, then the cheapest of those with the fewest supplies, then the others.
 * @throws Error when a plan fails its audit: a defect of boardfeed, never of the input.
 */
export async function unbeatenPlans(best: JudgedPlan, job: UnbeatenJob): Promise<UnbeatenFound> {
  const { aim, kit, onProven } = job;
  const { policy } = kit.board;
  const least = { exposed: await leastOf('exposed', best, job), bricks: await leastOf('bricks', best, job) };
  const found: JudgedPlan[] = [];
  let ms = job.patience.choiceMs;
  const solve = async (box: Box): Promise<BoxAnswer<UnbeatenPoint>> =>
    atMost(ms, job.effort, async (effort) => cheapestIn(box, { ...job, effort }, found));
  const leastMoney = (box: Box): number => leastMoneyIn(box, best, aim, policy);
  const boxes = new Boxes({ solve, least, known: [pointOf(best, true)], leastMoney });
  for (const box of [
    { exposed: least.exposed, bricks: Infinity },
    { exposed: Infinity, bricks: least.bricks },
    everything,
  ]) {
    await boxes.answerTo(box);
    onProven(boxes.points);
  }
  ms = job.patience.otherMs;
  const complete = await everyPoint(boxes);
  const points = complete ? boxes.points : withBestFound(boxes.points, found);
  const first = await boxes.answerTo(everything);
  const money = first.kind === 'point' ? first.point.money : Math.max(0, leastMoney(everything));
  return { points: [...points].sort(cheapestFirst), complete, least: { ...least, money } };
}

/** A plan by the figures that plans are held against each other by. */
export const pointOf = (wiring: JudgedPlan, isProven: boolean): UnbeatenPoint => {
  const { money, exposed, bricks } = wiring.score;
  return { money, exposed, bricks, wiring, isProven };
};

const cheapestFirst = (one: UnbeatenPoint, other: UnbeatenPoint): number =>
  one.money - other.money || one.exposed - other.exposed || one.bricks - other.bricks;

/** What no plan has less of; what the best plan has is not asked about where nothing can be less. */
async function leastOf(
  figure: 'exposed' | 'bricks',
  { score }: JudgedPlan,
  { aim, kit, effort, patience }: UnbeatenJob,
): Promise<number> {
  const isFirst = (figure === 'exposed' && aim === 'quiet') || (figure === 'bricks' && aim === 'bricks');
  if (isFirst || score[figure] === 0) return score[figure];
  const work = async (limited: Effort) => ask(kit, { tiers: [figure] }, limited);
  const outcome = await atMost(patience.choiceMs, effort, work);
  if (outcome.kind === 'plan') return outcome.wiring.score[figure];
  if (outcome.kind === 'impossible') throw new Error('a plan that exists was not found when it was sought again');
  return outcome.open?.bound ?? 0;
}

/** The cheapest plan of a box; what is in hand when the time runs out goes to those found. */
async function cheapestIn(
  { exposed, bricks }: Box,
  { kit, effort }: UnbeatenJob,
  found: JudgedPlan[],
): Promise<BoxAnswer<UnbeatenPoint>> {
  const most = Math.min(bricks, kit.board.policy.bricks ?? Infinity);
  const limited = most === Infinity ? kit : withPolicy(kit, { bricks: most });
  const limit = exposed === Infinity ? {} : { mostExposed: exposed };
  const outcome = await ask(limited, { tiers: cheapestTiers, ...limit }, effort);
  if (outcome.kind === 'impossible') return { kind: 'none' };
  if (outcome.kind === 'plan') return { kind: 'point', point: pointOf(outcome.wiring, true) };
  found.push(...outcome.plans);
  return { kind: 'stopped' };
}

/**
 * What every plan of a box costs at the least, as follows from what is best under the aim: all that its tier of money counts
 * beside money is no more than the box allows.
 */
function leastMoneyIn({ exposed, bricks }: Box, best: JudgedPlan, aim: ChoosingAim, policy: Policy): number {
  const times = (price: number, count: number): number => (price === 0 ? 0 : price * count);
  const { score } = best;
  const counted = tierValue(aim === 'quiet' ? 'outlay' : 'cost', score, policy) - times(policy.supplyPrice, bricks);
  switch (aim) {
    case 'cost':
      return counted - times(policy.noisePrice, exposed);
    case 'bricks':
      return bricks <= score.bricks ? counted - times(policy.noisePrice, exposed) : 0;
    case 'quiet':
      return exposed <= score.exposed ? counted : 0;
  }
}

/** The proven ones, and of those that were found besides the ones that nothing known beats. */
function withBestFound(proven: readonly UnbeatenPoint[], found: readonly JudgedPlan[]): readonly UnbeatenPoint[] {
  return found.reduce<readonly UnbeatenPoint[]>((points, wiring) => {
    const point = pointOf(wiring, false);
    if (points.some((other) => isNoWorse(other, point))) return points;
    return [...points.filter((other) => !isNoWorse(point, other)), point];
  }, proven);
}
