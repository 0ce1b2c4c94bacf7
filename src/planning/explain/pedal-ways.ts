import type { PedalId } from '../../domain/quantities.js';
import type { Effort } from '../../formulation/optimiser.js';
import { pedalClasses } from '../../loadout/pedal-class.js';
import { solve, type Situation } from '../solve.js';
import { noWays, type Ways } from './way-out.js';

/** Each pedal without which the others can be powered, of the given ones; pedals that need the same share an entry. */
export async function pedalWays(pedals: readonly PedalId[], situation: Situation, effort: Effort): Promise<Ways> {
  const { board } = situation;
  const ways: Ways['ways'][number][] = [];
  let whole = true;
  for (const { members } of pedalClasses(board.pedals)) {
    const alike = members.map(({ id }) => id).filter((id) => pedals.includes(id));
    const [first] = alike;
    if (first === undefined || board.pedals.length === 1) continue;
    const without = withoutPedals([first], situation);
    const solved = await solve(without, { tiers: [] }, effort);
    if (solved.kind === 'stopped') whole = false;
    if (solved.kind === 'plan')
      ways.push({ change: { kind: 'pedal', pedals: alike }, situation: without, wiring: solved.wiring });
  }
  return { ways, whole };
}

/** The fewest pedals without which the others can be powered: none, where that is all of them. */
export async function fewestLeftOut(situation: Situation, effort: Effort): Promise<Ways> {
  const solved = await solve(situation, { tiers: ['unpowered', 'money'], required: new Set() }, effort);
  if (solved.kind !== 'plan') return { ways: [], whole: false };
  const { unpowered } = solved.wiring;
  if (unpowered.length === situation.board.pedals.length) return noWays;
  const without = withoutPedals(unpowered, situation);
  const wiring = { ...solved.wiring, unpowered: [], score: { ...solved.wiring.score, unpowered: 0 } };
  const change = { kind: 'pedals', pedals: unpowered } as const;
  return { ways: [{ change, situation: without, wiring, cheapest: true }], whole: true };
}

export const withoutPedals = (pedals: readonly PedalId[], { board, catalogue }: Situation): Situation => ({
  board: {
    ...board,
    pedals: board.pedals.filter(({ id }) => !pedals.includes(id)),
    wiring: board.wiring.filter(({ pedal }) => !pedals.includes(pedal)),
  },
  catalogue,
});
