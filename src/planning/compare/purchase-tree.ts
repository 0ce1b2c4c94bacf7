import type { SupplyId } from '../../domain/quantities.js';

/** How many units of each supply are bought; supplies of which there are none are left out. */
export type BoughtUnits = ReadonlyMap<SupplyId, number>;

/** The most units of a supply that may be bought; supplies that are left out have no limit. */
export type PurchaseCaps = ReadonlyMap<SupplyId, number>;

/** The best plan within some caps. */
export type BestWithin<Plan> =
  | { readonly kind: 'plan'; readonly plan: Plan; readonly bought: BoughtUnits }
  | { readonly kind: 'none' }
  /** Nothing was proven in time. */
  | { readonly kind: 'stopped' };

type PurchaseSearch<Plan> = {
  /** A best plan among those that buy no more than the caps allow. */
  readonly solve: (caps: PurchaseCaps) => Promise<BestWithin<Plan>>;
  /** Below zero when the first is better. */
  readonly compare: (first: Plan, second: Plan) => number;
};

type Found<Plan> = Extract<BestWithin<Plan>, { kind: 'plan' }>;
type Node<Plan> = { readonly caps: PurchaseCaps; readonly found: Found<Plan> };

/**
 * Best plans of different purchases, the best first, each with the best wiring for what it buys. A purchase that contains an
 * earlier one is passed over: it would only add to what is as good without it. Ends with `all` when there is no other.
 *
 * A plan that buys all of a purchase Q is ruled out by buying less of one of its supplies. So the plans that are left after Q
 * are those within caps, one below Q in one supply; taken together, these caps leave out nothing else. The best plan within
 * each is found by the ordinary search, and the best of these is the next ("A procedure for computing the k best solutions
 * to discrete optimization problems", 1972, splits the rest after each solution; that the parts may overlap, as in "A theory
 * of diagnosis from first principles", 1987, does no harm, for what is asked of a part is its best plan alone).
 */
export async function* bestPurchases<Plan>(
  buying: PurchaseSearch<Plan>,
): AsyncGenerator<Found<Plan>, 'all' | 'stopped', undefined> {
  const known: Known<Plan> = [];
  let open: readonly Node<Plan>[] = [];
  let waiting: readonly PurchaseCaps[] = [new Map()];
  for (;;) {
    for (const caps of waiting) {
      // What is within wider caps that are open adds nothing.
      if (open.some((node) => isWithin(caps, node.caps))) continue;
      const solved = await solvedOnce(caps, buying, known);
      if (solved.kind === 'stopped') return 'stopped';
      if (solved.kind === 'plan') open = [...open, { caps, found: solved }];
    }
    const best = open.reduce<Found<Plan> | null>(
      (least, { found }) => (least !== null && buying.compare(least.plan, found.plan) <= 0 ? least : found),
      null,
    );
    if (best === null) return 'all';
    yield best;
    const holding = open.filter(({ caps }) => allows(caps, best.bought));
    open = open.filter((node) => !holding.includes(node));
    waiting = holding.flatMap(({ caps }) => [...best.bought].map(([id, units]) => new Map([...caps, [id, units - 1]])));
  }
}

/** What has been solved so far. */
type Known<Plan> = { readonly caps: PurchaseCaps; readonly solved: BestWithin<Plan> }[];

/** Tighter caps that leave a best plan in have the same one; where there was no plan, there is none. */
async function solvedOnce<Plan>(
  caps: PurchaseCaps,
  { solve }: PurchaseSearch<Plan>,
  known: Known<Plan>,
): Promise<BestWithin<Plan>> {
  const same = known.find(
    (each) => isWithin(caps, each.caps) && (each.solved.kind === 'none' || stillAllowed(caps, each.solved)),
  );
  if (same !== undefined) return same.solved;
  const solved = await solve(caps);
  known.push({ caps, solved });
  return solved;
}

const stillAllowed = <Plan>(caps: PurchaseCaps, solved: BestWithin<Plan>): boolean =>
  solved.kind === 'plan' && allows(caps, solved.bought);

/** Whether all of a purchase can be bought. */
const allows = (caps: PurchaseCaps, bought: BoughtUnits): boolean =>
  [...bought].every(([id, units]) => units <= capOf(caps, id));

/** Whether everything that the caps allow is allowed by the wider ones, too. */
const isWithin = (caps: PurchaseCaps, wider: PurchaseCaps): boolean =>
  [...wider].every(([id, most]) => capOf(caps, id) <= most);

const capOf = (caps: PurchaseCaps, id: SupplyId): number => caps.get(id) ?? Infinity;
