import type { Board } from '../domain/board.js';
import type { JudgedPlan } from '../domain/judged-plan.js';
import type { Numbers, Violation } from '../domain/violation.js';
import { pedalsOf, type Layout } from './line.js';
import { counted, placeInUnit, violation } from './violation.js';
import { are, count, money, unitPlace, volts } from './words.js';

/** Every supply in use accepts the mains of every venue; one that does not state them is refused where a venue is stated. */
export function mainsViolations(layout: Layout): readonly Violation[] {
  return layout.units.flatMap((unit) => {
    const { source } = unit.supply;
    if (!('volts' in source)) return [];
    const accepted = source.volts;
    const refused = layout.policy.mains.filter(
      (venue) => accepted === null || venue < accepted.from || accepted.to < venue,
    );
    const [venue] = refused;
    if (venue === undefined) return [];
    const range =
      accepted === null ? 'does not state its mains volts' : `accepts ${volts(accepted.from)} to ${volts(accepted.to)}`;
    const message = `${unitPlace(unit.supply, unit.unit)} ${range}; ${venues(refused)}`;
    const numbers = { kind: 'mains', venue, accepted } as const;
    return [violation('mains', pedalsOf(unit.lines), message, { place: placeInUnit(unit), numbers })];
  });
}

const venues = (refused: readonly number[]): string =>
  refused.length === 1
    ? `the venue has ${refused.map(volts).join()}`
    : `venues have ${refused.map(volts).join(' and ')}`;

/** Budget, bricks and sockets are kept; the budget caps the money without the noise price. */
export function limitViolations(board: Board, plan: Pick<JudgedPlan, 'score' | 'sockets'>): readonly Violation[] {
  const { budget, bricks, sockets } = board.policy;
  const { score } = plan;
  const faults: Violation[] = [];
  const report = (message: string, numbers: Numbers): void => {
    faults.push(violation('limit', [], message, { numbers }));
  };
  if (budget !== null && score.money > budget) {
    const cost = money(score.money, board.currency);
    const message = `what has to be bought costs ${cost}; the budget is ${money(budget, board.currency)}`;
    report(message, { kind: 'money', needed: score.money, allowed: budget });
  }
  if (bricks !== null && score.bricks > bricks) {
    const used = `${count(score.bricks, 'supply unit')} ${are(score.bricks)} in use`;
    report(`${used}; at most ${bricks} may be`, counted(score.bricks, bricks));
  }
  if (sockets !== null && plan.sockets > sockets) {
    const needed = `${count(plan.sockets, 'mains socket')} ${are(plan.sockets)} needed`;
    report(`${needed}; ${sockets} ${are(sockets)} at hand`, counted(plan.sockets, sockets));
  }
  return faults;
}
