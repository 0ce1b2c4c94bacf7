import { audit } from '../../audit/audit.js';
import { everyFeed, type Feed } from '../../domain/plan.js';
import type { PedalId } from '../../domain/quantities.js';
import { hasEnded, type Effort } from '../../formulation/optimiser.js';
import type { Pin } from '../../formulation/pinned-question.js';
import { withThings } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { ask } from '../asking/ask.js';
import { factsOf, keyOf, relaxed, type Fact } from './facts.js';

/** One of the things that may not all be had at once: a pedal's power, or a fact. */
export type Demand =
  { readonly kind: 'pedal'; readonly pedal: PedalId } | { readonly kind: 'fact'; readonly fact: Fact };

/** A plan that meets some demands, and perhaps others of its own accord; all that it meets it meets at once. */
export type MeetingPlan = { readonly meets: (demand: Demand) => boolean };

/** What is asked about beyond the board. */
export type InquiryTerms = {
  /** Where one pedal has to hang. */
  readonly pin?: Pin;
  /** No fact is to be taken back, only pedals. */
  readonly factsStand?: boolean;
  /** It is known already that not everything can be had. */
  readonly isImpossible?: boolean;
};

/** `any` plan, or one that powers the most pedals. */
type Wish = 'any' | 'largest';

/** Asks again and again which demands can be met together. Keeps every plan that it finds. */
export class Inquiry {
  readonly plans: MeetingPlan[] = [];
  readonly facts: readonly Fact[];
  readonly pedals: readonly PedalId[];
  readonly #kit: Kit;
  readonly #effort: Effort;

  readonly #terms: InquiryTerms;

  constructor(kit: Kit, effort: Effort, terms: InquiryTerms = {}) {
    this.#kit = kit;
    this.#effort = effort;
    this.#terms = terms;
    this.facts = terms.factsStand === true ? [] : factsOf(kit);
    this.pedals = kit.board.pedals.map(({ id }) => id);
  }

  /** A plan that meets all of these, whatever becomes of the others; null when there is none, `unknown` when time ran out. */
  async planFor(demands: readonly Demand[], wish: Wish = 'any'): Promise<MeetingPlan | null | 'unknown'> {
    if (hasEnded(this.#effort)) return 'unknown';
    const required = new Set(demands.flatMap((each) => (each.kind === 'pedal' ? [each.pedal] : [])));
    const held = new Set(demands.flatMap((each) => (each.kind === 'fact' ? [keyOf(each.fact)] : [])));
    const lifted = this.facts.filter((fact) => !held.has(keyOf(fact)));
    const tiers = wish === 'any' ? [] : (['unpowered'] as const);
    const { pin } = this.#terms;
    const asked = { tiers, required, ...(pin === undefined ? {} : { pin }) };
    const solved = await ask(relaxed(this.#kit, lifted), asked, this.#effort);
    if (solved.kind === 'stopped') return 'unknown';
    if (solved.kind === 'impossible') return null;
    const plan = this.#planOf(everyFeed(solved.wiring), held);
    this.plans.push(plan);
    return plan;
  }

  #planOf(feeds: readonly Feed[], held: ReadonlySet<string>): MeetingPlan {
    const powers = new Set(feeds.map(({ pedal }) => pedal));
    let kept: ReadonlySet<string> | null = held.size === this.facts.length ? held : null;
    return {
      meets: (demand) => {
        if (demand.kind === 'pedal') return powers.has(demand.pedal);
        kept ??= this.#keptBy(feeds, held);
        return kept.has(keyOf(demand.fact));
      },
    };
  }

  /**
   * Facts that feeds are in keeping with all at once, though they were planned without regard to some of them: one after the
   * other, as far as they go together, since two reserves that are kept singly may be too much on one output.
   */
  #keptBy(feeds: readonly Feed[], held: ReadonlySet<string>): ReadonlySet<string> {
    const kept = new Set(held);
    for (const fact of this.facts) {
      if (kept.has(keyOf(fact))) continue;
      kept.add(keyOf(fact));
      if (!this.#isSound(feeds, kept)) kept.delete(keyOf(fact));
    }
    return kept;
  }

  #isSound(feeds: readonly Feed[], kept: ReadonlySet<string>): boolean {
    const lifted = this.facts.filter((fact) => !kept.has(keyOf(fact)));
    const inUse = new Set(feeds.map(({ supply }) => supply));
    const used = withThings(this.#kit, (supply) => (inUse.has(supply.id) ? supply : null));
    const { board, catalogue } = relaxed(used, lifted);
    const { violations, malformed } = audit(board, catalogue, feeds, { partial: true });
    return violations.length === 0 && malformed.length === 0;
  }
}
