import { audit } from '../../audit/audit.js';
import type { Kit } from '../../domain/kit.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { Feed } from '../../domain/plan.js';
import { minorUnits, type MinorUnits, type PedalId } from '../../domain/quantities.js';
import type { Violation } from '../../domain/violation.js';
import type { TodaysWiring } from '../today/todays-wiring.js';
import { isSameOutlet, meet } from './places.js';
import { worstFirst } from '../check/severity.js';

/** Why a pedal cannot stay where it is plugged today, or is better off elsewhere. */
export type MoveReason =
  /** With the pedal put back where it is today, the plan breaks a hard rule. */
  | { readonly kind: 'rule'; readonly violation: Violation }
  /** Other pedals take its outputs. */
  | { readonly kind: 'taken'; readonly by: readonly PedalId[] }
  /** Put back, it asks for so much more money, or newly exposes these pedals. */
  | { readonly kind: 'saves'; readonly money: MinorUnits; readonly exposed: readonly PedalId[] }
  /** Nothing speaks against today's place: the search stopped before it found that. */
  | { readonly kind: 'none' };

export type Replugging = {
  readonly kit: Kit;
  /** How everything is plugged today. */
  readonly today: TodaysWiring;
  /** The plan. */
  readonly wiring: JudgedPlan;
};

/**
 * The pedal is put back into the finished plan on today's outputs, whoever else took them is taken off, and the audit says
 * what comes of it.
 */
export function moveReason(of: Replugging, back: Feed): MoveReason {
  const others = of.wiring.feeds.filter(({ pedal }) => pedal !== back.pedal);
  const { company, takers } = neighboursOf(of, others, back);
  const rest = others.filter((feed) => !company.includes(feed) && !takers.includes(feed));
  const best = hangings(of, back, company)
    .map((hung) => putBack(of, [...rest, ...hung]))
    .reduce((known, next) => (isBetter(next, known) ? next : known));
  const [first] = best.violations;
  const isLack = first?.rule === 'stock' || first?.rule === 'limit';
  if (first !== undefined && !(isLack && takers.length > 0)) return { kind: 'rule', violation: first };
  if (takers.length > 0) return { kind: 'taken', by: takers.map(({ pedal }) => pedal) };
  if (best.money > 0 || best.exposed.length > 0)
    return { kind: 'saves', money: minorUnits(Math.max(0, best.money)), exposed: best.exposed };
  return { kind: 'none' };
}

/** Who hangs on today's outputs in the plan: those who do today, too, can share them; the others are in the way. */
function neighboursOf({ today: { feeds: today } }: Replugging, others: readonly Feed[], back: Feed) {
  const near = others.filter((feed) => meet(feed, back));
  const company = near.filter(
    (feed) =>
      isSameOutlet(feed, back) && today.some((before) => before.pedal === feed.pedal && isSameOutlet(before, back)),
  );
  return { company, takers: near.filter((feed) => !company.includes(feed)) };
}

/** The ways to hang the pedal there again: with the leads of today, or with those that the plan has there. */
function hangings(
  { today: { feeds: today } }: Replugging,
  back: Feed,
  company: readonly Feed[],
): readonly (readonly Feed[])[] {
  const asToday = company.map((feed) => today.find(({ pedal }) => pedal === feed.pedal) ?? feed);
  const chains = new Set(company.map(({ chain }) => chain));
  return [[back, ...asToday], ...[...chains, null].map((chain) => [{ ...back, chain }, ...company])];
}

/** What comes of putting a pedal back. */
type PutBack = {
  readonly violations: readonly Violation[];
  /** More than the plan asks for. */
  readonly money: number;
  /** Exposed neither today nor in the plan. */
  readonly exposed: readonly PedalId[];
};

function putBack({ kit: { board, catalogue }, today, wiring }: Replugging, feeds: readonly Feed[]): PutBack {
  const report = audit(board, catalogue, feeds, { partial: true });
  const exposed = new Set([...today.report.wiring.exposed, ...wiring.exposed]);
  return {
    violations: worstFirst(report.violations),
    money: report.wiring.score.money - wiring.score.money,
    exposed: report.wiring.exposed.filter((pedal) => !exposed.has(pedal)),
  };
}

const isBetter = (one: PutBack, other: PutBack): boolean =>
  one.violations.length - other.violations.length < 0 ||
  (one.violations.length === other.violations.length &&
    one.money + one.exposed.length < other.money + other.exposed.length);
