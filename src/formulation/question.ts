import type { Kit } from '../domain/kit.js';
import type { Criterion } from '../domain/aim.js';
import type { Board } from '../domain/board.js';
import type { SupplyId } from '../domain/quantities.js';
import type { SupplyUses } from '../loadout/supply-uses.js';
import type { Bench } from '../loadout/bench.js';
import { nothingToday, type Today } from '../loadout/today.js';
import { Tables } from './tables.js';

/** What is asked: the board with its pedals and leads, what there is to power it with, and what is best. */
export type Question = {
  readonly board: Board;
  readonly bench: Bench;
  /** What each supply that can be had, and can feed anything, can do for the board. */
  readonly supplies: readonly SupplyUses[];
  /** What is minimised, the most important first; none when any plan will do. */
  readonly tiers: readonly Criterion[];
  /** Pedals may stay unpowered. */
  readonly partial: boolean;
  /** Of a partial plan: how many pedals of a class must be powered all the same. */
  readonly required: ReadonlyMap<number, number>;
  /** The most exposed pedals that a plan may have; null is no limit. */
  readonly mostExposed: number | null;
  /** How the board is plugged now; of no account unless a tier counts moves. */
  readonly today: Today;
  /** A supply that a pedal is kept to (`pinnedQuestion`): none other stands in for it. */
  readonly spared?: SupplyId;
  /** Ways were struck out for single pedals (`divide.ts`): no supply stands in for another one. */
  readonly narrowed?: boolean;
  /** The tiers' values of a plan in hand: only better ones are sought, and where there is none, none is found. */
  readonly beating?: ReadonlyMap<Criterion, number>;
};

/**
 * How many pedals of a class a plan may leave without power; of inlets, as many as need not be fed whatever units are in use,
 * which is none that must stay where it is.
 */
export function mostLeftOut({ bench, partial, required }: Question, pedal: number): number {
  const { members = [], berth = null, pinned = false, inlet = null } = bench.classes[pedal] ?? {};
  if ((inlet === null && !partial) || (pinned && berth !== null)) return 0;
  return members.length - (required.get(pedal) ?? 0);
}

type QuestionTerms = Pick<Question, 'tiers' | 'partial'> &
  Partial<Pick<Question, 'required' | 'mostExposed' | 'today'>>;

/** The question that a kit asks, by what is worked out of it already. */
export function questionOf(kit: Kit, terms: QuestionTerms, tables: Tables = new Tables()): Question {
  const today = terms.today ?? nothingToday;
  return { required: new Map(), mostExposed: null, ...terms, today, board: kit.board, ...tables.offeredBy(kit, today) };
}
