import { factorText } from '../../domain/quantities.js';
import type { Speech } from './speech.js';
import type { UnitUse } from './usage.js';

/** "× 1.2", by which the draw of a pedal alone on an output is multiplied; null where no reserve is asked for. */
export function reserveAlone({ board, marks }: Pick<Speech, 'board' | 'marks'>): string | null {
  const { alone } = board.policy.headroom;
  return alone.numerator > alone.denominator ? `${marks.times} ${factorText(alone)}` : null;
}

/** What the loads are multiplied by. */
export function loadLegend({ board, inventory, marks }: Speech, units: readonly UnitUse[]): string {
  const { headroom, guess } = board.policy;
  const uses = units.flatMap(({ outputs }) => outputs);
  const guessed = uses.some(({ feeds }) => feeds.some(({ pedal }) => inventory.pedal(pedal).figure === 'guess'));
  const factors = [
    `${marks.times} ${factorText(headroom.alone)} for a pedal alone`,
    ...(uses.some(({ feeds: { length } }) => length > 1)
      ? [`${marks.times} ${factorText(headroom.chained)} on a chain`]
      : []),
  ];
  return `Load: what the pedals draw ${factors.join(', ')}${guessed ? `; a guess counts ${marks.times} ${factorText(guess)} before that` : ''}.`;
}
