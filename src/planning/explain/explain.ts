import type { Kit } from '../../domain/kit.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { PedalId } from '../../domain/quantities.js';
import { hasEnded, type Effort } from '../../formulation/optimiser.js';
import { nothingToday } from '../../loadout/today.js';
import { answerTo } from '../choose/answer-to.js';
import { beyondThePlan, effortOf, type SearchOptions } from '../asking/search-options.js';
import { ask } from '../asking/ask.js';
import { within } from '../asking/within.js';
import { argumentFor, type Argument } from './argument.js';
import { conflictOf, type Conflict } from '../conflict/conflict.js';
import { withoutPedals } from '../../domain/changed-kit.js';
import { cheaperPlan, forcedPurchases, type Cheaper, type Forced } from './purchases.js';
import { seatOf, type SeatExplanation } from './seats.js';
import type { WayOut } from './way-out.js';
import { waysOut } from './ways-out.js';

export type ExplainOptions = SearchOptions & {
  /** What is best; `cost` when left out. */
  readonly aim?: ChoosingAim;
  /** The pedal whose place is to be explained; the purchase is when left out. */
  readonly pedal?: PedalId;
  /** How long a set of pedals and facts is made smaller, in milliseconds; what is left then is a conflict still. */
  readonly shrinkMs?: number;
};

export type Explanation =
  /** No plan exists. */
  | {
      readonly kind: 'impossible';
      readonly aim: ChoosingAim;
      /** At least one, unless the time ran out; no two share a pedal. */
      readonly conflicts: readonly Argument[];
      readonly ways: readonly WayOut[];
      /** Whether everything was settled that is asked about. */
      readonly whole: boolean;
    }
  /** The best plan, proven, and why it is as it is. */
  | {
      readonly kind: 'plan';
      readonly aim: ChoosingAim;
      readonly wiring: JudgedPlan;
      /** Of a question about a pedal. */
      readonly seat: SeatExplanation | null;
      /** What is bought, and why; empty in a question about a pedal. */
      readonly forced: readonly Forced[];
      readonly cheaper: Cheaper | null;
      readonly whole: boolean;
      /** Whether the caller's patience ended before it was done; what is open otherwise would have taken too long. */
      readonly ended: boolean;
    }
  /** The time ran out before there was a proven plan to explain. */
  | { readonly kind: 'stopped'; readonly aim: ChoosingAim };

/** The most conflicts that are looked for. */
const mostConflicts = 5;
const usualShrinkMs = 4_000;
/** How long the numbers for one conflict are worked out, in milliseconds; what is open then is left out. */
const argumentMs = 3_000;
/** How long is spent on what each purchase is for, in milliseconds. */
const purchasesMs = 10_000;

/**
 * Why no plan exists, and what would help; or why the best plan buys what it buys; or why it has a pedal where it has it. Every
 * claim is a question to the same program that makes the plans, and every plan that it rests on is audited. Prints nothing and
 * never ends the process.
 * @throws RangeError when the board has no such pedal.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function explain(kit: Kit, options: ExplainOptions = {}): Promise<Explanation> {
  const { aim = 'cost', pedal } = options;
  if (pedal !== undefined && !kit.board.pedals.some(({ id }) => id === pedal))
    throw new RangeError(`the board has no pedal "${pedal}"`);
  const effort = effortOf(options);
  const quiet = { ...effort, onProgress: undefined };
  // Any plan will do to see whether there is one: that is told far sooner than the best.
  const any = await ask(kit, { tiers: [] }, quiet);
  if (any.kind === 'stopped') return { kind: 'stopped', aim };
  return any.kind === 'impossible'
    ? await whyImpossible(aim, kit, quiet, options.shrinkMs ?? usualShrinkMs)
    : await whySo(aim, pedal ?? null, kit, effort);
}

async function whyImpossible(aim: ChoosingAim, kit: Kit, effort: Effort, shrinkMs: number): Promise<Explanation> {
  const conflicts = await within(shrinkMs, effort, (limited) => allConflicts(kit, limited));
  const arguments_: Argument[] = [];
  for (const conflict of conflicts)
    arguments_.push(await within(argumentMs, effort, (limited) => argumentFor(conflict, kit, limited)));
  const { ways, whole } = await waysOut(conflicts, kit, effort);
  return { kind: 'impossible', aim, conflicts: arguments_, ways, whole: whole && conflicts.length > 0 };
}

/** Conflicts of which no two share a pedal, as far as they are found in time. */
async function allConflicts(kit: Kit, effort: Effort): Promise<readonly Conflict[]> {
  const conflicts: Conflict[] = [];
  let rest = kit;
  while (conflicts.length < mostConflicts && rest.board.pedals.length > 0) {
    const conflict = await conflictOf(rest, effort, { isImpossible: conflicts.length === 0 });
    if (conflict === null) break;
    conflicts.push(conflict);
    rest = withoutPedals(conflict.pedals, rest);
    if (hasEnded(effort)) break;
  }
  return conflicts;
}

async function whySo(aim: ChoosingAim, pedal: PedalId | null, kit: Kit, effort: Effort): Promise<Explanation> {
  const answer = await answerTo({ kit, aim, partial: false, today: nothingToday, effort });
  if (answer.kind !== 'plan' || answer.gap !== null) return { kind: 'stopped', aim };
  const { wiring } = answer;
  const quiet = beyondThePlan(effort);
  if (pedal !== null) {
    const { seat, whole } = await seatOf(pedal, wiring, aim, kit, quiet);
    return { kind: 'plan', aim, wiring, seat, forced: [], cheaper: null, whole, ended: hasEnded(effort) };
  }
  const cheaper = await cheaperPlan(wiring, aim, kit, quiet);
  const forced = await within(purchasesMs, quiet, (limited) => forcedPurchases(wiring, aim, kit, limited));
  const whole = forced.whole && cheaper.whole;
  const ended = hasEnded(effort);
  return { kind: 'plan', aim, wiring, seat: null, forced: forced.value, cheaper: cheaper.value, whole, ended };
}
