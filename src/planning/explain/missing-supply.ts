import { drawAt, loadAt, scaled, stepsUp } from '../../domain/load.js';
import { lowestMillivolts, type Pedal } from '../../domain/pedal.js';
import { microamps, millivolts, supplyId, type Millivolts, type PedalId } from '../../domain/quantities.js';
import type { Supply } from '../../domain/supply.js';
import type { Effort } from '../../formulation/optimiser.js';
import { solve, type Situation } from '../solve.js';
import type { Ways, WayOut } from './way-out.js';

/** For each of these pedals: whether one more supply that is made for it, and for nothing else, would do. */
export async function missingSupplies(pedals: readonly PedalId[], situation: Situation, effort: Effort): Promise<Ways> {
  const ways: WayOut[] = [];
  let whole = true;
  for (const pedal of situation.board.pedals.filter(({ id }) => pedals.includes(id))) {
    const supply = supplyFor(pedal, situation);
    const changed = withSupply(supply, situation);
    const solved = await solve(changed, { tiers: [] }, effort);
    if (solved.kind === 'stopped') whole = false;
    if (solved.kind === 'plan')
      ways.push({ change: { kind: 'supply', supply, pedal: pedal.id }, situation: changed, wiring: solved.wiring });
  }
  return { ways, whole };
}

/** One isolated output at the volts that the pedal would rather have, of the least rating that does. */
export function supplyFor(pedal: Pedal, { board: { policy } }: Situation): Supply {
  const at: Millivolts = pedal.prefers ?? millivolts(lowestMillivolts(pedal.accepts));
  const planned = stepsUp(scaled(loadAt(pedal, at, policy.guess), policy.headroom.alone), 1);
  const rating = microamps(Math.max(planned, pedal.startup ?? 0, drawAt(pedal, at)));
  return {
    id: supplyId(`no-such-supply-for-${pedal.id}`),
    name: `one more supply for ${pedal.name}`,
    price: null,
    stock: 0,
    mains: policy.mains === null ? null : { from: policy.mains, to: policy.mains },
    total: null,
    banks: [
      {
        firstOutput: 1,
        outputs: 1,
        isolated: true,
        power: pedal.power,
        plug: pedal.inlet,
        polarity: pedal.polarity,
        switching: 'each',
        settings: [{ millivolts: at, rating, openCircuit: null }],
        joins: [],
        total: null,
      },
    ],
    assumed: {},
  };
}

export const withSupply = (supply: Supply, { board, catalogue }: Situation): Situation => ({
  board: {
    ...board,
    gear: { ...board.gear, supplies: [...board.gear.supplies, supply] },
    owned: { ...board.owned, supplies: new Map([...board.owned.supplies, [supply.id, 1]]) },
  },
  catalogue,
});
