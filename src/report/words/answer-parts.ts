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

/** What a part of an answer says. Whatever shows it shows each kind in its own manner, and leaves out what says nothing. */
export type Told =
  /** `lead` stands before them where there are any. */
  | { readonly kind: 'remarks'; readonly remarks: readonly Remark[]; readonly lead?: string }
  | { readonly kind: 'paragraph'; readonly text: string | null }
  | { readonly kind: 'to mind' | 'to tick'; readonly texts: readonly string[] }
  /** What is still to be read off labels before this is plugged. */
  | { readonly kind: 'confirm'; readonly remarks: readonly Remark[] }
  /** Pedals without power, and why. */
  | { readonly kind: 'left out'; readonly pedals: PlanHandout['leftOut'] }
  /** The hard rules that are broken. */
  | { readonly kind: 'broken'; readonly check: Check }
  /** What is plugged where, and what it loads. */
  | { readonly kind: 'loads'; readonly check: Check }
  /** What every owned unit has left with this plugged. */
  | { readonly kind: 'left'; readonly wiring: JudgedPlan }
  /** How far each guess may go. */
  | { readonly kind: 'reach'; readonly labels: readonly AskedLabel[] }
  /** What a plan buys; then the feeds in the order of the outputs, drawn, and in the order of hooking up; then how. */
  | { readonly kind: 'purchase' | 'outputs' | 'drawing' | 'feeds' | 'steps'; readonly plan: PlanHandout }
  | { readonly kind: 'changes'; readonly changes: ReplugWords }
  | { readonly kind: 'entries'; readonly entries: BoardEntries | null }
  /** What a comparison compares, in figures and drawn. */
  | { readonly kind: 'options' | 'chart'; readonly of: ComparisonHandout }
  | { readonly kind: 'standings'; readonly standings: readonly OptionStanding[] }
  | { readonly kind: 'unbeaten'; readonly unbeaten: UnbeatenWords | null };

type Medium = 'screen' | 'page' | 'markdown';

/** A part of an answer: its heading, or one for each place where it is shown. */
export type AnswerPart = readonly [id: string, title: string | Partial<Readonly<Record<Medium, string>>>, told: Told];

/** The parts that are shown there, each with its heading. */
export const shownOn = (medium: Medium, parts: readonly AnswerPart[]) =>
  parts.flatMap(([id, titles, told]) => {
    const title = typeof titles === 'string' ? titles : titles[medium];
    return title === undefined ? [] : [{ id, title, told }];
  });

/** What is to be read off labels before this is plugged. */
export const confirmTold = (speech: Speech, wiring: Pick<Wiring, 'feeds' | 'inlets'>): Told => ({
  kind: 'confirm',
  remarks: confirmRemarks(speech, wiring),
});

/** What to mind of a wiring, in which these feeds hang on the board. */
export const cautionsTold = (
  speech: Speech,
  wiring: Pick<JudgedPlan, 'feeds' | 'inlets' | 'grounds' | 'runtimes' | 'batteries'>,
  of: 'plan' | 'check' = 'plan',
  hanging: readonly Pick<Feed, 'supply'>[] = everyFeed(wiring),
): Told => ({ kind: 'remarks', remarks: cautionRemarks(speech, wiring, of, hanging) });

/** What a question is called, and why there is no answer to it where no plan exists. */
export type Asking = { readonly title: string; readonly impossible: string };

/** What is said where the time ran out. */
export const unsettledText = 'Not everything below was settled in time.';
