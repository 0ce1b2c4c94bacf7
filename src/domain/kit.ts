import type { Board, Catalogue } from './board.js';
import type { Part } from './part.js';
import type { PartId, PedalId, SupplyId } from './quantities.js';
import { isOfOnePedal } from './source.js';
import type { Bank, Supply } from './supply.js';

/** A board and all that can be used to power it: what its gear and the catalogue describe, brought together once. */
export type Kit = {
  readonly board: Board;
  /** Null for a board that describes all its gear itself: then nothing is for sale. */
  readonly catalogue: Catalogue | null;
  /** By id; the gear first, then the catalogue, each in the order of its file. */
  readonly supplies: ReadonlyMap<SupplyId, Supply>;
  readonly parts: ReadonlyMap<PartId, Part>;
};

export const kitOf = (board: Board, catalogue: Catalogue | null): Kit => ({
  board,
  catalogue,
  supplies: byId([...board.gear.supplies, ...(catalogue?.supplies ?? [])]),
  parts: byId([...board.gear.parts, ...(catalogue?.parts ?? [])]),
});

const byId = <Id, Thing extends { readonly id: Id }>(things: readonly Thing[]): ReadonlyMap<Id, Thing> =>
  new Map(things.map((thing) => [thing.id, thing]));

/** How many of a supply or a part are owned. */
export const ownedOf = ({ board: { owned } }: Kit, { id }: Supply | Part): number =>
  (owned.supplies as ReadonlyMap<string, number>).get(id) ?? (owned.parts as ReadonlyMap<string, number>).get(id) ?? 0;

/** Those of the feeds that are plugged: kept places are not. */
export function pluggedOf<Fed extends { readonly pedal: PedalId }>(
  { board }: Kit,
  feeds: readonly Fed[],
): readonly Fed[] {
  const kept = new Set(board.pedals.filter((pedal) => pedal.kept !== null).map(({ id }) => id));
  return feeds.filter(({ pedal }) => !kept.has(pedal));
}

/** How many of a supply or a part can be bought: 0 without a price, Infinity without a stated stock. */
export const forSaleOf = ({ price, stock }: Pick<Supply | Part, 'price' | 'stock'>): number =>
  price === null ? 0 : (stock ?? Infinity);

/** The bank of an output; undefined when the supply has no such output. */
export const bankOfOutput = ({ banks }: Supply, output: number): Bank | undefined =>
  banks.find(({ firstOutput, outputs }) => firstOutput <= output && output < firstOutput + outputs);

/** The same of a supply by its id; undefined where there is no such supply either. */
export function bankAt({ supplies }: Kit, id: SupplyId, output: number): Bank | undefined {
  const supply = supplies.get(id);
  return supply === undefined ? undefined : bankOfOutput(supply, output);
}

/** Whether it is a supply of one pedal alone, which is right for it: what it came with, or batteries in it. */
export const isOwn = ({ supplies }: Kit, id: SupplyId): boolean => {
  const source = supplies.get(id)?.source;
  return source !== undefined && isOfOnePedal(source);
};

/** The numbers of a bank's outputs, in rising order. */
export const outputsOf = ({ firstOutput, outputs }: Bank): readonly number[] =>
  Array.from({ length: outputs }, (_, at) => firstOutput + at);

/** How many outputs a supply has in all. */
export const countOutputs = ({ banks }: Supply): number => banks.reduce((sum, { outputs }) => sum + outputs, 0);

/** The banks of a feed's outputs, in their order; those that do not exist are left out. */
export function banksOf(
  { supplies }: Kit,
  feed: { readonly supply: SupplyId; readonly outputs: readonly number[] },
): readonly Bank[] {
  const supply = supplies.get(feed.supply);
  return supply === undefined ? [] : feed.outputs.flatMap((output) => bankOfOutput(supply, output) ?? []);
}
