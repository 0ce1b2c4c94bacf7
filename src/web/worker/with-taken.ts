import { withBoard } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { AssumedOfSupply, Supply } from '../../domain/supply.js';
import type { PageDocument } from '../document/page-document.js';

/** The kit in which what was taken of typed supplies is to be confirmed, as what a shop assumes of its own is. */
export function withTaken(kit: Kit, taken: PageDocument['taken']): Kit {
  const { gear } = kit.board;
  if (!gear.supplies.some(({ id }) => (taken[id] ?? []).length > 0)) return kit;
  const supplies = gear.supplies.map((supply) => ({
    ...supply,
    assumed: { ...supply.assumed, ...assumedOf(supply, taken[supply.id] ?? []) },
  }));
  return withBoard(kit, { ...kit.board, gear: { ...gear, supplies } });
}

/** A supply is typed with one plug and one polarity for all its outputs. */
function assumedOf({ banks }: Supply, taken: PageDocument['taken'][string]): AssumedOfSupply {
  const plug = banks[0]?.plug;
  const polarity = banks.find((bank) => bank.power === 'DC')?.polarity;
  return {
    ...(taken.includes('plug') && plug !== undefined ? { plug } : {}),
    ...(taken.includes('polarity') && polarity !== undefined && polarity !== null ? { polarity } : {}),
    ...(taken.includes('regulated') ? { regulated: true } : {}),
  };
}
