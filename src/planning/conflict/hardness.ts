import { drawAt } from '../../domain/load.js';
import { lowestMillivolts, type Pedal } from '../../domain/pedal.js';
import { millivolts } from '../../domain/quantities.js';
import type { Kit } from '../../domain/kit.js';

/** The pedals by how much they ask for: those that few outputs suit first, then by what they draw; else in the board's order. */
export const hardestFirst = ({ board }: Kit): readonly Pedal[] =>
  board.pedals
    .map((pedal) => ({ pedal, hardness: hardnessOf(pedal) }))
    .sort((first, second) => second.hardness - first.hardness)
    .map(({ pedal }) => pedal);

/** It only puts pedals in order: microamps at the lowest volts, and far more for what is out of the common. */
function hardnessOf(pedal: Pedal): number {
  const { power, polarity, ground, startup, alone, accepts } = pedal;
  const lowest = millivolts(lowestMillivolts(accepts));
  const rare = [power === 'AC', polarity === 'centre-positive', ground === 'positive', alone, lowest !== 9000];
  return rare.filter((is) => is).length * 1e9 + Math.max(drawAt(pedal, lowest), startup ?? 0);
}
