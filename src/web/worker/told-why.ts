import type { ChoosingAim } from '../../domain/aim.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { PedalId } from '../../domain/quantities.js';
import { effortOf, type SearchOptions } from '../../planning/asking/search-options.js';
import { seatOf } from '../../planning/explain/seats.js';
import { elsewhereTexts, hereText, othersArranged } from '../../report/words/explain-seat.js';
import { sentence, speechOf } from '../../report/words/speech.js';

/** A plan that is seen. */
export type Seen = {
  readonly kit: Kit;
  readonly plan: JudgedPlan;
  readonly aim: ChoosingAim;
  /** Whether it is proven to be the best of all plans, with no pedal pinned. */
  readonly isBest: boolean;
};

/** Why a pedal hangs where it does, and what the other places would cost, in sentences. */
export async function toldWhy({ kit, plan, aim, isBest }: Seen, pedal: PedalId, options: SearchOptions) {
  if (!isBest) return ['Why it hangs there is told of a plan that is proven, with no pedal pinned.'];
  const speech = speechOf(kit);
  const { seat, whole } = await seatOf(pedal, plan, aim, kit, effortOf(options));
  const others = elsewhereTexts(speech, pedal, seat.elsewhere);
  return [
    hereText(speech, plan, seat),
    ...(others.length === 0 ? [] : [othersArranged, ...others]),
    ...(whole ? [] : ['Not everything was settled in time.']),
  ].map((text) => sentence(speech, text));
}
