import type { PedalId } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { pedalClasses } from '../../loadout/pedal-class.js';
import { withoutPedals } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { ask } from '../asking/ask.js';
import { noWays, waysFor, wayWith, type Ways } from './way-out.js';

/** Each pedal without which the others can be powered, of the given ones; pedals that need the same share an entry. */
export const pedalWays = async (pedals: readonly PedalId[], kit: Kit, effort: Effort): Promise<Ways> =>
  waysFor(pedalClasses(kit.board.pedals), async ({ members }) => {
    const alike = members.map(({ id }) => id).filter((id) => pedals.includes(id));
    const [first] = alike;
    if (first === undefined || kit.board.pedals.length === 1) return noWays;
    return wayWith({ kind: 'pedal', pedals: alike }, withoutPedals([first], kit), effort);
  });

/** The fewest pedals without which the others can be powered: none, where that is all of them. */
export async function fewestLeftOut(kit: Kit, effort: Effort): Promise<Ways> {
  const solved = await ask(kit, { tiers: ['unpowered', 'money'], required: new Set() }, effort);
  if (solved.kind !== 'plan') return { ways: [], whole: false };
  const { unpowered } = solved.wiring;
  if (unpowered.length === kit.board.pedals.length) return noWays;
  const without = withoutPedals(unpowered, kit);
  const wiring = { ...solved.wiring, unpowered: [], score: { ...solved.wiring.score, unpowered: 0 } };
  const change = { kind: 'pedals', pedals: unpowered } as const;
  return { ways: [{ change, kit: without, wiring, cheapest: true }], whole: true };
}
