import type { Board, Catalogue, Policy } from '../domain/board.js';
import { mostCarriedBy, type MostCarried } from './unit/most-carried.js';
import { classesOf, type AlikePedals } from './unit/pedal-class.js';
import { routesOver, type Routes } from './unit/routes.js';
import type { UnitShape } from './unit/shape.js';
import { unitShape } from './unit/unit-shape.js';
import { inletSorts, type InletSort } from './inlets.js';
import type { Measure } from './measure.js';
import { wayStart } from './sources.js';
import { stockOf, type StockGroup, type Stock } from './stock.js';
import type { Standing } from './today.js';

/** What is judged, and what a proof may build on: the same for all steps. */
export type ProofGround = {
  readonly board: Board;
  readonly partial: boolean;
  readonly stock: Stock;
  /** The pedals', then the inlets'. */
  readonly classes: readonly AlikePedals[];
  readonly inlets: readonly InletSort[];
  readonly routes: Routes;
  /** By group; null for one whose units can carry nothing. Groups that carry alike share it. */
  readonly carriers: ReadonlyMap<StockGroup, MostCarried>;
  readonly limits: Pick<Policy, 'bricks' | 'sockets' | 'budget'>;
};

/** What one step claims: every plan that keeps to the earlier steps has a number of at least `value`. */
export type StepClaim = ProofGround & {
  readonly scale: bigint;
  readonly value: bigint;
  /** The greatest number below that one that a plan can have at all. */
  readonly below: bigint;
  readonly measure: Measure;
  readonly earlier: readonly { readonly measure: Measure; readonly value: bigint }[];
};

/** `standings`: how each pedal is plugged today, where plans are compared with that; else null. */
export function groundOf(
  board: Board,
  catalogue: Catalogue,
  partial: boolean,
  standings: readonly Standing[] | null,
): ProofGround {
  const stock = stockOf(board, catalogue, standings !== null);
  const inlets = inletSorts(stock.groups, board.pedals.length);
  const classes = [...classesOf(board.pedals, standings ?? undefined), ...inlets.classes];
  const routes = routesOver(stock.kinds);
  const carriers = carriersOf(board, stock, classes, routes);
  return {
    board,
    partial,
    stock: { ...stock, groups: [...carriers.keys()] },
    classes,
    inlets: inlets.sorts,
    routes,
    carriers,
    limits: board.policy,
  };
}

function carriersOf(
  board: Board,
  { groups, kinds }: Stock,
  classes: readonly AlikePedals[],
  routes: Routes,
): ReadonlyMap<StockGroup, MostCarried> {
  const bench = { policy: board.policy, classes, kinds, routes };
  const known = new Map<string, Known | null>();
  const carriers = new Map<StockGroup, MostCarried>();
  for (const group of groups) {
    const { id, source, total, banks } = group.supply;
    // Units that something is plugged into carry like no others, and so does what belongs to one pedal.
    const isLikeOthers = group.unit === null && wayStart(source) === 'plug';
    const key = JSON.stringify([source, total, banks, isLikeOthers ? null : [id, group.unit]]);
    let found = known.get(key);
    if (found === undefined) {
      const shape = unitShape(group.supply, group.unit, bench);
      found = shape === null ? null : { carrier: mostCarriedBy(shape, classes), feedable: feedableBy(shape, classes) };
      known.set(key, found);
    }
    // Every unit in use feeds a pedal of its own, or an inlet.
    if (found !== null) carriers.set({ ...group, most: Math.min(group.most, found.feedable) }, found.carrier);
  }
  return carriers;
}

type Known = { readonly carrier: MostCarried; readonly feedable: number };

/** How many pedals and inlets a unit could feed, one at a time. */
function feedableBy({ places, chains }: UnitShape, classes: readonly AlikePedals[]): number {
  const fed = new Set([...places, ...chains.flatMap(({ links }) => links)].map(({ pedal }) => pedal));
  return [...fed].reduce((sum, pedal) => sum + (classes[pedal]?.members.length ?? 0), 0);
}
