import { isInletId } from '../../domain/inlet.js';
import { countOutputs, outputsOf, type Kit } from '../../domain/kit.js';
import { compareExact, scaled } from '../../domain/load.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Purchase } from '../../domain/plan.js';
import type { PedalId, SupplyId } from '../../domain/quantities.js';
import type { Figures, Tightest } from './comparison.js';

/** What a wiring amounts to, besides its score; `idle` is bought and not in use. */
export const figuresOf = (kit: Kit, wiring: JudgedPlan, idle: readonly Purchase<SupplyId>[]): Figures => ({
  sockets: wiring.sockets,
  spareOutputs: outputsInAll(kit, wiring, idle) - outputsTaken(kit, wiring),
  tightest: tightestOf(wiring),
});

function outputsInAll({ supplies }: Kit, plan: JudgedPlan, idle: readonly Purchase<SupplyId>[]): number {
  const countOf = (id: SupplyId): number => {
    const supply = supplies.get(id);
    return supply === undefined ? 0 : countOutputs(supply);
  };
  const inUse = new Map(everyFeed(plan).map(({ supply, unit }) => [JSON.stringify([supply, unit]), supply]));
  const used = [...inUse.values()].reduce((sum, id) => sum + countOf(id), 0);
  return idle.reduce((sum, { id, units }) => sum + units * countOf(id), used);
}

/**
 * A chain takes one output, a join two, the inlet of a fed supply one; an inlet and a pedal of unknown ground take all outputs of
 * the common ground that they hang on.
 */
const outputsTaken = (kit: Kit, plan: JudgedPlan): number => {
  const used = everyFeed(plan).flatMap(({ supply, unit, outputs }) => outputs.map((output) => [supply, unit, output]));
  const held = plan.grounds
    .filter(({ outputs, pedals }) => outputs === null && pedals.some((pedal) => sharesWithNobody(kit, pedal)))
    .flatMap(({ supply, unit }) => onCommonGround(kit, supply).map((output) => [supply, unit, output]));
  return new Set([...used, ...held].map((output) => JSON.stringify(output))).size;
};

const sharesWithNobody = ({ board }: Kit, id: PedalId): boolean =>
  isInletId(id) || board.pedals.some((pedal) => pedal.id === id && pedal.ground === 'unknown');

const onCommonGround = ({ supplies }: Kit, id: SupplyId): readonly number[] =>
  (supplies.get(id)?.banks ?? []).filter(({ isolated }) => !isolated).flatMap(outputsOf);

/** Of outputs that are as tight the first, in the order of the board's pedals. */
function tightestOf({ outlets }: JudgedPlan): Tightest | null {
  const moments = outlets.flatMap(({ place, current, startup }): readonly Tightest[] => [
    ...(current === null ? [] : [{ place, moment: 'load' as const, numbers: current }]),
    ...(startup === null ? [] : [{ place, moment: 'startup' as const, numbers: startup }]),
  ]);
  return moments.reduce<Tightest | null>((most, each) => (most === null || isTighter(each, most) ? each : most), null);
}

/** planned / limit > other planned / other limit, exactly. */
function isTighter({ numbers: one }: Tightest, { numbers: other }: Tightest): boolean {
  const times = (limit: number) => ({ numerator: limit, denominator: 1 });
  return compareExact(scaled(one.planned, times(other.limit)), scaled(other.planned, times(one.limit))) > 0;
}
