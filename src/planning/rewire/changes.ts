import type { Kit } from '../../domain/kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import { everyFeed, type Feed } from '../../domain/plan.js';
import type { PartId, PedalId } from '../../domain/quantities.js';
import type { TodaysWiring } from '../today/todays-wiring.js';
import { partsInUse } from '../today/parts-in-use.js';
import { moveReason, type MoveReason } from './move-reasons.js';
import { isSamePlace } from './places.js';
import { stepsBetween, type ReplugStep } from './steps.js';

/** A pedal that is plugged in today, and elsewhere or at other volts in the plan. */
export type Move = { readonly from: Feed; readonly to: Feed; readonly reason: MoveReason };

/** What a plan changes of how the board is plugged today; all lists stand in the order of the board. */
export type Changes = {
  /** The pedals that keep their unit, their outputs and their volts. */
  readonly stays: readonly PedalId[];
  /** Of these the ones that get other leads, or a join set in another way. */
  readonly releads: readonly PedalId[];
  readonly moves: readonly Move[];
  /** The pedals that are powered and are not plugged in today. */
  readonly added: readonly PedalId[];
  /** The pedals that are plugged in today and are left without power. */
  readonly dropped: readonly PedalId[];
  /** What there is to do, in this order; empty when today's wiring is the plan. */
  readonly steps: readonly ReplugStep[];
  /** The parts that hang on the board today and are not among the owned ones. */
  readonly unlisted: readonly { readonly part: PartId; readonly units: number }[];
};

/** How to come from today's wiring to the plan, and why. The plan keeps every hard rule. */
export function changesOf(kit: Kit, today: TodaysWiring, wiring: JudgedPlan): Changes {
  const before = new Map(today.feeds.map((feed) => [feed.pedal, feed]));
  const pairs = wiring.feeds.flatMap((to) => {
    const from = before.get(to.pedal);
    return from === undefined ? [] : [{ from, to }];
  });
  const { steps, touched } = stepsBetween(kit, today.feeds, everyFeed(wiring));
  const stays = pairs.filter(({ from, to }) => isSamePlace(from, to)).map(({ to }) => to.pedal);
  return {
    stays,
    releads: stays.filter((pedal) => touched.has(pedal)),
    moves: pairs
      .filter(({ from, to }) => !isSamePlace(from, to))
      .map(({ from, to }) => ({ from, to, reason: moveReason({ kit, today, wiring }, from) })),
    added: wiring.feeds.map(({ pedal }) => pedal).filter((pedal) => !before.has(pedal)),
    dropped: wiring.unpowered.filter((pedal) => before.has(pedal)),
    steps,
    unlisted: [...partsInUse([...kit.board.wiring, ...kit.board.inlets])].flatMap(([part, used]) => {
      const units = used - (kit.board.owned.parts.get(part) ?? 0);
      return units > 0 ? [{ part, units }] : [];
    }),
  };
}
