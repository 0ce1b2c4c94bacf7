import { withBoard } from '../../domain/changed-kit.js';
import { ownedOf } from '../../domain/kit.js';
import { audit, isSound } from '../../audit/audit.js';
import type { Pedal } from '../../domain/pedal.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Feed } from '../../domain/plan.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Today } from '../../loadout/today.js';
import { ask } from '../asking/ask.js';
import { freeId, usualPedal, withPedals } from './extra-pedal.js';
import type { Installed } from './installed.js';

/** One 9 V digital pedal that draws as many whole milliamps as can be, and where it would hang. */
export type Largest = {
  readonly milliamps: number;
  readonly feed: Feed;
  /** How many more pedals it exposes; none where it must not. */
  readonly exposes: number;
};

/** Whether the pedal may make others whine. */
export type Noise = 'any' | 'no more';

/** The largest digital pedal that can be added; null when none can, even of 1 mA, `unknown` when the time ran out. */
export async function largestPedal(
  noise: Noise,
  today: Today,
  installed: Installed,
  effort: Effort,
): Promise<Largest | null | 'unknown'> {
  const id = freeId(installed.kit.board, 'one-more');
  const trial = { noise, today, installed, effort, id };
  const first = await planWith(1, trial);
  if (first === 'unknown' || first === null) return first;
  let best = { wiring: first, milliamps: reachOf(first, 1, mostMilliamps(installed), trial) };
  let tooMuch = mostMilliamps(installed) + 1;
  // What a plan bears by itself is mostly the answer: a milliamp more is asked first, then halfway.
  let next = best.milliamps + 1;
  while (best.milliamps + 1 < tooMuch) {
    const wiring = await planWith(next, trial);
    if (wiring === 'unknown') return 'unknown';
    if (wiring === null) tooMuch = next;
    else best = { wiring, milliamps: reachOf(wiring, next, tooMuch - 1, trial) };
    next = Math.ceil((best.milliamps + tooMuch) / 2);
  }
  return largestIn(best, trial);
}

type Trial = {
  readonly noise: Noise;
  readonly today: Today;
  readonly installed: Installed;
  readonly effort: Effort;
  readonly id: string;
};

function largestIn(
  { wiring, milliamps }: { readonly wiring: JudgedPlan; readonly milliamps: number },
  { installed, id }: Trial,
): Largest {
  const feed = wiring.feeds.find(({ pedal }) => pedal === id);
  if (feed === undefined) throw new Error('the plan leaves out the pedal that it was made for');
  return { milliamps, feed, exposes: Math.max(0, wiring.score.exposed - installed.wiring.score.exposed) };
}

const kitWith = (milliamps: number, { installed: { kit }, id }: Trial) =>
  withBoard(kit, withPedals(kit.board, [extra(milliamps, id)]));

const extra = (milliamps: number, id: string): Pedal => usualPedal(id, milliamps * 1000, true);

/** A plan with such a pedal that exposes as few as can be; null when there is none that will do. */
async function planWith(milliamps: number, trial: Trial): Promise<JudgedPlan | null | 'unknown'> {
  const { noise, today, installed, effort } = trial;
  const solved = await ask(kitWith(milliamps, trial), { tiers: ['exposed'], today }, effort);
  if (solved.kind === 'stopped') return 'unknown';
  if (solved.kind === 'impossible') return null;
  const isNoisier = solved.wiring.score.exposed > installed.wiring.score.exposed;
  return noise === 'no more' && isNoisier ? null : solved.wiring;
}

/** The most milliamps, between two bounds of which the lower one does, with which the very same plan breaks no rule. */
function reachOf(wiring: JudgedPlan, lower: number, upper: number, trial: Trial): number {
  let [sound, most] = [lower, Math.max(lower, upper)];
  while (sound < most) {
    const middle = Math.ceil((sound + most) / 2);
    const { board, catalogue } = kitWith(middle, trial);
    const report = audit(board, catalogue, wiring.feeds, { partial: false });
    if (isSound(report)) sound = middle;
    else most = middle - 1;
  }
  return sound;
}

/** No output, nor two joined in parallel, gives more than this. */
function mostMilliamps({ kit }: Installed): number {
  const ratings = [...kit.supplies.values()]
    .filter((supply) => ownedOf(kit, supply) > 0)
    .flatMap(({ banks }) => banks.flatMap(({ settings }) => settings.map(({ rating }) => rating)));
  return Math.floor((2 * Math.max(0, ...ratings)) / 1000);
}
