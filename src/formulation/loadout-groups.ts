import { pedalsOf, type Bench } from '../loadout/bench.js';
import { feedable, type SupplyUses } from '../loadout/supply-uses.js';

/** Owned or bought units of one supply: one that is told apart from the others, by its number from 1, or all the rest. */
export type UnitGroup = {
  readonly uses: SupplyUses;
  readonly owned: boolean;
  readonly price: number;
  readonly slot: number | null;
  readonly most: number;
  /** Fewer than there are pedals that a unit could feed: more units than that are of no use anyway. */
  readonly scarce: boolean;
};

/** How many units are told apart, by supply, of the owned and of the bought ones. */
export type Slots = ReadonlyMap<string, number>;

export const slotKey = ({ uses, owned }: Pick<UnitGroup, 'uses' | 'owned'>): string =>
  `${owned ? 'owned' : 'bought'} ${uses.supply.id}${uses.unit === null ? '' : ` ${uses.unit}`}`;

/** The groups of one supply. */
export function groupsOf(uses: SupplyUses, slots: Slots, bench: Bench): readonly UnitGroup[] {
  const useful = pedalsOf(feedable(uses), bench);
  return [true, false].flatMap((owned): UnitGroup[] => {
    const most = Math.min(owned ? uses.owned : uses.forSale, useful);
    const kind = { uses, owned, price: owned ? 0 : (uses.supply.price ?? 0) };
    const apart = Math.min(slots.get(slotKey(kind)) ?? 0, most);
    const single = Array.from({ length: apart }, (_, index) => ({ ...kind, slot: index + 1, most: 1, scarce: true }));
    return most > apart
      ? [...single, { ...kind, slot: null, most: most - apart, scarce: most - apart < useful }]
      : single;
  });
}
