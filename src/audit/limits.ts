import type { Board } from '../domain/board.js';
import type { Score, Violation } from '../domain/plan.js';
import { pedalsOf, type Layout } from './line.js';
import { count, money, unitPlace, violation, volts } from './words.js';

/** Every supply in use accepts the venue's mains volts; one that does not state them is refused where a venue is stated. */
export function mainsViolations(layout: Layout): readonly Violation[] {
  const { mains } = layout.policy;
  if (mains === null) return [];
  return layout.units.flatMap((unit) => {
    const accepted = unit.supply.mains;
    if (accepted !== null && accepted.from <= mains && mains <= accepted.to) return [];
    const range =
      accepted === null ? 'does not state its mains volts' : `accepts ${volts(accepted.from)} to ${volts(accepted.to)}`;
    const message = `${unitPlace(unit.supply, unit.unit)} ${range}; the venue has ${volts(mains)}`;
    return [violation('mains', pedalsOf(unit.lines), message)];
  });
}

/** Budget, bricks and sockets are kept; the budget caps the money without the noise price. */
export function limitViolations(board: Board, score: Score): readonly Violation[] {
  const { budget, bricks, sockets } = board.policy;
  const faults: string[] = [];
  if (budget !== null && score.money > budget)
    faults.push(`the plan costs ${money(score.money, board.currency)}; the budget is ${money(budget, board.currency)}`);
  if (bricks !== null && score.bricks > bricks)
    faults.push(`the plan uses ${count(score.bricks, 'supply unit')}; at most ${bricks} may be in use`);
  if (sockets !== null && score.bricks > sockets)
    faults.push(`the plan needs ${count(score.bricks, 'mains socket')}; ${sockets} are at hand`);
  return faults.map((fault) => violation('limit', [], fault));
}
