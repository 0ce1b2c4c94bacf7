import { kitOf } from '../../../src/domain/kit.js';
import type { Answer } from '../../../src/planning/answer.js';
import { handoutOf, type Handout, type PlanHandout } from '../../../src/report/words/handout.js';
import { everything } from './everything.js';
import { moving } from './moving.js';
import { planOf as plugged, tideway } from './samples.js';

const same = (id: string): string => id;

/** The plan of everything that a plan can hold. */
export function planOf(named: (id: string) => string = same): PlanHandout {
  const { board, catalogue, wiring, reasons } = everything(named);
  return asPlan(
    handoutOf({ kit: kitOf(board, catalogue), answer: { kind: 'plan', aim: 'cost', wiring, gap: null, reasons } }),
  );
}

/** The plainest plan. */
export const plainPlan = (): PlanHandout =>
  asPlan(
    handoutOf({
      kit: kitOf(tideway.board, tideway.catalogue),
      answer: { kind: 'plan', aim: 'cost', wiring: tideway.wiring, gap: null, reasons: [] },
    }),
  );

/** The plan of everything as a difference against today. */
export function movingPlan(named: (id: string) => string = same): PlanHandout {
  const { board, catalogue, plan } = moving(named);
  return asPlan(
    handoutOf({
      kit: kitOf(board, catalogue),
      answer: { ...plan, evidence: { kind: 'tags', cases: 1, limits: false } },
    }),
  );
}

/** Every kind of answer about the board of everything. */
export function allHandouts(named: (id: string) => string = same): readonly Handout[] {
  const { board, catalogue, wiring, reasons } = everything(named);
  const nothing = plugged(board, catalogue, []);
  const answers: readonly Answer[] = [
    { kind: 'plan', aim: 'cost', wiring, gap: null, reasons, evidence: { kind: 'tags', cases: 2, limits: true } },
    { kind: 'plan', aim: 'quiet', wiring, gap: { tier: 'money', value: 22_400, bound: 20_000 }, reasons: [] },
    { kind: 'plan', aim: 'cost', wiring: nothing, gap: null, reasons },
    { kind: 'impossible', aim: 'cost', reasons },
    { kind: 'stopped', aim: 'cost' },
  ];
  return [...answers.map((answer) => handoutOf({ kit: kitOf(board, catalogue), answer })), movingPlan(named)];
}

function asPlan(handout: Handout): PlanHandout {
  if (handout.kind !== 'plan') throw new Error('no plan');
  return handout;
}

/** Gives each thing the next of these names. */
export function namedInTurn(names: readonly string[]): (id: string) => string {
  let next = 0;
  return () => names[next++ % names.length] ?? '';
}
