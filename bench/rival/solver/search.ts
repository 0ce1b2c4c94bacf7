import type { Patience } from './ask.js';
import { floorOf, type Floor } from './bound.js';
import { compact } from './compact.js';
import type { Engines } from '../engines/engines.js';
import type { CompactStopped } from './outcome.js';
import type { ProgramPoint } from '../../../solver/program.js';
import { webTiming, type Timing } from '../../../solver/timing.js';
import type { Restatement } from './restatement.js';
import type { CompactProgress, Standing } from './standing.js';
import { tightenTo } from './tighten.js';

export type ProveOptions = {
  readonly engines: Engines;
  /** How many milliseconds are left for the whole search; asked before every step. Infinity is no limit. */
  readonly remainingMs: () => number;
  readonly signal?: AbortSignal;
  /** How answers are waited for; by web standards when left out. */
  readonly timing?: Timing | undefined;
  /** A solution to begin with; it is checked, and passed over when it is none. */
  readonly known?: ProgramPoint;
  /** A bound that the caller has proven; default the objective's constant. */
  readonly lowerBound?: number;
  /** Called with every better solution and every better bound. */
  readonly onProgress?: (progress: CompactProgress) => void;
};

/** One search for the optimum of one objective. */
export type CompactSearch = {
  readonly options: ProveOptions;
  readonly standing: Standing;
  /** The program as the engines get it. */
  readonly whole: Restatement;
  /** The best multipliers' floor under the whole program. */
  readonly floor: Floor;
};

/** A day: timers take no more than 24 of them. */
const LONGEST_MS = 86_400_000;

/** What is left of time, for one question; null when the search is over. */
export function limitsOf({ remainingMs, signal, timing = webTiming }: ProveOptions): Patience | null {
  const timeoutMs = Math.min(Math.floor(remainingMs()), LONGEST_MS);
  if (signal?.aborted || timeoutMs <= 0) return null;
  return { timeoutMs, later: timing.later, ...(signal === undefined ? {} : { signal }) };
}

/** The part of the program in which every solution worth at most `target` lies; null when there can be no such solution. */
export function partWorth(target: number, { whole, floor }: CompactSearch): Restatement | null {
  const compacted = compact(tightenTo(target, whole.program, whole.objective, floor), whole.objective);
  if (compacted.kind === 'broken') return null;
  const { restated } = compacted;
  return { ...restated, restore: (point) => whole.restore(restated.restore(point)) };
}

/** The floor of no multipliers: what the objective's own coefficients say. */
export const plainFloor = ({ program, objective }: Restatement): Floor => floorOf(program, objective, []);

/** The end of a search that has shown nothing; `timedOut` when an engine says that its time ran out. */
export function stopped(
  { options, standing }: Pick<CompactSearch, 'options' | 'standing'>,
  timedOut: boolean,
): CompactStopped {
  const { incumbent, bound } = standing;
  const inHand = { point: incumbent?.point ?? null, value: incumbent?.value ?? null, bound };
  if (options.signal?.aborted) return { kind: 'stopped', reason: 'cancelled', ...inHand };
  const overtime = timedOut || limitsOf(options) === null;
  return { kind: 'stopped', reason: overtime ? 'time' : 'unconfirmed', ...inHand };
}
