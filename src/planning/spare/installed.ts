import { withNothingForSale } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { berthsOf, type Today } from '../../loadout/today.js';
import { pluggedAs } from '../today/plugged-as.js';

/** A board as it stands when it is plugged: all that is in use is owned, and nothing is for sale. */
export type Installed = {
  readonly kit: Kit;
  readonly wiring: JudgedPlan;
  /** Every pedal has to stay where it is. */
  readonly asPlugged: Today;
};

export function installedAs(kit: Kit, wiring: JudgedPlan): Installed {
  const plugged = pluggedAs(kit, wiring.feeds);
  const pedals = new Set(kit.board.pedals.map(({ id }) => id));
  return {
    kit: withNothingForSale(plugged),
    wiring,
    asPlugged: { berths: berthsOf(plugged.board.wiring), exposed: new Set(wiring.exposed), pinned: pedals },
  };
}
