import type { Board, Catalogue } from '../../domain/board.js';
import { compareExact, scaled } from '../../domain/load.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Purchase } from '../../domain/plan.js';
import type { SupplyId } from '../../domain/quantities.js';
import type { Supply } from '../../domain/supply.js';
import type { Figures } from './comparison.js';
import { goodsOf } from '../goods.js';

/** What a wiring amounts to, besides its score; `idle` is bought and not in use. */
export const figuresOf = (inputs: Inputs, wiring: JudgedPlan, idle: readonly Purchase<SupplyId>[]): Figures => ({
  sockets: wiring.score.bricks,
  spareOutputs: outputsInAll(inputs, wiring, idle) - outputsInUse(wiring),
  tightest: tightestOf(wiring),
});

type Inputs = { readonly board: Board; readonly catalogue: Catalogue };

function outputsInAll(
  { board, catalogue }: Inputs,
  { feeds }: JudgedPlan,
  idle: readonly Purchase<SupplyId>[],
): number {
  const { supplies } = goodsOf(board, catalogue);
  const outputsOf = (id: SupplyId): number => countOutputs(supplies.get(id));
  const inUse = new Map(feeds.map(({ supply, unit }) => [JSON.stringify([supply, unit]), supply]));
  const used = [...inUse.values()].reduce((sum, id) => sum + outputsOf(id), 0);
  return idle.reduce((sum, { id, units }) => sum + units * outputsOf(id), used);
}

const countOutputs = (supply: Supply | undefined): number =>
  supply?.banks.reduce((sum, { outputs }) => sum + outputs, 0) ?? 0;

/** A chain takes one output, a join two. */
const outputsInUse = ({ feeds }: JudgedPlan): number =>
  new Set(feeds.flatMap(({ supply, unit, outputs }) => outputs.map((output) => JSON.stringify([supply, unit, output]))))
    .size;

/** Of outputs that are as tight the first, in the order of the board's pedals. @throws RangeError when nothing is fed. */
function tightestOf({ outlets }: JudgedPlan): Figures['tightest'] {
  const moments = outlets.flatMap(({ place, current, startup }): readonly Figures['tightest'][] => [
    ...(current === null ? [] : [{ place, moment: 'load' as const, numbers: current }]),
    ...(startup === null ? [] : [{ place, moment: 'startup' as const, numbers: startup }]),
  ]);
  const [first, ...others] = moments;
  if (first === undefined) throw new RangeError('a wiring without feeds has no tightest output');
  return others.reduce((most, each) => (isTighter(each, most) ? each : most), first);
}

/** planned / limit > other planned / other limit, exactly. */
function isTighter({ numbers: one }: Figures['tightest'], { numbers: other }: Figures['tightest']): boolean {
  const times = (limit: number) => ({ numerator: limit, denominator: 1 });
  return compareExact(scaled(one.planned, times(other.limit)), scaled(other.planned, times(one.limit))) > 0;
}
