import type { AnswerPart, Told, PlainKind } from './answer-parts.js';
import type { PlanHandout, ReplugWords } from './handout.js';

/** A plan, in the order in which a person goes about it. A page draws it, and says before it what to mind. */
export const planParts = (plan: PlanHandout): readonly AnswerPart<PlainKind>[] => [
  ['left-out', 'Left out', { kind: 'left out', pedals: plan.leftOut }],
  ...(plan.changes === null ? choosingParts(plan) : replugParts(plan, plan.changes)),
  ['proof', 'Why no plan is better', { kind: 'paragraph', text: plan.evidence }],
];

/** Which of these parts are no steps of going about it. */
export const isBeside = (id: string): boolean => id === 'left-out' || id === 'proof';

const buyTitles = { screen: 'Buy', page: 'What to buy', markdown: 'Buy' };

function choosingParts(plan: PlanHandout): readonly AnswerPart<PlainKind>[] {
  const cautions: Told = { kind: 'remarks', remarks: plan.cautions };
  return [
    ['buy', buyTitles, { kind: 'purchase', plan }],
    ['confirm', 'Confirm before plugging in', { kind: 'confirm', remarks: plan.confirm }],
    ['cautions', { page: 'Cautions' }, cautions],
    ['outputs', { screen: 'Plug in' }, { kind: 'outputs', plan }],
    ['wiring', { page: 'Wiring' }, { kind: 'drawing', plan }],
    ['feeds', { page: 'Feeds', markdown: 'Feeds' }, { kind: 'feeds', plan }],
    ['hook-up', { page: 'Hooking up, step by step', markdown: 'Hook up' }, { kind: 'steps', plan }],
    ['grounds', 'Grounds and noise', { kind: 'remarks', remarks: plan.grounds }],
    ['cautions', { screen: 'Cautions', markdown: 'Cautions' }, cautions],
  ];
}

function replugParts(plan: PlanHandout, changes: ReplugWords): readonly AnswerPart<PlainKind>[] {
  const [steps, feeds] = ['Re-plug, in this order', 'Feeds when it is done'];
  return [
    ['changes', 'What changes', { kind: 'changes', changes }],
    ...(plan.shopping.length === 0 ? [] : [['buy', buyTitles, { kind: 'purchase', plan }] as const]),
    ['confirm', 'Confirm before plugging in', { kind: 'confirm', remarks: plan.confirm }],
    ['re-plug', { screen: steps, page: 'Re-plugging, step by step', markdown: steps }, { kind: 'steps', plan }],
    ['feeds', { page: feeds, markdown: feeds }, { kind: 'feeds', plan }],
    ['wiring', { page: 'Wiring when it is done' }, { kind: 'drawing', plan }],
    ['entries', { screen: 'Write into the board file' }, { kind: 'entries', entries: changes.entries }],
    ['grounds', 'Grounds and noise', { kind: 'remarks', remarks: plan.grounds }],
    ['cautions', 'Cautions', { kind: 'remarks', remarks: plan.cautions }],
  ];
}
