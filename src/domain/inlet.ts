import { nothingMoreStated, type Pedal } from './pedal.js';
import { pedalId, supplyId, type PedalId, type SupplyId } from './quantities.js';
import type { Source } from './source.js';
import type { Supply } from './supply.js';

/** One unit of a supply. */
export type UnitRef = { readonly supply: SupplyId; readonly unit: number };

/** What stands for a unit's inlet where a pedal's id would; no pedal has it, for ids have no spaces. */
export const inletId = ({ supply, unit }: UnitRef): PedalId => pedalId(`${inletMark}${supply} ${unit}`);

const inletMark = 'inlet of ';

/** The unit whose inlet the id stands for; null for that of a pedal. */
export function unitOfInlet(id: PedalId): UnitRef | null {
  if (!isInletId(id)) return null;
  const [supply = '', unit] = id.slice(inletMark.length).split(' ');
  return { supply: supplyId(supply), unit: Number(unit) };
}

export const isInletId = (id: PedalId): boolean => id.startsWith(inletMark);

export type FedSupply = Supply & { readonly source: Extract<Source, { readonly kind: 'fed' }> };

export const isFed = (supply: Supply): supply is FedSupply => supply.source.kind === 'fed';

/** A unit's inlet as a pedal that stands alone on an output and shares its ground with nothing else. */
export const inletPedal = ({ id, name, source: { inlet } }: FedSupply, unit: number): Pedal => ({
  ...nothingMoreStated,
  id: inletId({ supply: id, unit }),
  name: `${name} inlet${unit === 1 ? '' : `, unit ${unit}`}`,
  power: inlet.power,
  polarity: inlet.polarity,
  inlet: inlet.plug,
  ground: 'unknown',
  accepts: inlet.accepts,
  draw: { kind: 'flat', microamps: inlet.microamps },
  startup: inlet.startup,
  alone: true,
});

/** The inlet that an id stands for, as a pedal; null for that of a pedal, and where there is no such fed supply. */
export function inletIn({ supplies }: DescribedSupplies, id: PedalId): Pedal | null {
  const of = unitOfInlet(id);
  const supply = of === null ? undefined : supplies.get(of.supply);
  return of === null || supply === undefined || !isFed(supply) ? null : inletPedal(supply, of.unit);
}

type DescribedSupplies = { readonly supplies: ReadonlyMap<SupplyId, Supply> };
