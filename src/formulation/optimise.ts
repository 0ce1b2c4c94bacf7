import { webTiming } from '../../solver/timing.js';
import { compactSearch } from './compact-search.js';
import { loadoutSearch } from './loadout-search.js';
import { hasEnded, type Effort, type Optimiser, type SearchOutcome, type Progress } from './optimiser.js';
import type { Question } from './question.js';

/** How long the search by loadouts has to itself before the compact program is asked as well. */
const HEAD_START_MS = 1_500;
/** What loadouts have not proven by then they hardly ever prove soon; the cores are worth more to the engines. */
const LOADOUTS_MS = 20_000;

/**
 * The best plan by the method that is asked for. By loadouts it is proven without trust in any engine; a search that lasts
 * is joined by the compact program, on which engines have to agree, and whichever is first to prove its answer ends both;
 * after a while the engines go on alone. Without engines loadouts go on until they are done, stuck or out of time.
 * A proof that is to be written down waits for the loadouts.
 */
export const optimise: Optimiser = async (question, effort) => {
  if (effort.method === 'compact') return compactSearch(question, effort);
  if (effort.proof !== true) return effort.engines === null ? loadoutSearch(question, effort) : race(question, effort);
  const outcome = await loadoutSearch(question, effort);
  return isProven(outcome) || hasEnded(effort) ? outcome : together(outcome, await compactSearch(question, effort));
};

/** Whether an answer is proven, be it that there is none. */
const isProven = ({ kind }: SearchOutcome): boolean => kind !== 'stopped';

async function race(question: Question, effort: Effort): Promise<SearchOutcome> {
  const enough = new AbortController();
  const signal = effort.signal === undefined ? enough.signal : AbortSignal.any([effort.signal, enough.signal]);
  const shared = { ...effort, signal, onProgress: mergedProgress(effort) };
  const tired = new AbortController();
  const { later } = effort.timing ?? webTiming;
  void later(LOADOUTS_MS, signal).then(() => {
    tired.abort();
  });
  const first = loadoutSearch(question, { ...shared, signal: AbortSignal.any([signal, tired.signal]) });
  const alone = new AbortController();
  const second = later(HEAD_START_MS, AbortSignal.any([signal, alone.signal])).then(async () =>
    hasEnded({ ...effort, signal }) ? null : compactSearch(question, shared),
  );
  const lead = await Promise.race([first, second]);
  if (lead === null || !isProven(lead)) {
    // Whoever gave up leaves it to the other; loadouts that give up early do not make it wait.
    alone.abort();
    const [one, two] = await Promise.all([first, second]);
    enough.abort();
    return two === null ? one : together(one, two);
  }
  enough.abort();
  await Promise.all([first, second]);
  return lead;
}

/** The better of two outcomes: a proven one, or what both have in hand. */
function together(one: SearchOutcome, two: SearchOutcome): SearchOutcome {
  if (isProven(one) || two.kind !== 'stopped') return isProven(one) ? one : two;
  if (one.kind !== 'stopped') return one;
  const candidates = [...one.candidates, ...two.candidates];
  const ahead = one.settled.size > two.settled.size ? one : two.settled.size > one.settled.size ? two : null;
  if (ahead !== null) return { ...ahead, candidates };
  const bounds = [one.open?.bound, two.open?.bound].flatMap((bound) => bound ?? []);
  const open = one.open ?? two.open;
  return {
    ...two,
    candidates,
    open: open === null ? null : { ...open, bound: bounds.length === 0 ? null : Math.max(...bounds) },
  };
}

/** Progress of both as that of one: of the tier that is being worked on the best value and the best bound. */
function mergedProgress({ onProgress }: Effort): ((progress: Progress) => void) | undefined {
  if (onProgress === undefined) return undefined;
  let known: Progress | null = null;
  return (news) => {
    known = known?.tier === news.tier ? bestOf(known, news) : news;
    onProgress(known);
  };
}

const bestOf = (one: Progress, two: Progress): Progress => ({
  tier: two.tier,
  value: least(one.value, two.value),
  bound: greatest(one.bound, two.bound),
});

const least = (one: number | null, two: number | null): number | null =>
  one === null ? two : two === null ? one : Math.min(one, two);

const greatest = (one: number | null, two: number | null): number | null =>
  one === null ? two : two === null ? one : Math.max(one, two);
