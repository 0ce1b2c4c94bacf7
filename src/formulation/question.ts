import type { Kit } from '../domain/kit.js';
import type { Criterion } from '../domain/aim.js';
import type { Board } from '../domain/board.js';
import type { SupplyId } from '../domain/quantities.js';
import { partOffers, supplyOffers } from '../loadout/offers.js';
import { groundModes } from '../loadout/ground-mode.js';
import { leadKinds } from '../loadout/lead-kinds.js';
import { pedalClasses } from '../loadout/pedal-class.js';
import { router } from '../loadout/routes.js';
import { supplyUses, type SupplyUses } from '../loadout/supply-uses.js';
import type { Bench } from '../loadout/bench.js';
import { nothingToday, type Today } from '../loadout/today.js';

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
};

type QuestionTerms = Pick<Question, 'tiers' | 'partial'> &
  Partial<Pick<Question, 'required' | 'mostExposed' | 'today'>>;

/** The question that a kit asks. */
export function questionOf(kit: Kit, terms: QuestionTerms): Question {
  const today = terms.today ?? nothingToday;
  return { required: new Map(), mostExposed: null, ...terms, today, board: kit.board, ...offeredBy(kit, today) };
}

type Offered = Pick<Question, 'bench' | 'supplies'>;

/** What was worked out of kits while nothing is plugged: many questions are put about one kit. */
const known = new WeakMap<Kit, Offered>();

function offeredBy(kit: Kit, today: Today): Offered {
  const offered = (today === nothingToday ? known.get(kit) : undefined) ?? workOut(kit, today);
  if (today === nothingToday) known.set(kit, offered);
  return offered;
}

function workOut(kit: Kit, today: Today): Offered {
  const { board } = kit;
  const classes = pedalClasses(board.pedals, today);
  const kinds = leadKinds(partOffers(kit));
  const bench = { policy: board.policy, classes, modes: groundModes(classes), kinds, routes: router(kinds) };
  return { bench, supplies: supplyOffers(kit, today).flatMap((offer) => supplyUses(offer, bench) ?? []) };
}
