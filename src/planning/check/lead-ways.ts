import { polarities, type Pedal, type Polarity } from '../../domain/pedal.js';
import type { PartId } from '../../domain/quantities.js';
import { addBills, compareBills, noBill, type Bill, type LeadShape } from './lead-pieces.js';

/** What stands at the plug that adapters go on; null for AC. */
export type OutputExit = { readonly plug: string; readonly polarity: Polarity | null };

/** The adapters of every pedal, in the order of the pedals, and what they cost. */
type LeadWays = { readonly adapters: readonly (readonly PartId[])[]; readonly bill: Bill };

/** A way is a list of at most two adapters, from the supply's side to the pedal's. */
type Way = readonly LeadShape[];

/** The most steps of a search; only a scarcity of leads in a long chain can take so many. */
const mostSteps = 20_000;

/**
 * The cheapest ways from one plug to all these pedals at once, as they share what leads there are. A pedal that none leads to
 * gets one that at least fits, or none, for the audit to say what is wrong with it.
 */
export function cheapestWays(exit: OutputExit, pedals: readonly Pedal[], shapes: readonly LeadShape[]): LeadWays {
  const choices = pedals.map((pedal) => waysTo(exit, pedal, shapes));
  const least = choices.map((ways) => ways.map((way) => billOf(way, new Map())).reduce(smaller));
  const leastFrom = choices.map((_, index) => least.slice(index).reduce(addBills, noBill));
  const found: { best: Chosen | null } = { best: null };
  let steps = 0;
  const search = (chosen: readonly Way[], taken: Taken, bill: Bill): void => {
    const bound = addBills(bill, leastFrom[chosen.length] ?? noBill);
    if (found.best !== null && (steps > mostSteps || compareBills(bound, found.best.bill) >= 0)) return;
    const ways = choices[chosen.length];
    if (ways === undefined) {
      found.best = { chosen, bill };
      return;
    }
    for (const way of cheapestFirst(ways, taken)) {
      steps += 1;
      search([...chosen, way], taking(way, taken), addBills(bill, billOf(way, taken)));
    }
  };
  search([], new Map(), noBill);
  return dealtOut(found.best ?? { chosen: [], bill: noBill });
}

type Chosen = { readonly chosen: readonly Way[]; readonly bill: Bill };

/** How many pieces of a shape are taken. */
type Taken = ReadonlyMap<LeadShape, number>;

function taking(way: Way, taken: Taken): Taken {
  const more = new Map(taken);
  for (const shape of way) more.set(shape, (more.get(shape) ?? 0) + 1);
  return more;
}

/** What the next pieces of the way's shapes cost. */
function billOf(way: Way, taken: Taken): Bill {
  let bill = noBill;
  way.forEach((shape, index) => {
    const before = (taken.get(shape) ?? 0) + way.slice(0, index).filter((other) => other === shape).length;
    bill = addBills(bill, shape.pieces[before]?.bill ?? { lacking: 1, money: 0, pieces: 1 });
  });
  return bill;
}

const smaller = (first: Bill, second: Bill): Bill => (compareBills(second, first) < 0 ? second : first);

const cheapestFirst = (ways: readonly Way[], taken: Taken): readonly Way[] =>
  ways
    .map((way) => ({ way, bill: billOf(way, taken) }))
    .sort((first, second) => compareBills(first.bill, second.bill))
    .map(({ way }) => way);

/** The pieces in the order in which they were counted. */
function dealtOut({ chosen, bill }: Chosen): LeadWays {
  const taken = new Map<LeadShape, number>();
  const next = (shape: LeadShape): readonly PartId[] => {
    const at = taken.get(shape) ?? 0;
    taken.set(shape, at + 1);
    const piece = shape.pieces[at] ?? shape.pieces.at(-1);
    return piece === undefined ? [] : [piece.part.id];
  };
  return { adapters: chosen.map((way) => way.flatMap(next)), bill };
}

/** At least one way; those that take the leads of another one and more are left out. */
function waysTo(exit: OutputExit, pedal: Pedal, shapes: readonly LeadShape[]): readonly Way[] {
  if (pedal.polarity === 'unknown') return waysForEither(exit, pedal, shapes);
  const right = waysThat((way) => reaches(exit, way, pedal, true), exit, shapes);
  if (right.length > 0) return right;
  const fitting = waysThat((way) => reaches(exit, way, pedal, false), exit, shapes);
  return fitting.length > 0 ? fitting : [[]];
}

/** What it takes to be right for either polarity. */
function waysForEither(exit: OutputExit, pedal: Pedal, shapes: readonly LeadShape[]): readonly Way[] {
  const [minus = [], plus = []] = polarities.map((polarity) => waysTo(exit, { ...pedal, polarity }, shapes));
  return minus.flatMap((one) => plus.map((other) => [...one, ...beyond(other, one)]));
}

/** What of the one way is not in the other. */
function beyond(way: Way, other: Way): Way {
  const left = [...other];
  return way.filter((shape) => {
    const at = left.indexOf(shape);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

function waysThat(isRight: (way: Way) => boolean, { plug }: OutputExit, shapes: readonly LeadShape[]): readonly Way[] {
  if (isRight([])) return [[]];
  const starts = shapes.filter(({ fits }) => fits === plug);
  const single = starts.filter((shape) => isRight([shape]));
  const double = starts.flatMap((first) =>
    single.includes(first)
      ? []
      : shapes
          .filter((second) => !single.includes(second) && isRight([first, second]))
          .map((second) => [first, second]),
  );
  return [...single.map((shape) => [shape]), ...double];
}

/** Whether the plugs fit from the exit to the inlet and, where it counts, plus and minus come out right. */
function reaches(exit: OutputExit, way: Way, pedal: Pedal, polarityCounts: boolean): boolean {
  let offered = exit.plug;
  for (const { fits, gives } of way) {
    if (fits !== offered) return false;
    offered = gives;
  }
  if (offered !== pedal.inlet) return false;
  if (!polarityCounts || exit.polarity === null || pedal.polarity === null) return true;
  const isReversed = way.filter(({ reverses }) => reverses).length % 2 === 1;
  return (exit.polarity === pedal.polarity) !== isReversed;
}
