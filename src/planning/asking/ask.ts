import type { Criterion } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Feed } from '../../domain/plan.js';
import type { ProofStep } from '../../domain/proof.js';
import type { PedalId, SupplyId } from '../../domain/quantities.js';
import { optimise } from '../../formulation/optimise.js';
import type { Effort, SearchEvidence, SearchOutcome } from '../../formulation/optimiser.js';
import { pinnedQuestion, type Pin } from '../../formulation/pinned-question.js';
import { questionOf, type Question } from '../../formulation/question.js';
import type { Tables } from '../../formulation/tables.js';
import { nothingToday, type Today } from '../../loadout/today.js';
import { audited, checkedAgainst, type Judging } from './audited.js';

/** What is asked of a kit. */
export type Ask = {
  /** What is least, the most important first; none when any plan will do. */
  readonly tiers: readonly Criterion[];
  /** Whether pedals may be left out; not so when left out, unless some are required. */
  readonly partial?: boolean;
  /** The pedals that must be powered, while others may be; all when left out. Alike pedals may stand in for one another. */
  readonly required?: ReadonlySet<PedalId>;
  /** Where one pedal has to hang. */
  readonly pin?: Pin;
  /** How the board is plugged, with the pedals that have to stay so; of no account together with a pin. */
  readonly today?: Today;
  /** No more units of these supplies than so many may be bought. */
  readonly caps?: ReadonlyMap<SupplyId, number>;
  /** The most exposed pedals that a plan may have. */
  readonly mostExposed?: number;
};

/** What the solver says. Every plan in it has passed the audit. */
export type SolverAnswer =
  | {
      readonly kind: 'plan';
      readonly wiring: JudgedPlan;
      /** No plan is better in any of the tiers, whose values these are. */
      readonly values: ReadonlyMap<Criterion, number>;
      readonly evidence: SearchEvidence;
      /** What can be written down of the proof; null where the question had to be divided, or none was asked for. */
      readonly proof: readonly ProofStep[] | null;
    }
  | { readonly kind: 'impossible' }
  /** The time ran out first. */
  | {
      readonly kind: 'stopped';
      /** Plans in hand. */
      readonly plans: readonly JudgedPlan[];
      /** The values of the tiers that are settled, in order. */
      readonly settled: ReadonlyMap<Criterion, number>;
      /** The first tier that is open and what no plan can beat in it; null when nothing is known. */
      readonly open: { readonly tier: Criterion; readonly bound: number | null } | null;
    };

/**
 * One question to the solver: the only way in which planning asks it. Plans are audited against the very kit that was asked
 * about, and a proven one is worth what was proven of it.
 * @throws Error when a plan fails its audit, or its proof: a defect of boardfeed, never of the input.
 */
export async function ask(kit: Kit, asked: Ask, effort: Effort): Promise<SolverAnswer> {
  const question = questionFor(kit, asked, effort.workings?.tables);
  const outcome = await optimise(question, effort);
  const judged = (feeds: readonly Feed[]): JudgedPlan =>
    audited(judgingOf(kit, asked), toRequired(feeds, question, asked));
  switch (outcome.kind) {
    case 'impossible':
      return outcome;
    case 'stopped':
      return stopped(outcome, judged);
    case 'proven': {
      const { feeds, values, evidence, proof } = outcome;
      return { kind: 'plan', wiring: checkedAgainst(values, judged(feeds), kit.board.policy), values, evidence, proof };
    }
  }
}

/** The plan alone; null when there is none, `unknown` when the time ran out. */
export function planOf(asked: SolverAnswer): JudgedPlan | null | 'unknown' {
  if (asked.kind === 'plan') return asked.wiring;
  return asked.kind === 'impossible' ? null : 'unknown';
}

const stopped = (
  { candidates, settled, open }: Extract<SearchOutcome, { kind: 'stopped' }>,
  judged: (feeds: readonly Feed[]) => JudgedPlan,
): SolverAnswer => ({ kind: 'stopped', plans: candidates.map(judged), settled, open });

/** What its plans are judged by. */
export const judgingOf = (kit: Kit, asked: Ask): Judging => ({
  kit,
  partial: isPartial(asked),
  moves: asked.tiers.includes('moved'),
});

const isPartial = ({ partial = false, required }: Ask): boolean => partial || required !== undefined;

/** The question as the formulation takes it. */
export function questionFor(kit: Kit, asked: Ask, tables?: Tables): Question {
  const { tiers, required, pin, today = nothingToday, caps, mostExposed } = asked;
  const terms = { tiers, partial: isPartial(asked), today, mostExposed: mostExposed ?? null };
  const question = pin === undefined ? questionOf(kit, terms, tables) : pinnedQuestion(kit, terms, pin, tables);
  const offered = caps === undefined ? question : capped(question, caps);
  if (required === undefined) return offered;
  const needed = pin === undefined ? required : new Set([...required, pin.pedal]);
  return { ...offered, required: countsOf(offered, needed) };
}

/** The question with no more units for sale than the caps allow; a supply of which there is none is left out. */
const capped = (question: Question, caps: ReadonlyMap<SupplyId, number>): Question => ({
  ...question,
  supplies: question.supplies.flatMap((uses) => {
    const most = caps.get(uses.supply.id) ?? Infinity;
    if (uses.forSale <= most) return [uses];
    return uses.owned + most > 0 ? [{ ...uses, forSale: most }] : [];
  }),
});

/** The feeds of alike pedals go to those that are required first. */
function toRequired(feeds: readonly Feed[], { bench, board }: Question, { required }: Ask): readonly Feed[] {
  if (required === undefined) return feeds;
  const names = new Map<PedalId, PedalId>();
  for (const { members } of bench.classes) {
    const fed = members.filter(({ id }) => feeds.some(({ pedal }) => pedal === id));
    const first = [...members].sort((one, two) => Number(required.has(two.id)) - Number(required.has(one.id)));
    const chosen = new Set(first.slice(0, fed.length));
    const [leaving, coming] = [
      fed.filter((pedal) => !chosen.has(pedal)),
      [...chosen].filter((one) => !fed.includes(one)),
    ];
    for (const [index, { id }] of leaving.entries()) names.set(id, coming[index]?.id ?? id);
  }
  const order = new Map(board.pedals.map(({ id }, index) => [id, index]));
  return feeds
    .map((feed) => ({ ...feed, pedal: names.get(feed.pedal) ?? feed.pedal }))
    .sort((one, two) => (order.get(one.pedal) ?? 0) - (order.get(two.pedal) ?? 0));
}

/** How many of each class are required. */
const countsOf = ({ bench }: Question, required: ReadonlySet<PedalId>): ReadonlyMap<number, number> =>
  new Map(bench.classes.map(({ members }, index) => [index, members.filter(({ id }) => required.has(id)).length]));
