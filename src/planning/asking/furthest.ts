import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import { everyFeed } from '../../domain/plan.js';
import { auditedIfSound } from './audited.js';

/** Whole numbers, each with a kit, of which a larger one asks for more. */
export type Scale = {
  /** Both included; the lowest is always tried. */
  readonly lowest: number;
  readonly highest: number;
  readonly kitAt: (step: number) => Kit;
  /** A plan for the kit; null when there is none that will do, `unknown` when the time ran out. */
  readonly planAt: (step: number) => Promise<JudgedPlan | null | 'unknown'>;
};

export type Furthest = { readonly step: number; readonly wiring: JudgedPlan };

/** The highest step of the scale with a plan, and a plan for it: sought between one that has one and one that has none. */
export async function furthest(scale: Scale): Promise<Furthest | null | 'unknown'> {
  const first = await scale.planAt(scale.lowest);
  if (first === null || first === 'unknown') return first;
  let best = { wiring: first, step: reachOf(first, scale.lowest, scale.highest, scale) };
  let tooFar = scale.highest + 1;
  // What a plan bears by itself is mostly the answer: one step above it is asked first, then halfway.
  let next = best.step + 1;
  while (best.step + 1 < tooFar) {
    const wiring = await scale.planAt(next);
    if (wiring === 'unknown') return 'unknown';
    if (wiring === null) tooFar = next;
    else best = { wiring, step: reachOf(wiring, next, tooFar - 1, scale) };
    next = Math.ceil((best.step + tooFar) / 2);
  }
  return best;
}

/** The highest step, between two bounds of which the lower one does, with which the very same plan breaks no rule. */
function reachOf(plan: JudgedPlan, lower: number, upper: number, { kitAt }: Scale): number {
  let [sound, most] = [lower, upper];
  while (sound < most) {
    const middle = Math.ceil((sound + most) / 2);
    if (auditedIfSound({ kit: kitAt(middle), partial: false }, everyFeed(plan)) === null) most = middle - 1;
    else sound = middle;
  }
  return sound;
}
