import { remembered } from '../../../solver/remembered.js';
import { withBoard } from '../../domain/changed-kit.js';
import { ownedOf } from '../../domain/kit.js';
import type { Pedal } from '../../domain/pedal.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Feed } from '../../domain/plan.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Today } from '../../loadout/today.js';
import { ask, planOf } from '../asking/ask.js';
import { furthest, type Furthest, type Scale } from '../asking/furthest.js';
import { freeId, usualPedal, withPedals } from './extra-pedal.js';
import type { Installed } from './installed.js';

/** One 9 V digital pedal that draws as many whole milliamps as can be, and where it would hang. */
export type Largest = {
  readonly milliamps: number;
  readonly feed: Feed;
  /** How many more pedals it exposes; none where it must not. */
  readonly exposes: number;
};

/** The largest digital pedal that can be added, and the largest that makes no other whine. */
export type LargestPedals = {
  /** Null when none can be added, even of 1 mA; `unknown` when the time ran out. */
  readonly largest: Largest | null | 'unknown';
  readonly quietest: Largest | null | 'unknown';
};

export async function largestPedals(today: Today, installed: Installed, effort: Effort): Promise<LargestPedals> {
  const trial = { today, installed, effort, id: freeId(installed.kit.board, 'one-more') };
  const known = new Map<number, Promise<JudgedPlan | null | 'unknown'>>();
  const planWith = (milliamps: number): Promise<JudgedPlan | null | 'unknown'> =>
    remembered(known, milliamps, () => leastNoise(milliamps, trial));
  const largest = await largestOf(planWith, trial);
  const isQuiet = largest === null || largest === 'unknown' || largest.exposes === 0;
  const quietly = async (milliamps: number): Promise<JudgedPlan | null | 'unknown'> => {
    const plan = await planWith(milliamps);
    if (plan === null || plan === 'unknown') return plan;
    return plan.score.exposed > installed.wiring.score.exposed ? null : plan;
  };
  return { largest, quietest: isQuiet ? largest : await largestOf(quietly, trial) };
}

type Trial = {
  readonly today: Today;
  readonly installed: Installed;
  readonly effort: Effort;
  readonly id: string;
};

async function largestOf(planAt: Scale['planAt'], trial: Trial): Promise<Largest | null | 'unknown'> {
  const found = await furthest({
    lowest: 1,
    highest: mostMilliamps(trial.installed),
    kitAt: (milliamps) => kitWith(milliamps, trial),
    planAt,
  });
  return found === null || found === 'unknown' ? found : largestIn(found, trial);
}

function largestIn({ wiring, step }: Furthest, { installed, id }: Trial): Largest {
  const feed = wiring.feeds.find(({ pedal }) => pedal === id);
  if (feed === undefined) throw new Error('the plan leaves out the pedal that it was made for');
  return { milliamps: step, feed, exposes: Math.max(0, wiring.score.exposed - installed.wiring.score.exposed) };
}

const kitWith = (milliamps: number, { installed: { kit }, id }: Trial) =>
  withBoard(kit, withPedals(kit.board, [extra(milliamps, id)]));

const extra = (milliamps: number, id: string): Pedal => usualPedal(id, milliamps * 1000, true);

/** A plan with such a pedal that exposes as few as can be; null when there is none. */
const leastNoise = async (milliamps: number, trial: Trial): Promise<JudgedPlan | null | 'unknown'> =>
  planOf(await ask(kitWith(milliamps, trial), { tiers: ['exposed'], today: trial.today }, trial.effort));

/** No output, nor two joined in parallel, gives more than this. */
function mostMilliamps({ kit }: Installed): number {
  const ratings = [...kit.supplies.values()]
    .filter((supply) => ownedOf(kit, supply) > 0)
    .flatMap(({ banks }) => banks.flatMap(({ settings }) => settings.map(({ rating }) => rating)));
  return Math.floor((2 * Math.max(0, ...ratings)) / 1000);
}
