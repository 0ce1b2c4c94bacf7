import { everyWired } from '../../domain/board.js';
import { withBoard } from '../../domain/changed-kit.js';
import { forSaleOf, ownedOf, type Kit } from '../../domain/kit.js';
import type { Part } from '../../domain/part.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Reason } from '../answer.js';
import { ask } from '../asking/ask.js';
import { partsInUse } from '../today/parts-in-use.js';

export type UnownedReason = Extract<Reason, { readonly kind: 'unowned' }>;

/** A lead, and how many of it are plugged today: more than are owned and for sale. */
type UnownedLead = { readonly lead: Part; readonly units: number };

/** Leads of which today's wiring uses more than are owned and for sale. */
export const unownedLeads = (kit: Kit): readonly UnownedLead[] =>
  [...partsInUse(everyWired(kit.board))].flatMap(([id, units]) => {
    const lead = kit.parts.get(id);
    return lead === undefined || units <= ownedOf(kit, lead) + forSaleOf(lead) ? [] : [{ lead, units }];
  });

/** The kit as if as many of these were owned as are plugged. */
export function owning(leads: readonly UnownedLead[], kit: Kit): Kit {
  const { board } = kit;
  const parts = new Map([...board.owned.parts, ...leads.map(({ lead, units }) => [lead.id, units] as const)]);
  return withBoard(kit, { ...board, owned: { ...board.owned, parts } });
}

/** Of a board without a plan: the leads of today's wiring with which there is one; null where that is not what it lacks. */
export async function unownedReason(kit: Kit, effort: Effort): Promise<UnownedReason | null> {
  const leads = unownedLeads(kit);
  if (leads.length === 0 || (await ask(owning(leads, kit), { tiers: [] }, effort)).kind !== 'plan') return null;
  const texts = leads.map(
    ({ lead, units }) => `${units} × ${lead.name} (${ownedOf(kit, lead)} owned, ${forSaleOf(lead)} for sale)`,
  );
  const message = `plugged today, but not all there: ${texts.join(', ')}. With all that is plugged there is a plan`;
  return { kind: 'unowned', parts: leads.map(({ lead }) => lead.id), message };
}
