import type { Board } from '../../domain/board.js';
import { nothingMoreStated, type Pedal } from '../../domain/pedal.js';
import { microamps, millivolts, pedalId } from '../../domain/quantities.js';

/** The volts of a pedal that nothing else is known of, in millivolts. */
export const usualMillivolts = millivolts(9000);

/** A 9 V pedal as most are: DC, centre-negative, on a barrel plug of 2.1 mm, with a negative ground. */
export const usualPedal = (id: string, drawn: number, digital: boolean): Pedal => ({
  id: pedalId(id),
  name: id,
  power: 'DC',
  polarity: 'centre-negative',
  inlet: 'barrel-2.1',
  ground: 'negative',
  accepts: { kind: 'listed', millivolts: [usualMillivolts] },
  draw: { kind: 'flat', microamps: microamps(drawn) },
  ...nothingMoreStated,
  digital,
});

/** The id, or with a number behind it the first that the board does not have. */
export function freeId({ pedals }: Board, wanted: string): string {
  const taken = new Set<string>(pedals.map(({ id }) => id));
  let id = wanted;
  for (let next = 2; taken.has(id); next += 1) id = `${wanted}-${next}`;
  return id;
}

/** The board with more pedals. */
export const withPedals = (board: Board, more: readonly Pedal[]): Board => ({
  ...board,
  pedals: [...board.pedals, ...more],
});
