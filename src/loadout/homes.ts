import { gathered } from '../../solver/gathered.js';
import type { Bench } from './bench.js';
import { matchesBerth } from './berth-match.js';
import type { PedalClass } from './pedal-class.js';
import { voltsOf } from './solo-uses.js';
import type { SupplyUses } from './supply-uses.js';
import type { Berth } from './today.js';
import type { ChainPool, SoloUse } from './uses.js';

/**
 * Today's outputs of a unit, as far as pedals can stay there. What is plugged alone can stay on any output of its bank at its
 * volts, and a chain goes on as one chain of its bank, each at most once: so an output that only one pedal has today
 * needs no watching, and one that several have goes on as one thing.
 */
export type Homes = {
  /** By the number of an output: how many pedals have it today. */
  readonly residents: ReadonlyMap<number, number>;
  /** The outputs that several pedals have today. */
  readonly shared: readonly number[];
};

/** The outputs of today that go on as something, and whether a pedal that has them is spared the move. */
export type Going = { readonly outputs: readonly number[]; readonly moved: 0 | 1 };

type OneUnit = Pick<SupplyUses, 'supply' | 'unit'>;

const nobodys: Homes = { residents: new Map(), shared: [] };

/** What is plugged into the unit today; nothing into one that is like all others. */
export function homesOf(uses: OneUnit, bench: Bench): Homes {
  if (uses.unit === null) return nobodys;
  const residents = new Map<number, number>();
  for (const { berth, members } of bench.classes) {
    if (!isHere(berth, uses)) continue;
    for (const output of berth.outputs) residents.set(output, (residents.get(output) ?? 0) + members.length);
  }
  return { residents, shared: gathered([...residents], ([output, count]) => (count > 1 ? [output] : [])) };
}

const isHere = (berth: Berth | null, { supply, unit }: OneUnit): berth is Berth =>
  berth !== null && unit !== null && berth.supply === supply.id && berth.unit === unit;

/**
 * As what a pedal by itself can hang there: it stays, or is moved. Who must stay cannot be moved, and nobody need be who takes nothing
 * from others by staying.
 */
export function waysToGoOn(use: SoloUse, uses: SupplyUses, bench: Bench, { shared }: Homes): readonly Going[] {
  const { berth, pinned } = classOf(use.pedal, bench);
  if (berth === null) return [{ outputs: [], moved: 0 }];
  const moving: readonly Going[] = pinned ? [] : [{ outputs: [], moved: 1 }];
  if (!isHere(berth, uses) || !matchesBerth(berth, uses.supply, use.outputs, voltsOf(use, uses.supply))) return moving;
  const staying: Going = { outputs: berth.outputs, moved: 0 };
  return berth.outputs.some((output) => shared.includes(output)) ? [staying, ...moving] : [staying];
}

/** The outputs of today as which a chain of the pool can go on, in rising order. */
export function homesOfChains(pool: ChainPool, uses: SupplyUses, bench: Bench): readonly number[] {
  if (uses.unit === null) return [];
  const homes = pool.places.flatMap(({ pedal }) => homeIn(pool, classOf(pedal, bench).berth, uses) ?? []);
  return [...new Set(homes)].sort((a, b) => a - b);
}

/** The output that a pedal would keep on a chain of the pool; null where it keeps none. */
function homeIn({ output }: ChainPool, berth: Berth | null, uses: SupplyUses): number | null {
  const volts = voltsOf({ outputs: [output], join: null }, uses.supply);
  return isHere(berth, uses) && matchesBerth(berth, uses.supply, [output], volts) ? (berth.outputs[0] ?? null) : null;
}

/** A chain of a pool that goes on as an output of today; as none where it is null. */
type GoingChain = { readonly pool: ChainPool; readonly home: number | null; readonly uses: SupplyUses };

/** Whether a pedal of the class is moved by joining the chain; null where it must not. */
export function movedBy(pedal: number, { pool, home, uses }: GoingChain, bench: Bench): 0 | 1 | null {
  const { berth, pinned } = classOf(pedal, bench);
  if (berth === null || (home !== null && homeIn(pool, berth, uses) === home)) return 0;
  return pinned ? null : 1;
}

function classOf(pedal: number, { classes }: Bench): Pick<PedalClass, 'berth' | 'pinned'> {
  const found = classes[pedal];
  if (found === undefined) throw new RangeError(`there is no pedal class ${pedal}`);
  return found;
}
