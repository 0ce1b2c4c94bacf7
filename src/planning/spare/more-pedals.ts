import type { Pedal } from '../../domain/pedal.js';
import type { Effort } from '../../formulation/optimiser.js';
import type { Today } from '../../loadout/today.js';
import { solve } from '../solve.js';
import { freeId, usualPedal, withPedals } from './extra-pedal.js';
import type { Installed } from './installed.js';

/** More of them than this are not counted. */
export const mostMore = 60;

/**
 * How many more 9 V pedals of so many microamps can have power: all that hang on the board and as many more as can be, by one
 * program. Null when the time ran out.
 */
export async function morePedals(
  drawn: number,
  today: Today,
  { board, catalogue }: Installed,
  effort: Effort,
): Promise<number | null> {
  const most = Math.min(mostMore, placesOf({ board, catalogue }));
  const first = freeId(board, 'one-more');
  const more: readonly Pedal[] = Array.from({ length: most }, (_, at) => usualPedal(`${first}-${at}`, drawn, false));
  const required = new Set(board.pedals.map(({ id }) => id));
  const asked = { board: withPedals(board, more), catalogue };
  const solved = await solve(asked, { tiers: ['unpowered'], required, today }, effort);
  if (solved.kind === 'stopped') return null;
  return solved.kind === 'plan' ? most - solved.wiring.unpowered.length : 0;
}

/** No more pedals than this could hang on what is owned. */
function placesOf({ board, catalogue }: Pick<Installed, 'board' | 'catalogue'>): number {
  const supplies = [...board.gear.supplies, ...catalogue.supplies].reduce((sum, { id, banks }) => {
    const outputs = banks.reduce((count, bank) => count + bank.outputs, 0);
    return sum + outputs * (board.owned.supplies.get(id) ?? 0);
  }, 0);
  const tails = [...board.gear.parts, ...catalogue.parts].reduce(
    (sum, { id, role }) => sum + (role.kind === 'chain' ? role.tails * (board.owned.parts.get(id) ?? 0) : 0),
    0,
  );
  return supplies + tails;
}
