import { audit } from '../../audit/audit.js';
import type { Feed } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { solve, type Situation } from '../solve.js';
import { factsOf, keyOf, relaxed, type Fact } from './facts.js';

/** One of the things that may not all be had at once: a pedal's power, or a fact. */
export type Demand =
  { readonly kind: 'pedal'; readonly pedal: PedalId } | { readonly kind: 'fact'; readonly fact: Fact };

/** A plan that meets some demands, and perhaps others of its own accord. */
export type Plan = {
  readonly powers: ReadonlySet<PedalId>;
  readonly meets: (demand: Demand) => boolean;
};

/** `any` plan, or one that powers the most pedals. */
type Wish = 'any' | 'largest';

/** Asks again and again which demands can be met together. Keeps every plan that it finds. */
export class Inquiry {
  readonly plans: Plan[] = [];
  readonly facts: readonly Fact[];
  readonly pedals: readonly PedalId[];
  readonly #situation: Situation;
  readonly #effort: Effort;

  constructor(situation: Situation, effort: Effort) {
    this.#situation = situation;
    this.#effort = effort;
    this.facts = factsOf(situation);
    this.pedals = situation.board.pedals.map(({ id }) => id);
  }

  /** A plan that meets all of these, whatever becomes of the others; `null` when there is none. */
  async planFor(demands: readonly Demand[], wish: Wish = 'any'): Promise<Plan | null | 'unknown'> {
    const required = new Set(demands.flatMap((each) => (each.kind === 'pedal' ? [each.pedal] : [])));
    const held = new Set(demands.flatMap((each) => (each.kind === 'fact' ? [keyOf(each.fact)] : [])));
    const lifted = this.facts.filter((fact) => !held.has(keyOf(fact)));
    const tiers = wish === 'any' ? [] : (['unpowered'] as const);
    const solved = await solve(relaxed(this.#situation, lifted), { tiers, required }, this.#effort);
    if (solved.kind === 'stopped') return 'unknown';
    if (solved.kind === 'impossible') return null;
    const plan = this.#planOf(solved.wiring.feeds, held);
    this.plans.push(plan);
    return plan;
  }

  #planOf(feeds: readonly Feed[], held: ReadonlySet<string>): Plan {
    const powers = new Set(feeds.map(({ pedal }) => pedal));
    const known = new Map<string, boolean>([...held].map((key) => [key, true]));
    return {
      powers,
      meets: (demand) => {
        if (demand.kind === 'pedal') return powers.has(demand.pedal);
        const key = keyOf(demand.fact);
        const meets = known.get(key) ?? this.#keeps(feeds, demand.fact);
        known.set(key, meets);
        return meets;
      },
    };
  }

  /** Whether feeds that were planned without regard to a fact are in keeping with it all the same. */
  #keeps(feeds: readonly Feed[], fact: Fact): boolean {
    const others = this.facts.filter((each) => each !== fact);
    const { board, catalogue } = relaxed(this.#situation, others);
    const { violations, malformed } = audit(board, catalogue, feeds, { partial: true });
    return violations.length === 0 && malformed.length === 0;
  }
}
