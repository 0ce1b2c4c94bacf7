import { withPolicy } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { rankedTiersOf, type ChoosingAim } from '../../domain/aim.js';
import { nothingToday } from '../../loadout/today.js';
import { answerTo, type ChooseJob } from '../choose/answer-to.js';
import type { Answer } from '../answer.js';
import { ask } from '../asking/ask.js';
import { effortOf, type SearchOptions } from '../asking/search-options.js';
import { atMost } from '../asking/within.js';
import { besidePurchase, planForPurchase, purchaseOf } from './asked-purchase.js';
import { bestOptions, type BestOptions } from './best-options.js';
import { byAim, choicesOf, mostChoices } from './choices.js';
import type { CompareStage, Comparison, Failure } from './comparison.js';
import { askedOption, isSettled, rankedOption, withAsked, type OptionDraft } from './option-drafts.js';
import { finishedOptions } from './preference.js';
import type { BoughtUnits } from './purchase-tree.js';
import { tradeOffs } from './trade-off.js';
import { pointOf, unbeatenPlans, type Patience, type UnbeatenFound } from './unbeaten.js';

export type { BoughtUnits } from './purchase-tree.js';

/** So long what nothing beats is sought, and each of its questions, unless the caller says how long all may take. */
const usual = { allMs: 6_000, choiceMs: 2_500, otherMs: 600 };
const unlimited = { allMs: Infinity, choiceMs: Infinity, otherMs: Infinity };

export type CompareOptions = Omit<SearchOptions, 'onProgress'> & {
  /** What is best; `cost` when left out. */
  readonly aim?: ChoosingAim;
  /** How many best purchases are listed, at least 1; choices that differ in kind when left out. */
  readonly best?: number | undefined;
  /** Purchases to set beside them: units of supplies that the catalogue sells. None when left out. */
  readonly asked?: readonly BoughtUnits[];
  /** Called whenever a stage is reached. */
  readonly onStage?: (stage: CompareStage) => void;
};

/**
 * Purchases side by side: choices that differ in what they give, or the best different purchases under the aim, beside those that
 * are asked for, and what money buys in quiet and in fewer supplies. A budget rules nothing out: what is over it is told. Every
 * wiring has passed the audit. What nothing beats is sought for six seconds unless `remainingMs` says how long all may take.
 * @throws RangeError when fewer than one best purchase is sought, or the catalogue does not sell what is asked for.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function compare(kit: Kit, options: CompareOptions = {}): Promise<Comparison> {
  const { aim = 'cost', best = null, asked = [], remainingMs, onStage = (): void => undefined } = options;
  if (best !== null && (!Number.isSafeInteger(best) || best < 1))
    throw new RangeError(`${best} best purchases cannot be sought`);
  for (const bought of asked) purchaseOf(bought, kit);
  const effort = { ...effortOf(options), onProgress: undefined };
  const free = withPolicy(kit, { budget: null });
  const job = { kit: free, aim, partial: false, today: nothingToday, effort };
  return sideBySide({ kit, job, best, asked, onStage, patience: remainingMs === undefined ? usual : unlimited });
}

type Wanted = {
  /** With the budget, which `job` goes without. */
  readonly kit: Kit;
  readonly job: ChooseJob & { readonly aim: ChoosingAim };
  /** How many best purchases; null for choices that differ in kind. */
  readonly best: number | null;
  readonly asked: readonly BoughtUnits[];
  readonly onStage: (stage: CompareStage) => void;
  readonly patience: Patience & { readonly allMs: number };
};

async function sideBySide(wanted: Wanted): Promise<Comparison> {
  const { kit, job, asked, onStage } = wanted;
  const { aim } = job;
  const preferring = { aim, policy: kit.board.policy };
  onStage(wanted.best === null ? { kind: 'choices', known: [] } : { kind: 'best', found: 0, wanted: wanted.best });
  const answer = await unbeatenAnswer(job);
  const listed = await bestListed(answer, wanted);
  const unbeaten = await whatNothingBeats(answer, wanted);
  const { drafts: ranked, end } = listed ?? choices(answer, unbeaten, wanted);
  let drafts = ranked;
  for (const [done, bought] of asked.entries()) {
    onStage({ kind: 'asked', done, wanted: asked.length });
    drafts = withAsked(drafts, bought) ?? [...drafts, await judgedAsked(bought, answer, wanted)];
  }
  const curves = tradeOffs(unbeaten);
  const best = answer.kind === 'plan' && answer.gap === null ? answer.wiring.score : null;
  return {
    aim,
    listing: wanted.best === null ? 'kinds' : 'best',
    options: finishedOptions(drafts, { best, unbeaten, tradeOffs: curves }, preferring),
    best: { wanted: wanted.best ?? mostChoices, end },
    isProven: end !== 'stopped' && drafts.every(isSettled) && unbeaten.complete,
    unbeaten,
    tradeOffs: curves,
    reasons: answer.kind === 'impossible' ? answer.reasons : [],
  };
}

/** A purchase that was asked for, judged whole; where it cannot do it alone, with what to buy beside it. */
async function judgedAsked(bought: BoughtUnits, best: Answer, { kit, job, patience }: Wanted): Promise<OptionDraft> {
  const draft = askedOption(bought, await planForPurchase(bought, job), { kit });
  if (draft.kind === 'plan' || best.kind !== 'plan' || !canBeHelped(draft.reasons)) return draft;
  const beside = await atMost(patience.choiceMs, job.effort, (effort) => besidePurchase(bought, { ...job, effort }));
  return { ...draft, beside };
}

/** Nothing helps where the shop has too few of it, and nothing is known where the time ran out. */
const canBeHelped = (reasons: readonly Failure[]): boolean =>
  reasons.length > 0 && reasons.every(({ kind }) => kind !== 'stock');

/**
 * What is best under the aim, and beaten by nothing: where noise costs nothing, of what is as good in money and supplies the
 * quietest, before leads are counted.
 */
async function unbeatenAnswer(job: Wanted['job']): Promise<Answer> {
  const answer = await answerTo(job);
  const { policy } = job.kit.board;
  if (answer.kind !== 'plan' || answer.gap !== null) return answer;
  const { exposed } = answer.wiring.score;
  if (policy.noisePrice > 0 || job.aim === 'quiet' || exposed === 0) return answer;
  const tiers = rankedTiersOf(job.aim, policy).flatMap((tier) =>
    tier === 'parts' ? (['exposed', tier] as const) : [tier],
  );
  const quieter = await ask(job.kit, { tiers }, job.effort);
  if (quieter.kind === 'plan') return { ...answer, wiring: quieter.wiring };
  return { ...answer, gap: { tier: 'exposed', value: exposed, bound: null } };
}

/** The best purchases one after the other; null where choices that differ in kind are wanted. */
const bestListed = async (answer: Answer, { kit, job, best, onStage }: Wanted): Promise<BestOptions | null> =>
  best === null ? null : bestOptions(answer, { kit, job, wanted: best, onStage });

/** What nothing beats, as far as that is found in time. */
async function whatNothingBeats(answer: Answer, { kit, job, best, onStage, patience }: Wanted): Promise<UnbeatenFound> {
  const nothing = { points: [], least: { money: 0, exposed: 0, bricks: 0 } };
  if (answer.kind !== 'plan') return { ...nothing, complete: answer.kind === 'impossible' };
  if (answer.gap !== null) return { ...nothing, points: [pointOf(answer.wiring, false)], complete: false };
  const { wiring } = answer;
  const preferring = { aim: job.aim, policy: kit.board.policy };
  const tell = (points: UnbeatenFound['points']): void =>
    onStage(
      best === null
        ? { kind: 'choices', known: choicesOf(pointOf(wiring, true), points, preferring) }
        : { kind: 'trade-offs' },
    );
  tell([]);
  const work = async (effort: ChooseJob['effort']): Promise<UnbeatenFound> =>
    unbeatenPlans(wiring, { ...job, effort, patience, onProven: tell });
  return atMost(patience.allMs, job.effort, work);
}

/** Choices that differ in what they give. */
function choices(answer: Answer, { points, complete }: UnbeatenFound, { kit, job }: Wanted): BestOptions {
  if (answer.kind !== 'plan') return { drafts: [], end: answer.kind === 'impossible' ? 'all' : 'stopped' };
  const best = pointOf(answer.wiring, answer.gap === null);
  const preferring = { aim: job.aim, policy: kit.board.policy };
  const shown = [...choicesOf(best, points, preferring)].sort(byAim(preferring));
  const drafts = shown.map(({ wiring, money, isProven }, at): OptionDraft => {
    const gap =
      wiring === answer.wiring ? answer.gap : isProven ? null : ({ tier: 'money', value: money, bound: null } as const);
    return rankedOption(wiring, at + 1, gap, { kit });
  });
  return { drafts, end: !complete ? 'stopped' : shown.length < points.length ? 'enough' : 'all' };
}
