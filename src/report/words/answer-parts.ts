import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Feed, type Wiring } from '../../domain/plan.js';
import type { AskedLabel } from '../../planning/ask/decisive-labels.js';
import type { Check } from '../../planning/check/check.js';
import type { Remark } from './remark.js';
import { cautionRemarks } from './remarks.js';
import type { Speech } from './speech.js';

/** What a part of an answer says. A screen and a page show each kind in their own manner, and leave out what says nothing. */
export type Told =
  | { readonly kind: 'remarks'; readonly remarks: readonly Remark[] }
  | { readonly kind: 'paragraph'; readonly text: string | null }
  | { readonly kind: 'to mind' | 'to tick'; readonly texts: readonly string[] }
  /** What is still to be read off labels before this is plugged. */
  | { readonly kind: 'confirm'; readonly wiring: Pick<Wiring, 'feeds' | 'inlets'> }
  /** The hard rules that are broken. */
  | { readonly kind: 'broken'; readonly check: Check }
  /** What is plugged where, and what it loads. */
  | { readonly kind: 'loads'; readonly check: Check }
  /** What every owned unit has left with this plugged. */
  | { readonly kind: 'left'; readonly wiring: JudgedPlan }
  /** How far each guess may go. */
  | { readonly kind: 'reach'; readonly labels: readonly AskedLabel[] };

/** A part of an answer: its heading, or one for a screen and one for a page; null where it is not shown there. */
export type AnswerPart = readonly [
  id: string,
  title: string | { readonly screen: string | null; readonly page: string },
  told: Told,
];

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
