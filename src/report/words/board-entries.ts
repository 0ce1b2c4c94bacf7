import { everyWired } from '../../domain/board.js';
import { leadNumbers } from '../../domain/lead-numbers.js';
import { leadTails } from '../../domain/lead-tails.js';
import type { PedalId } from '../../domain/quantities.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Changes } from '../../planning/rewire/changes.js';
import type { Speech } from './speech.js';
import { everyFeed } from '../../domain/plan.js';
import { batteriesOf, isFedByOwn } from './inventory.js';
import { wiringEntry } from './wiring-entry.js';
import { listText } from './words.js';

/** What to write into the board file after re-plugging, so that it is true again. */
export type BoardEntries = {
  readonly texts: readonly string[];
  /** The entries of `wiring` that differ, in YAML, a line each. */
  readonly entries: readonly string[];
};

/** Null where the file is true as it is. */
export function boardEntries(
  { kit, board, inventory }: Speech,
  plan: JudgedPlan,
  { steps, dropped }: Changes,
): BoardEntries | null {
  if (steps.length === 0) return null;
  const [feeds, { buy }] = [everyFeed(plan), plan];
  const plugged = new Set(
    steps.flatMap((step) => (step.kind === 'plug' || step.kind === 'put in' ? [step.feed.pedal] : [])),
  );
  // Numbers are spoken of only where the file gives some.
  const isNumbered = everyWired(board).some(({ lead }) => lead !== undefined);
  const [numbers, tails] = [leadNumbers(kit, feeds), leadTails(kit, feeds)];
  const marksOf = (pedal: PedalId) => (isNumbered ? { lead: numbers.get(pedal), tail: tails.get(pedal) } : {});
  const entries = feeds
    .filter(({ pedal }) => plugged.has(pedal))
    .map((feed) =>
      wiringEntry(
        feed,
        marksOf(feed.pedal),
        isFedByOwn(inventory, feed),
        batteriesOf(inventory, feed)?.battery ?? null,
      ),
    );
  return {
    texts: [
      ...(dropped.length === 0 ? [] : [`Take out of \`wiring\`: ${listText(dropped.map(inventory.pedalName))}.`]),
      ...(buy.supplies.length + buy.parts.length === 0 ? [] : ['Add what you have bought to `owned`.']),
      ...(entries.length === 0 ? [] : ['These entries of `wiring` are then:']),
    ],
    entries,
  };
}
