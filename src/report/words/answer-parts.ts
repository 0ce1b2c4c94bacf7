import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Feed, type Wiring } from '../../domain/plan.js';
import type { AskedLabel } from '../../planning/ask/decisive-labels.js';
import type { Check } from '../../planning/check/check.js';
import type { BoardEntries } from './board-entries.js';
import type { ComparisonHandout } from './comparison-handout.js';
import type { PlanHandout, ReplugWords } from './handout.js';
import type { OptionStanding } from './option-standings.js';
import type { Remark } from './remark.js';
import { cautionRemarks, confirmRemarks } from './remarks.js';
import type { Speech } from './speech.js';
import type { UnbeatenWords } from './unbeaten-words.js';

/** What the parts of answers say, by their kinds. Whatever shows one leaves it out where it says nothing. */
type ToldData = {
  /** `lead` stands before them where there are any. */
  readonly remarks: { readonly remarks: readonly Remark[]; readonly lead?: string };
  readonly paragraph: { readonly text: string | null };
  readonly 'to mind': { readonly texts: readonly string[] };
  readonly 'to tick': { readonly texts: readonly string[] };
  /** What is still to be read off labels before this is plugged. */
  readonly confirm: { readonly remarks: readonly Remark[] };
  /** Pedals without power, and why. */
  readonly 'left out': { readonly pedals: PlanHandout['leftOut'] };
  /** The hard rules that are broken. */
  readonly broken: { readonly check: Check };
  /** What is plugged where, and what it loads. */
  readonly loads: { readonly check: Check };
  /** What every owned unit has left with this plugged. */
  readonly left: { readonly wiring: JudgedPlan };
  /** How far each guess may go. */
  readonly reach: { readonly labels: readonly AskedLabel[] };
  /** What a plan buys. */
  readonly purchase: { readonly plan: PlanHandout };
  /** Its feeds by units and outputs, drawn, in the order of hooking up, and how to hook them up. */
  readonly outputs: { readonly plan: PlanHandout };
  readonly drawing: { readonly plan: PlanHandout };
  readonly feeds: { readonly plan: PlanHandout };
  readonly steps: { readonly plan: PlanHandout };
  readonly changes: { readonly changes: ReplugWords };
  readonly entries: { readonly entries: BoardEntries | null };
  /** What a comparison compares, in figures and drawn. */
  readonly options: { readonly of: ComparisonHandout };
  readonly chart: { readonly of: ComparisonHandout };
  readonly standings: { readonly standings: readonly OptionStanding[] };
  readonly unbeaten: { readonly unbeaten: UnbeatenWords | null };
};

type Kind = keyof ToldData;

/** What neither a comparison nor a chart is needed for: whoever shows no more than this carries neither. */
export type PlainKind = Exclude<Kind, 'options' | 'chart' | 'unbeaten' | 'reach' | 'loads' | 'left'>;

export type Told<Of extends Kind = Kind> = { readonly [Each in Of]: { readonly kind: Each } & ToldData[Each] }[Of];

/** How each kind of part is shown somewhere; null where it never is. */
export type Showing<By, Shown, Of extends Kind = Kind> = {
  readonly [Each in Of]: ((told: ToldData[Each], by: By) => Shown) | null;
};

type Medium = 'screen' | 'page' | 'markdown';

/** A part of an answer: its heading, or one for each place where it is shown. */
export type AnswerPart<Of extends Kind = Kind> = readonly [
  id: string,
  title: string | Partial<Readonly<Record<Medium, string>>>,
  told: Told<Of>,
];

/** The parts that are shown there, each with its heading. */
export const shownOn = <By, Shown, Of extends Kind>(
  medium: Medium,
  showing: Showing<By, Shown, Of>,
  parts: readonly AnswerPart<Of>[],
  by: By,
) =>
  parts.flatMap(([id, titles, told]) => {
    const title = typeof titles === 'string' ? titles : titles[medium];
    const show = showing[told.kind] as ((of: Told<Of>, by: By) => Shown) | null;
    return title === undefined || show === null ? [] : [{ id, title, shown: show(told, by) }];
  });

/** What is to be read off labels before this is plugged. */
export const confirmTold = (speech: Speech, wiring: Pick<Wiring, 'feeds' | 'inlets'>): Told<PlainKind> => ({
  kind: 'confirm',
  remarks: confirmRemarks(speech, wiring),
});

/** What to mind of a wiring, in which these feeds hang on the board. */
export const cautionsTold = (
  speech: Speech,
  wiring: Pick<JudgedPlan, 'feeds' | 'inlets' | 'grounds' | 'runtimes' | 'batteries'>,
  of: 'plan' | 'check' = 'plan',
  hanging: readonly Pick<Feed, 'supply'>[] = everyFeed(wiring),
): Told<PlainKind> => ({ kind: 'remarks', remarks: cautionRemarks(speech, wiring, of, hanging) });

/** What a question is called, and why there is no answer to it where no plan exists. */
export type Asking = { readonly title: string; readonly impossible: string };

/** What is said where the time ran out. */
export const unsettledText = 'Not everything below was settled in time.';
