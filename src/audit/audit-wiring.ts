import type { Board, Catalogue } from '../domain/board.js';
import type { ClaimedWiring } from '../domain/claimed-plan.js';
import type { JudgedPlan } from '../domain/judged-plan.js';
import { everyFeed, type Feed, type Purchase, type Score, type Wiring } from '../domain/plan.js';
import type { PedalId } from '../domain/quantities.js';
import type { Violation } from '../domain/violation.js';
import { audit, type AuditOptions, type AuditReport } from './audit.js';
import { toldOfSources } from './told-sources.js';
import { unitGaps } from './unit-numbers.js';

/** What is wrong with a plan, each with a message for humans. */
export type AuditError =
  /** It breaks a hard rule. */
  | { readonly kind: 'violation'; readonly violation: Violation; readonly message: string }
  /** A feed says nothing that could be plugged in. */
  | { readonly kind: 'malformed'; readonly pedals: readonly PedalId[]; readonly message: string }
  /** A pedal has no power, and the plan may not be partial. */
  | { readonly kind: 'missing'; readonly pedal: PedalId; readonly message: string }
  /** It says of itself what its feeds do not bear out. */
  | { readonly kind: 'false claim'; readonly field: string; readonly message: string };

/**
 * Audits a plan together with what it says of itself: its score, purchases, exposed and unpowered pedals. Empty when all
 * is well. What it says of moves is judged where it says anything. Lists may stand in any order.
 */
export function auditWiring(
  board: Board,
  catalogue: Catalogue | null,
  wiring: ClaimedWiring,
  options: AuditOptions,
): readonly AuditError[] {
  const feeds = everyFeed(wiring);
  const report = audit(board, catalogue, feeds, { ...options, moves: wiring.moved !== undefined });
  return [
    ...faultsOf(report),
    ...misnumbered(board, catalogue, feeds),
    ...falseClaims(wiring, report.wiring),
    ...falseMoves(wiring, report.wiring),
    ...falseSources(wiring, report.wiring, board),
  ];
}

const misnumbered = (board: Board, catalogue: Catalogue | null, feeds: readonly Feed[]): readonly AuditError[] =>
  unitGaps(board, feeds).map(({ supply: id, unit, missing, pedals }) => {
    const supply = [...board.gear.supplies, ...(catalogue?.supplies ?? [])].find((each) => each.id === id);
    const message = `${supply?.name ?? id} has a unit ${unit} and no unit ${missing}; units are numbered from 1 without gaps`;
    return { kind: 'malformed', pedals, message };
  });

/** What is wrong with the feeds themselves. */
const faultsOf = ({ violations, malformed, missing }: AuditReport): readonly AuditError[] => [
  ...violations.map((violation) => ({ kind: 'violation', violation, message: violation.message }) as const),
  ...malformed.map(({ pedals, message }) => ({ kind: 'malformed', pedals, message }) as const),
  ...missing.map((pedal) => ({ kind: 'missing', pedal, message: `the pedal "${pedal}" has no power` }) as const),
];

/**
 * What the audit has measured of feeds that it finds nothing wrong with.
 * @throws Error when it does: a defect of whoever made them, never of the input.
 */
export function soundPlan({ wiring, ...report }: AuditReport): JudgedPlan {
  const faults = faultsOf({ wiring, ...report });
  if (faults.length === 0) return wiring;
  throw new Error(`a plan fails its audit: ${faults.map(({ message }) => message).join('; ')}`);
}

/** What a score says that today's wiring has no part in. */
const scoreFields = (score: Score): readonly Exclude<keyof Score, MoveField>[] =>
  (Object.keys(score) as (keyof Score)[]).filter((field) => !isMoveField(field));

type MoveField = 'moved' | 'newlyExposed';
const isMoveField = (field: keyof Score): field is MoveField => field === 'moved' || field === 'newlyExposed';

function falseClaims(claimed: Wiring, found: Wiring): readonly AuditError[] {
  return [
    ...scoreFields(found.score).flatMap((field) =>
      difference(`score.${field}`, [claimed.score[field]], [found.score[field]]),
    ),
    ...difference('unpowered', claimed.unpowered, found.unpowered),
    ...difference('exposed', claimed.exposed, found.exposed),
    ...difference('buy.supplies', claimed.buy.supplies.map(purchaseText), found.buy.supplies.map(purchaseText)),
    ...difference('buy.parts', claimed.buy.parts.map(purchaseText), found.buy.parts.map(purchaseText)),
  ];
}

/** What a plan says of today's wiring, where it does. */
function falseMoves(claimed: Wiring, found: Wiring): readonly AuditError[] {
  if (claimed.moved === undefined) return [];
  return [
    ...difference('moved', claimed.moved, found.moved ?? []),
    ...difference('score.moved', [claimed.score.moved ?? 'unknown'], [found.score.moved ?? 'unknown']),
    ...difference(
      'score.newlyExposed',
      [claimed.score.newlyExposed ?? 'unknown'],
      [found.score.newlyExposed ?? 'unknown'],
    ),
  ];
}

/** What a plan says of adapters, batteries, power banks and kept places, where it does. */
const falseSources = ({ told }: ClaimedWiring, found: JudgedPlan, board: Board): readonly AuditError[] =>
  told === undefined
    ? []
    : toldOfSources(told, found, board).flatMap((one) => difference(one.field, one.claimed, one.found));

const purchaseText = ({ id, units, price }: Purchase<string>): string => `${units} × ${id} at ${price} minor units`;

function difference(
  field: string,
  claimed: readonly (string | number)[],
  found: readonly (string | number)[],
): readonly AuditError[] {
  const [claimedText, foundText] = [textOf(claimed), textOf(found)];
  if (claimedText === foundText) return [];
  const message = `the plan says that ${field} is ${claimedText}; its feeds make it ${foundText}`;
  return [{ kind: 'false claim', field, message }];
}

/** One text for one multiset of values. */
const textOf = (values: readonly (string | number)[]): string =>
  values.length === 0 ? 'none' : values.map(String).sort().join(', ');
