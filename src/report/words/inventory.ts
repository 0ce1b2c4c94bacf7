import { bankOfOutput, type Kit } from '../../domain/kit.js';
import type { Board } from '../../domain/board.js';
import { inletIn } from '../../domain/inlet.js';
import type { BatterySource } from '../../domain/own-battery.js';
import type { Part } from '../../domain/part.js';
import type { Kept, Pedal } from '../../domain/pedal.js';
import { feedMillivolts, type Feed, type Place } from '../../domain/plan.js';
import type { PartId, PedalId, SupplyId } from '../../domain/quantities.js';
import { isOfOnePedal } from '../../domain/source.js';
import type { Bank, Supply } from '../../domain/supply.js';
import { inTrade } from './connector-words.js';
import { safeText } from './safe-text.js';
import { voltsText } from './words.js';

/** Everything that a plan may speak of, by id, with names that are safe to print. */
export type Inventory = {
  readonly pedal: (id: PedalId) => Pedal;
  readonly supply: (id: SupplyId) => Supply;
  readonly part: (id: PartId) => Part;
  /** The name; with the id behind it where two things share one name, and with why its place is only kept. Inlets have one. */
  readonly pedalName: (id: PedalId) => string;
  readonly supplyName: (id: SupplyId) => string;
  readonly partName: (id: PartId) => string;
  /** "6 × Penlight cell" for a set of batteries. */
  readonly batteriesName: (set: BatterySource) => string;
  /** All supplies, the board's own gear first. */
  readonly supplies: readonly Supply[];
};

/** `times` is the sign between how many and what. */
export function inventoryOf(kit: Kit, times = '×'): Inventory {
  const { board } = kit;
  const supplies = [...kit.supplies.values()];
  const parts = [...kit.parts.values()];
  const pedal = finder(new Map(board.pedals.map((each) => [each.id, each])), 'pedal');
  const pedalName = withKept(namer(board.pedals), board.pedals);
  const [nameOf, partNamed] = [namer(supplies), namer(parts)];
  // No file has ids with blanks: what is only looked for is named by its plugs.
  const partName = (id: PartId): string => (id.includes(' ') ? inTrade(partNamed(id)) : partNamed(id));
  const setName = ({ battery, count }: BatterySource): string => `${count} ${times} ${partName(battery)}`;
  return {
    pedal: (id) => inletIn(kit, id) ?? pedal(id),
    supply: finder(kit.supplies, 'supply'),
    part: finder(kit.parts, 'part'),
    pedalName: (id) => {
      const inlet = inletIn(kit, id);
      return inlet === null ? pedalName(id) : safeText(inlet.name);
    },
    supplyName: (id) => {
      const batteries = sourceOf(kit, id);
      return batteries === null ? nameOf(id) : `${setName(batteries)} in ${pedalName(batteries.pedal)}`;
    },
    partName,
    batteriesName: setName,
    supplies,
  };
}

/** The bank of an output number. @throws RangeError when the supply has no such output. */
export function bankOf(supply: Supply, output: number): Bank {
  const bank = bankOfOutput(supply, output);
  if (bank === undefined) throw new RangeError(`${supply.id} has no output ${output}`);
  return bank;
}

/** The bank of a feed's first output; both outputs of a join agree in power, plug and polarity. */
export const firstBankOf = (supply: Supply, feed: Feed): Bank => bankOf(supply, feed.outputs[0] ?? 0);

/** Whether a pedal is fed by what is its alone and right for it: the adapter that it came with, or batteries in it. */
export const isFedByOwn = (inventory: Inventory, { supply }: Pick<Feed, 'supply'>): boolean =>
  inventory.supplies.some(({ id, source }) => id === supply && isOfOnePedal(source));

/** The batteries that a pedal runs on; null where it runs on none. */
export function batteriesOf(inventory: Inventory, { supply }: Pick<Feed, 'supply'>): BatterySource | null {
  const { source } = inventory.supply(supply);
  return source.kind === 'battery' ? source : null;
}

function sourceOf({ supplies }: Kit, id: SupplyId): BatterySource | null {
  const source = supplies.get(id)?.source;
  return source?.kind === 'battery' ? source : null;
}

/** "9 V", or "its own" of a pedal that is fed by what it came with. */
export const givenText = (inventory: Inventory, feed: Feed): string =>
  isFedByOwn(inventory, feed) ? 'its own' : voltsText(feedMillivolts(feed));

/** One unit of a supply. */
export type SupplyUnit = Pick<Place, 'supply' | 'unit'>;

/** The units that are owned, in use or not. */
export const ownedUnitsOf = ({ owned }: Board): readonly SupplyUnit[] =>
  [...owned.supplies].flatMap(([supply, units]) =>
    Array.from({ length: units }, (_, at) => ({ supply, unit: at + 1 })),
  );

/** A supply's name, with the unit's number where it could be mixed up with another one of these units. */
export function unitName(inventory: Inventory, units: readonly SupplyUnit[], { supply, unit }: SupplyUnit): string {
  const several = units.some((other) => other.supply === supply && other.unit !== unit);
  return `${inventory.supplyName(supply)}${several || unit > 1 ? `, unit ${unit}` : ''}`;
}

/** What is said of a pedal whose place is kept, wherever it is named. */
const keptNote: Readonly<Record<Kept, string>> = {
  later: 'bought later',
  unread: 'label unread',
  spare: 'place kept',
};

function withKept(nameOf: (id: PedalId) => string, pedals: readonly Pedal[]): (id: PedalId) => string {
  const kept = new Map(pedals.map((pedal) => [pedal.id, pedal.kept]));
  return (id) => {
    const why = kept.get(id) ?? null;
    return why === null ? nameOf(id) : `${nameOf(id)} (${keptNote[why]})`;
  };
}

type Named<Id> = { readonly id: Id; readonly name: string };

function finder<Id extends string, Thing>(things: ReadonlyMap<Id, Thing>, kind: string): (id: Id) => Thing {
  return (id) => {
    const thing = things.get(id);
    if (thing === undefined) throw new RangeError(`the plan speaks of a ${kind} that is not in the input: ${id}`);
    return thing;
  };
}

function namer<Id extends string>(things: readonly Named<Id>[]): (id: Id) => string {
  const names = new Map(things.map(({ id, name }) => [id, name]));
  const uses = new Map<string, number>();
  for (const name of names.values()) uses.set(name, (uses.get(name) ?? 0) + 1);
  return (id) => {
    const name = names.get(id);
    if (name === undefined) return safeText(id);
    return safeText((uses.get(name) ?? 0) > 1 ? `${name} (${id})` : name);
  };
}
