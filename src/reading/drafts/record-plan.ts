import { parse } from 'yaml';

import { everyWired, type WiredFeed } from '../../domain/board.js';
import { isInletId } from '../../domain/inlet.js';
import { ownedOf, pluggedOf, type Kit } from '../../domain/kit.js';
import type { Wiring } from '../../domain/plan.js';
import { wiredAs } from '../../domain/wired-as.js';
import type { ReadResult } from '../faults/input-fault.js';
import { mapIn } from '../text/text-edits.js';
import { withOwned, type Acquired } from './record-owned.js';
import { inOrder, withWiring } from './record-wiring.js';

/** A board that has been read from a text, and how another text of it is read beside the same shop. */
type RecordedIn = {
  readonly kit: Kit;
  readonly text: string;
  readonly read: (text: string) => ReadResult<Kit>;
};

/**
 * The text of a board file in which a plan is how the board is plugged: its feeds stand under `wiring`, each with the number
 * of its lead and the letter of its tail, and what it buys stands under `owned`. Comments and order stay. The text is read again: null where it would
 * not say just that.
 */
export function withPlanRecorded({ kit, text: written, read }: RecordedIn, plan: Wiring): string | null {
  const before = everyWired(kit.board);
  // Places that are kept are not plugged.
  const after = pluggedOf(kit, everyWired(wiredAs(kit, plan)));
  const stocked = withOwned(written, acquiredBy(kit, plan));
  const text = withWiring(stocked, mapIn(stocked), { before, after });
  if (text === null || unplanned(text) !== unplanned(written)) return null;
  const again = read(text);
  if (again.kind === 'faulty') return null;
  const recorded = JSON.stringify(everyWired(again.value.board));
  return recorded === JSON.stringify(pedalsFirst(inOrder(before, after))) ? text : null;
}

const pedalsFirst = (wired: readonly WiredFeed[]): readonly WiredFeed[] => [
  ...wired.filter(({ pedal }) => !isInletId(pedal)),
  ...wired.filter(({ pedal }) => isInletId(pedal)),
];

function acquiredBy(kit: Kit, { buy }: Wiring): Acquired {
  return {
    supplies: buy.supplies.flatMap(({ id, units }) => Array.from({ length: units }, () => id)),
    parts: buy.parts.flatMap(({ id, units }) => {
      const part = kit.parts.get(id);
      if (part === undefined) return [];
      const list = part.role.kind === 'battery' ? 'batteries' : 'parts';
      return [{ list, id, name: part.name, count: ownedOf(kit, part) + units }];
    }),
  };
}

/** All that a plan does not change. */
function unplanned(text: string): string {
  const { wiring: _wiring, owned: _owned, ...others } = parse(text) as Readonly<Record<string, unknown>>;
  return JSON.stringify(others);
}
