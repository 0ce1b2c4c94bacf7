import { pedalsOf, type Bench } from '../loadout/bench.js';
import { feedable, type SupplyUses } from '../loadout/supply-uses.js';

/** Owned or bought units of one supply: one of those that are told apart, by its number from 1, or all of them. */
export type UnitGroup = {
  readonly uses: SupplyUses;
  readonly owned: boolean;
  readonly price: number;
  readonly slot: number | null;
  readonly most: number;
  /** Fewer than there are pedals that a unit could feed: more units than that are of no use anyway. */
  readonly scarce: boolean;
};

/** Of which supplies the units are told apart, of the owned ones or the bought ones. */
export type ToldApart = ReadonlySet<string>;

export const kindKey = ({ uses, owned }: Pick<UnitGroup, 'uses' | 'owned'>): string =>
  `${owned ? 'owned' : 'bought'} ${uses.supply.id}${uses.unit === null ? '' : ` ${uses.unit}`}`;

/** The groups of one supply. */
export function groupsOf(uses: SupplyUses, apart: ToldApart, bench: Bench): readonly UnitGroup[] {
  const useful = pedalsOf(feedable(uses), bench);
  const groups: UnitGroup[] = [];
  for (const owned of [true, false]) {
    const most = Math.min(owned ? uses.owned : uses.forSale, useful);
    const price = owned ? 0 : (uses.supply.price ?? 0);
    if (apart.has(kindKey({ uses, owned })))
      for (let slot = 1; slot <= most; slot += 1) groups.push({ uses, owned, price, slot, most: 1, scarce: true });
    else if (most > 0) groups.push({ uses, owned, price, slot: null, most, scarce: most < useful });
  }
  return groups;
}
