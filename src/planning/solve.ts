import type { Tier } from '../domain/aim.js';
import type { Kit } from '../domain/kit.js';
import type { JudgedPlan } from '../domain/judged-plan.js';
import type { Feed } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import { optimise } from '../formulation/optimise.js';
import type { Effort } from '../formulation/optimiser.js';
import { pinnedQuestion, type Pin } from '../formulation/pinned-question.js';
import { questionOf, type Question } from '../formulation/question.js';
import { nothingToday, type Today } from '../loadout/today.js';
import { audited } from './audited.js';

export type Ask = {
  /** What is least, the most important first; none when any plan will do. */
  readonly tiers: readonly Tier[];
  /** The pedals that must be powered, while others may be; all when left out. Alike pedals may stand in for one another. */
  readonly required?: ReadonlySet<PedalId>;
  /** Where one pedal has to hang. */
  readonly pin?: Pin;
  /** How the board is plugged, with the pedals that have to stay so; of no account together with a pin. */
  readonly today?: Today;
};

export type Solved =
  /** Audited, and no plan is better in any of the tiers, whose values these are. */
  | { readonly kind: 'plan'; readonly wiring: JudgedPlan; readonly values: ReadonlyMap<Tier, number> }
  | { readonly kind: 'impossible' }
  /** The time ran out first. */
  | { readonly kind: 'stopped' };

/**
 * One question to the solver, with whatever plan it gives audited against the very board and catalogue that were asked about.
 * @throws Error when a plan fails its audit: a defect of boardfeed, never of the input.
 */
export async function solve(kit: Kit, ask: Ask, effort: Effort): Promise<Solved> {
  const question = questionFor(kit, ask);
  const outcome = await optimise(question, { ...effort, onProgress: undefined });
  if (outcome.kind !== 'proven') return { kind: outcome.kind };
  const feeds = toRequired(outcome.feeds, question, ask);
  const wiring = audited({ kit, partial: ask.required !== undefined }, feeds);
  return { kind: 'plan', wiring, values: outcome.values };
}

function questionFor(kit: Kit, { tiers, required, pin, today = nothingToday }: Ask): Question {
  const terms = { tiers, partial: required !== undefined, today };
  const question = pin === undefined ? questionOf(kit, terms) : pinnedQuestion(kit, terms, pin);
  if (required === undefined) return question;
  const needed = pin === undefined ? required : new Set([...required, pin.pedal]);
  return { ...question, required: countsOf(question, needed) };
}

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
