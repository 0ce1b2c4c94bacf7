import { withBoard } from '../../domain/changed-kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Kit } from '../../domain/kit.js';
import type { Pedal } from '../../domain/pedal.js';
import type { Answer } from '../answer.js';
import { rewire } from '../rewire/rewire.js';
import { withPedals } from './extra-pedal.js';
import { effortOf, type SearchOptions } from '../asking/search-options.js';
import { basisOf, type Basis, type NoBasis } from './spare.js';

export type Added = {
  readonly kind: 'added';
  readonly of: Basis['of'];
  /** Without the pedal: how the board is plugged, or the best plan, of which all counts as there. */
  readonly wiring: JudgedPlan;
  readonly pedal: Pedal;
  /** With the pedal on the board, plugged as the file says and with all in use, there or in the plan, owned; nothing is for sale. */
  readonly kit: Kit;
  /** How it is re-plugged with the pedal, nothing bought and as little moved as can be; or why that is impossible. */
  readonly answer: Answer;
  /** Where it is impossible: the answer when things may be bought; null where there is no shop. */
  readonly bought: { readonly kit: Kit; readonly answer: Answer } | null;
};

/**
 * Whether one more pedal can be fed, and with which moves. Its id is none of the board's.
 * @throws Error when a plan fails its own audit: a defect of boardfeed, never of the input.
 */
export async function addPedal(kit: Kit, pedal: Pedal, options: SearchOptions = {}): Promise<Added | NoBasis> {
  const basis = await basisOf(kit, effortOf(options));
  if (basis.kind !== 'basis') return basis;
  const { installed, of } = basis;
  // Where only a plan has a place for every pedal, what moves is told of how the board is plugged all the same.
  const { wiring, inlets } = (of === 'plan' ? kit : installed.kit).board;
  const more = { ...withPedals(installed.kit.board, [pedal]), wiring, inlets };
  const plugged = withBoard(installed.kit, more);
  const answer = await rewire(plugged, options);
  const isOut = answer.kind === 'impossible' && kit.catalogue !== null;
  const shop = withBoard(kit, { ...more, gear: kit.board.gear });
  const bought = isOut ? { kit: shop, answer: await rewire(shop, options) } : null;
  return { kind: 'added', of, wiring: installed.wiring, pedal, kit: plugged, answer, bought };
}
