import type { Kit } from '../../domain/kit.js';
import type { Answer } from '../../planning/answer.js';
import type { Wanted } from '../../planning/wanted/wanted.js';
import { handoutOf, type NoPlanHandout, type PlanHandout } from '../../report/words/handout.js';
import { figuresOf, type Figure } from '../drawing/figures.js';

/** An answer in the words of the reports, as data that can be sent: without what looks things up. */
export type ToldAnswer = ToldPlan | Omit<NoPlanHandout, 'speech'>;

export type ToldPlan = Omit<PlanHandout, 'speech'> & { readonly figures: readonly Figure[] };

/** Puts an answer in words. */
export function toldAnswer(kit: Kit, answer: Answer | Wanted): ToldAnswer {
  const handout = handoutOf({ kit, answer });
  const figures = handout.kind === 'plan' ? figuresOf(handout) : [];
  const { speech: _speech, ...told } = handout;
  return told.kind === 'plan' ? { ...told, figures } : told;
}
