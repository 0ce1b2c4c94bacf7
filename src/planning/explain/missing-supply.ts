import { drawAt, loadAt, scaled, stepsUp } from '../../domain/load.js';
import { lowestMillivolts, type Pedal } from '../../domain/pedal.js';
import { microamps, millivolts, supplyId, type Millivolts, type PedalId } from '../../domain/quantities.js';
import type { MainsVolts } from '../../domain/source.js';
import type { Supply } from '../../domain/supply.js';
import type { Effort } from '../../formulation/optimiser.js';
import { withGear } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import { ask } from '../asking/ask.js';
import type { Ways, WayOut } from './way-out.js';
import { singleOutputFor } from '../../domain/single-output.js';

/** For each of these pedals: whether one more supply that is made for it, and for nothing else, would do. */
export async function missingSupplies(pedals: readonly PedalId[], kit: Kit, effort: Effort): Promise<Ways> {
  const ways: WayOut[] = [];
  let whole = true;
  for (const pedal of kit.board.pedals.filter(({ id }) => pedals.includes(id))) {
    const supply = supplyFor(pedal, kit);
    const changed = withGear(kit, { supplies: [supply] });
    const solved = await ask(changed, { tiers: [] }, effort);
    if (solved.kind === 'stopped') whole = false;
    if (solved.kind === 'plan')
      ways.push({ change: { kind: 'supply', supply, pedal: pedal.id }, kit: changed, wiring: solved.wiring });
  }
  return { ways, whole };
}

/** One isolated output at the volts that the pedal would rather have, of the least rating that does. */
export function supplyFor(pedal: Pedal, { board: { policy } }: Kit): Supply {
  const at: Millivolts = pedal.prefers ?? millivolts(lowestMillivolts(pedal.accepts));
  const planned = stepsUp(scaled(loadAt(pedal, at, policy.guess), policy.headroom.alone), 1);
  const rating = microamps(Math.max(planned, pedal.startup ?? 0, drawAt(pedal, at)));
  return singleOutputFor(pedal, {
    id: supplyId(`no-such-supply-for-${pedal.id}`),
    name: `one more supply for ${pedal.name}`,
    source: { kind: 'mains', volts: spanOf(policy.mains) },
    setting: { millivolts: at, rating, openCircuit: null },
    otherwise: 'either',
  });
}

/** From the lowest to the highest; null of none. */
export const spanOf = (mains: readonly Millivolts[]): MainsVolts =>
  mains.length === 0 ? null : { from: millivolts(Math.min(...mains)), to: millivolts(Math.max(...mains)) };
