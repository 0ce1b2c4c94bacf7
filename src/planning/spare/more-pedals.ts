import { withBoard } from '../../domain/changed-kit.js';
import { countOutputs, ownedOf, type Kit } from '../../domain/kit.js';
import type { Pedal } from '../../domain/pedal.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Today } from '../../loadout/today.js';
import { ask } from '../asking/ask.js';
import { freeId, usualPedal, withPedals } from './extra-pedal.js';
import type { Installed } from './installed.js';

/** More of them than this are not counted. */
export const mostMore = 60;

/** How many more can have power; of what was not settled in time no less than `atLeast`. */
export type MorePedals = { readonly more: number | null; readonly atLeast: number };

/**
 * How many more 9 V pedals of so many microamps can have power: all that hang on the board and as many more as can be, by one
 * program.
 */
export async function morePedals(drawn: number, today: Today, { kit }: Installed, effort: Effort): Promise<MorePedals> {
  const most = Math.min(mostMore, placesOf(kit));
  const first = freeId(kit.board, 'one-more');
  const more: readonly Pedal[] = Array.from({ length: most }, (_, at) => usualPedal(`${first}-${at}`, drawn, false));
  const required = new Set(kit.board.pedals.map(({ id }) => id));
  const asked = withBoard(kit, withPedals(kit.board, more));
  const solved = await ask(asked, { tiers: ['unpowered'], required, today }, effort);
  const fed = solved.kind === 'plan' ? [solved.wiring] : solved.kind === 'stopped' ? solved.plans : [];
  const atLeast = Math.max(0, ...fed.map(({ unpowered }) => most - unpowered.length));
  return { more: solved.kind === 'stopped' ? null : atLeast, atLeast };
}

/** No more pedals than this could hang on what is owned. */
function placesOf(kit: Kit): number {
  const outputs = [...kit.supplies.values()].map((supply) => countOutputs(supply) * ownedOf(kit, supply));
  const tails = [...kit.parts.values()].map((part) =>
    part.role.kind === 'chain' ? part.role.tails * ownedOf(kit, part) : 0,
  );
  return [...outputs, ...tails].reduce((sum, places) => sum + places, 0);
}
