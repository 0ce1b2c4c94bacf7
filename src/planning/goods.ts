import type { Board, Catalogue } from '../domain/board.js';
import type { Part } from '../domain/part.js';
import type { PartId, SupplyId } from '../domain/quantities.js';
import type { Bank, Supply } from '../domain/supply.js';

/** All that the gear and the catalogue describe, by id. */
export type Goods = {
  readonly supplies: ReadonlyMap<SupplyId, Supply>;
  readonly parts: ReadonlyMap<PartId, Part>;
};

export function goodsOf({ gear }: Board, catalogue: Catalogue | null): Goods {
  const byId = <Id, Thing extends { readonly id: Id }>(things: readonly Thing[]) =>
    new Map(things.map((thing) => [thing.id, thing]));
  return {
    supplies: byId([...gear.supplies, ...(catalogue?.supplies ?? [])]),
    parts: byId([...gear.parts, ...(catalogue?.parts ?? [])]),
  };
}

/** The banks of a feed's outputs, in their order; those that do not exist are left out. */
export function banksOf(
  { supplies }: Goods,
  feed: { readonly supply: SupplyId; readonly outputs: readonly number[] },
): readonly Bank[] {
  const supply = supplies.get(feed.supply);
  return supply === undefined ? [] : feed.outputs.flatMap((output) => bankOfOutput(supply, output) ?? []);
}

/** The bank of an output; undefined when the supply has no such output. */
export const bankOfOutput = ({ banks }: Supply, output: number): Bank | undefined =>
  banks.find(({ firstOutput, outputs }) => firstOutput <= output && output < firstOutput + outputs);
