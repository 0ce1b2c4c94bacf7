import { withBoard, withNothingForSale } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed } from '../../domain/plan.js';
import { wiredAs } from '../../domain/wired-as.js';
import type { PartId, SupplyId } from '../../domain/quantities.js';
import { berthsOf, type Today } from '../../loadout/today.js';
import { partsInUse } from '../today/parts-in-use.js';

/** A board as it stands when it is plugged: all that is in use is owned, and nothing is for sale. */
export type Installed = {
  readonly kit: Kit;
  readonly wiring: JudgedPlan;
  /** Every pedal has to stay where it is. */
  readonly asPlugged: Today;
};

export function installedAs(kit: Kit, wiring: JudgedPlan): Installed {
  const { board } = kit;
  const plugged: Board = {
    ...board,
    owned: withUsed(board, wiring),
    ...wiredAs(kit, wiring),
  };
  const pedals = new Set(board.pedals.map(({ id }) => id));
  return {
    kit: withNothingForSale(withBoard(kit, plugged)),
    wiring,
    asPlugged: { berths: berthsOf(plugged.wiring), exposed: new Set(wiring.exposed), pinned: pedals },
  };
}

/** What is owned, and beyond that what is in use. */
function withUsed({ owned }: Board, { buy, ...plugged }: JudgedPlan): Board['owned'] {
  const feeds = everyFeed(plugged);
  const supplies = new Map<SupplyId, number>(owned.supplies);
  for (const { supply, unit } of feeds) supplies.set(supply, Math.max(unit, supplies.get(supply) ?? 0));
  const parts = new Map<PartId, number>(owned.parts);
  for (const [part, used] of partsInUse(feeds)) parts.set(part, Math.max(used, parts.get(part) ?? 0));
  // Batteries are in no feed's leads.
  for (const { id, units } of buy.parts)
    parts.set(id, Math.max((owned.parts.get(id) ?? 0) + units, parts.get(id) ?? 0));
  return { supplies, parts };
}
