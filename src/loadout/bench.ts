import type { Pedal } from '../domain/pedal.js';
import type { Policy } from '../domain/board.js';
import type { ChainExits } from './chain-exits.js';
import type { GroundMode } from './ground-mode.js';
import type { LeadKind } from './lead-kinds.js';
import type { PedalClass } from './pedal-class.js';
import type { Router } from './routes.js';

/** What a board brings to every supply: its policy, pedals and leads. */
export type Bench = {
  readonly policy: Policy;
  readonly classes: readonly PedalClass[];
  readonly modes: readonly GroundMode[];
  readonly kinds: readonly LeadKind[];
  readonly routes: Router;
  readonly chainExits: ChainExits;
};

/** A pedal that stands for all of its class. @throws RangeError when there is no such class. */
export function likeOf(pedal: number, bench: Pick<Bench, 'classes'>): Pedal {
  const like = bench.classes[pedal]?.like;
  if (like === undefined) throw new RangeError(`there is no pedal class ${pedal}`);
  return like;
}

/** How many pedals or inlets there are of some classes, each named once. */
export const pedalsOf = (classes: Iterable<number>, bench: Bench): number =>
  [...classes].reduce((sum, pedal) => sum + (bench.classes[pedal]?.members.length ?? 0), 0);

/** How many pedals there are in all, without inlets. */
export const allPedals = ({ classes }: Bench): number => countOf(classes.filter(({ inlet }) => inlet === null));

/** The most inlets that a plan can feed: every fed unit in use feeds a pedal. */
export const mostInlets = (bench: Bench): number =>
  Math.min(allPedals(bench), countOf(bench.classes.filter(({ inlet }) => inlet !== null)));

/** The most units that can be in use: each feeds a pedal or an inlet. */
export const mostUnits = (bench: Bench): number => allPedals(bench) + mostInlets(bench);

const countOf = (classes: Bench['classes']): number => classes.reduce((sum, { members }) => sum + members.length, 0);
