import type { PedalId } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Kit } from '../../domain/kit.js';
import type { Fact } from './facts.js';
import { hardestFirst } from './hardness.js';
import { Inquiry, type Demand, type InquiryTerms } from './inquiry.js';
import { likeness, smallestOf, type Likeness } from './smaller-conflict.js';

/** Pedals that cannot all be powered while some facts hold, whichever other pedals are left out. */
export type Conflict = {
  /** In the order of the board; at least one. */
  readonly pedals: readonly PedalId[];
  readonly facts: readonly Fact[];
  /**
   * What is shown of its size: that no set with fewer pedals and facts fails, that all the others can be had at once without
   * any one of these, or nothing.
   */
  readonly size: 'smallest' | 'irreducible' | 'open';
};

/**
 * A smallest set of pedals and facts that cannot hold together; null when all can, or when the time runs out first. What can
 * be taken away is, in lots as large as it goes well; then smaller sets are ruled out by implicit hitting sets ("Smallest MUS
 * extraction with minimal hitting set dualization", 2015). When the time runs out on the way, what is left is a conflict still.
 */
export async function conflictOf(kit: Kit, effort: Effort, terms: InquiryTerms = {}): Promise<Conflict | null> {
  const inquiry = new Inquiry(kit, effort, terms);
  const alike = likeness(kit);
  if (terms.isImpossible !== true && !(await isImpossible(inquiry))) return null;
  const found = await irreducible(kit, inquiry, alike);
  const { demands, smallest } = found.whole
    ? await smallestOf(found.demands, inquiry, alike)
    : { demands: found.demands, smallest: false };
  const pedals = new Set(demands.flatMap((each) => (each.kind === 'pedal' ? [each.pedal] : [])));
  return {
    pedals: kit.board.pedals.map(({ id }) => id).filter((id) => pedals.has(id)),
    facts: demands.flatMap((each) => (each.kind === 'fact' ? [each.fact] : [])),
    size: smallest ? 'smallest' : found.whole ? 'irreducible' : 'open',
  };
}

async function isImpossible(inquiry: Inquiry): Promise<boolean> {
  const { pedals, facts } = inquiry;
  return (await inquiry.planFor([...facts.map(factDemand), ...pedals.map(pedalDemand)])) === null;
}

const factDemand = (fact: Fact): Demand => ({ kind: 'fact', fact });
const pedalDemand = (pedal: PedalId): Demand => ({ kind: 'pedal', pedal });

/** Demands that cannot all be met, and whether it is shown that none of them can be taken away. */
type Found = { readonly demands: readonly Demand[]; readonly whole: boolean };

/**
 * First pedals are taken away while all facts hold, for that keeps the questions small; then facts beside the pedals that are
 * left, those before others that a person can do the least about.
 */
async function irreducible(kit: Kit, inquiry: Inquiry, alike: Likeness): Promise<Found> {
  const pedals = hardestFirst(kit).map(({ id }) => pedalDemand(id));
  const facts = inquiry.facts.map(factDemand).reverse();
  const few = await withoutNeedless(pedals, facts, inquiry, alike);
  const least = await withoutNeedless(facts, few.demands, inquiry, alike);
  return { demands: [...few.demands, ...least.demands], whole: few.whole && least.whole };
}

/** Those of `all` that are needed beside `others` to make a plan impossible. A lot that is not needed goes at once. */
async function withoutNeedless(
  all: readonly Demand[],
  others: readonly Demand[],
  inquiry: Inquiry,
  alike: Likeness,
): Promise<Found> {
  let open = all;
  let needed: readonly Demand[] = [];
  let whole = true;
  let size = Math.ceil(all.length / 2);
  while (open.length > 0) {
    const [rest, lot] = [open.slice(0, Math.max(0, open.length - size)), open.slice(-size)];
    const plan = await inquiry.planFor([...others, ...needed, ...rest]);
    if (plan === null) {
      open = rest;
      size = 2 * lot.length;
      continue;
    }
    const against = plan === 'unknown' ? lot : lot.filter((demand) => !plan.meets(demand));
    const [only] = against;
    if (only === undefined) throw new Error('a plan meets what is shown to be impossible');
    if (against.length === 1) {
      whole &&= plan !== 'unknown';
      const same = open.filter((demand) => alike(demand, only));
      needed = [...needed, ...same];
      open = open.filter((demand) => !same.includes(demand));
    } else {
      open = [...open.filter((demand) => !against.includes(demand)), ...against];
      size = Math.ceil(against.length / 2);
    }
  }
  return { demands: needed, whole };
}
