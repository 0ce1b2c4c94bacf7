import { headlineOf } from '../words/headline.js';
import type { ChoosingAim } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Gap } from '../../planning/answer.js';
import { headLines, type Screen } from './screen.js';

/** What it is, what it costs, whether it is proven, and what it comes to. */
export function headline(screen: Screen, aim: ChoosingAim, wiring: JudgedPlan, gap: Gap | null): string[] {
  const { paints } = screen;
  const { cost, counts, standing } = headlineOf(screen, aim, wiring, gap);
  return headLines(
    screen,
    'how to power it',
    { text: `${cost} ${counts}` },
    { text: standing, paint: gap === null ? paints.good : paints.caution },
  );
}
