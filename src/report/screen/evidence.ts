import { evidenceText } from '../words/evidence.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Evidence } from '../../planning/answer.js';
import { block } from './layout.js';
import type { Screen } from './screen.js';

const indent = 2;

/** Why no plan is better, in words that need no mathematics; nothing where the plan is not proven. */
export function evidenceLines(
  screen: Screen,
  aim: ChoosingAim,
  wiring: JudgedPlan,
  evidence: Evidence | undefined,
): string[] {
  const text = evidenceText(screen, aim, wiring, evidence);
  return text === null ? [] : block([{ text }], screen.width, indent);
}
