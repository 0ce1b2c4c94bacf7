import type { ChoosingAim } from '../../domain/aim.js';
import { everyWired, type WiredFeed } from '../../domain/board.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Answer } from '../../planning/answer.js';
import type { SearchOptions } from '../../planning/asking/search-options.js';
import { choose } from '../../planning/choose/choose.js';
import type { PinnedPlace } from '../../planning/choose/choose-around.js';
import { seekAsPlugged, type Wanted } from '../../planning/wanted/wanted.js';
import { rewire } from '../../planning/rewire/rewire.js';
import { startOverText } from '../../report/words/start-over-words.js';
import { sentence, speechOf } from '../../report/words/speech.js';

/** As the command `rewire` answers with these pedals to keep; without a shop, what to look for where there is no plan. */
export async function rePlugged(
  kit: Kit,
  keep: readonly PinnedPlace[],
  options: SearchOptions & { readonly aim: ChoosingAim },
): Promise<Answer | Wanted> {
  const found = await rewire(kit, { ...options, keep: keep.map(({ pedal }) => pedal) });
  const isToSeek = found.kind === 'impossible' && kit.catalogue === null && keep.length === 0;
  const sought = isToSeek ? await seekAsPlugged(kit, options) : null;
  return sought === 'unknown' ? { kind: 'stopped', aim: 'moves' } : (sought ?? found);
}

/** The pins of pedals and inlets where they are plugged today. */
export const keptToday = <Pin extends PinnedPlace>({ board }: Kit, pins: readonly Pin[]): readonly Pin[] =>
  pins.filter((pin) => everyWired(board).some((wired) => wired.pedal === pin.pedal && isThere(wired, pin)));

const isThere = (wired: WiredFeed, { supply, unit, outputs, millivolts }: PinnedPlace): boolean =>
  wired.supply === supply &&
  wired.unit === unit &&
  wired.outputs.join() === outputs.join() &&
  wired.millivolts === millivolts;

/** What a plan from nothing would come to beside one that re-plugs the board; null where none was found. */
export async function overText(
  kit: Kit,
  rewired: JudgedPlan,
  options: SearchOptions & { readonly aim: ChoosingAim },
): Promise<string | null> {
  const over = await choose(kit, options);
  const speech = speechOf(kit);
  return over.kind === 'plan' ? sentence(speech, startOverText(speech, over.wiring, rewired)) : null;
}
