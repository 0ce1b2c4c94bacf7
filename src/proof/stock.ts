import { groupBy } from '../domain/group-by.js';
import type { Board, Catalogue } from '../domain/board.js';
import type { Part } from '../domain/part.js';
import type { ProofApart, ProofSource } from '../domain/proof.js';
import type { PartId, SupplyId } from '../domain/quantities.js';
import type { Supply } from '../domain/supply.js';
import { feedsInlets, inletKey, unitCounts } from './sources.js';

/** One way to come by a thing: so many pieces at a price in minor units; owned ones cost nothing. */
type StockOffer = { readonly pieces: number; readonly price: number };

/** The parts that serve alike: equal in what they fit, give and reverse, and in their role. */
export type StockLeadKind = Pick<Part, 'fits' | 'gives' | 'reverses' | 'role'> & {
  readonly parts: readonly Part[];
  /** Those of them that there are any pieces of. */
  readonly atHand: ReadonlySet<PartId>;
  /** Where pieces come from; none when there is no piece. Pieces may be Infinity. */
  readonly offers: readonly StockOffer[];
};

/** The owned units of a supply, or those that can be bought. */
export type StockGroup = {
  readonly supply: Supply;
  readonly source: ProofSource;
  /** The number of the unit, where it matters what is plugged into it today; null for all the others. */
  readonly unit: number | null;
  /** The number of a unit that is told apart, a group of its own; null for all the others. */
  readonly slot: number | null;
  /** Of one unit, in minor units. */
  readonly price: number;
  /** The most units that any plan can use: a unit in use feeds a pedal, or an inlet where it may. */
  readonly most: number;
};

/** All that can be plugged. */
export type Stock = {
  readonly kinds: readonly StockLeadKind[];
  /** Those of at least one unit. */
  readonly groups: readonly StockGroup[];
  /** Every supply that there is. */
  readonly supplies: ReadonlySet<SupplyId>;
  /** Of which groups units are told apart, and how many. */
  readonly apart: readonly ProofApart[];
};

/** `looksBack`: whether it matters what is plugged into a unit today. */
export function stockOf(board: Board, catalogue: Catalogue, looksBack: boolean): Stock {
  const supplies = [...board.gear.supplies, ...catalogue.supplies];
  const inlets = mostInlets(supplies, board);
  return {
    kinds: leadKinds(board, catalogue),
    groups: supplies.flatMap((supply) => groupsOf(supply, board, looksBack, inlets)),
    supplies: new Set(supplies.map(({ id }) => id)),
    apart: [],
  };
}

/** The most inlets that any plan feeds: each fed unit in use feeds a pedal. */
function mostInlets(supplies: readonly Supply[], { owned, pedals }: Board): number {
  const units = supplies
    .filter((supply) => inletKey(supply) !== null)
    .reduce((sum, supply) => sum + (owned.supplies.get(supply.id) ?? 0) + forSale(supply), 0);
  return Math.min(units, pedals.length);
}

function groupsOf(supply: Supply, board: Board, looksBack: boolean, inlets: number): readonly StockGroup[] {
  const { bricks, sockets } = unitCounts(supply.source);
  const within = (limit: number | null, each: bigint): number => (each > 0n ? (limit ?? Infinity) : Infinity);
  const { policy } = board;
  const useful = board.pedals.length + (feedsInlets(supply.source) ? inlets : 0);
  const most = Math.min(useful, within(policy.bricks, bricks), within(policy.sockets, sockets));
  const inUse = looksBack
    ? [...new Set(board.wiring.flatMap((feed) => (feed.supply === supply.id ? [feed.unit] : [])))]
    : [];
  const others = Math.max(0, (board.owned.supplies.get(supply.id) ?? 0) - inUse.length);
  const owned = { supply, source: 'owned', slot: null, price: 0 } as const;
  const bought = Math.min(most, forSale(supply));
  const groups: readonly StockGroup[] = [
    ...inUse.map((unit) => ({ ...owned, unit, most: Math.min(most, 1) })),
    { ...owned, unit: null, most: Math.min(most, others) },
    { supply, source: 'bought', unit: null, slot: null, price: supply.price ?? 0, most: bought },
  ];
  return groups.filter((group) => group.most > 0);
}

function leadKinds(board: Board, catalogue: Catalogue): readonly StockLeadKind[] {
  const kinds = groupBy([...board.gear.parts, ...catalogue.parts], ({ fits, gives, reverses, role }) => {
    const size = role.kind === 'chain' ? role.tails : role.kind === 'join' ? role.mode : null;
    return JSON.stringify([fits, gives, reverses, role.kind, size]);
  });
  return kinds.map((parts) => {
    const [{ fits, gives, reverses, role }] = parts;
    const offered = parts.map((part) => ({ id: part.id, offers: offersOf(part, board) }));
    const atHand = new Set(offered.flatMap(({ id, offers }) => (offers.length > 0 ? [id] : [])));
    return { fits, gives, reverses, role, parts, atHand, offers: offered.flatMap(({ offers }) => offers) };
  });
}

function offersOf(part: Part, board: Board): readonly StockOffer[] {
  const offers = [
    { pieces: board.owned.parts.get(part.id) ?? 0, price: 0 },
    { pieces: forSale(part), price: part.price ?? 0 },
  ];
  return offers.filter(({ pieces }) => pieces > 0);
}

/** What has no price is not for sale, whatever its stock says. */
const forSale = ({ price, stock }: Supply | Part): number => (price === null ? 0 : (stock ?? Infinity));
