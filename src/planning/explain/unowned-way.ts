import type { Kit } from '../../domain/kit.js';
import type { Effort } from '../../formulation/optimiser.js';
import { owning, unownedLeads } from '../choose/unowned.js';
import { noWays, wayWith, type Ways } from './way-out.js';

/** To count what is plugged today among what is owned. */
export async function unownedWay(kit: Kit, effort: Effort): Promise<Ways> {
  const leads = unownedLeads(kit);
  if (leads.length === 0) return noWays;
  const parts = leads.map(({ lead: { id }, units }) => ({ id, units }));
  return wayWith({ kind: 'unowned', parts }, owning(leads, kit), effort);
}
