import type { Kit } from '../../domain/kit.js';
import type { AuditReport } from '../../audit/audit.js';
import type { Board } from '../../domain/board.js';
import type { JudgedPlan } from '../../domain/judged-plan.js';
import type { LoadNumbers, TotalLoad } from '../../domain/load-numbers.js';
import { feedMillivolts, type Place, type Purchase, type Wiring } from '../../domain/plan.js';
import type { Millivolts, PartId, PedalId, SupplyId } from '../../domain/quantities.js';
import type { Violation } from '../../domain/violation.js';
import { worstFirst } from './severity.js';
import { todaysWiring } from '../today/todays-wiring.js';
import type { OpenSplit } from '../today/wired-feeds.js';

/** What breaks no rule and still is worth knowing. */
export type SoftFinding =
  /** A high-gain pedal shares a ground with digital ones. */
  | { readonly kind: 'exposed'; readonly pedal: PedalId; readonly by: readonly PedalId[] }
  /** More than nine tenths of what the headroom leaves of an output or a total are used. */
  | {
      readonly kind: 'tight';
      readonly of: 'output' | TotalLoad['of'];
      readonly place: Place;
      readonly pedals: readonly PedalId[];
      readonly numbers: LoadNumbers;
    }
  /** The outputs of a series join could be set in several ways; this is the one that counts. */
  | {
      readonly kind: 'open setting';
      readonly pedal: PedalId;
      readonly place: Place;
      readonly settings: readonly Millivolts[];
    }
  | {
      readonly kind: 'off preferred';
      readonly pedal: PedalId;
      readonly place: Place;
      readonly prefers: Millivolts;
      readonly gets: Millivolts;
    }
  /** The wiring uses more of a part, or a higher unit of a supply, than is owned; so much would have to be bought. */
  | { readonly kind: 'not owned'; readonly thing: 'supply'; readonly purchase: Purchase<SupplyId> }
  | { readonly kind: 'not owned'; readonly thing: 'part'; readonly purchase: Purchase<PartId> }
  /** The pedal has no feed. */
  | { readonly kind: 'unfed'; readonly pedal: PedalId };

/** What a wiring is worth. */
export type Check = {
  /** Safe: no hard rule is broken. Pedals without a feed do not make a wiring unsafe. */
  readonly status: 'safe' | 'unsafe';
  /** The hard rules that are broken, the worst first: see `rulesBySeverity`. */
  readonly findings: readonly Violation[];
  readonly soft: readonly SoftFinding[];
  /** The feeds in the order of the board's pedals, and what they amount to. */
  readonly wiring: JudgedPlan;
};

/**
 * Judges how the board is plugged today by every hard rule. Solves nothing. A board that describes all its gear needs no
 * catalogue. Prints nothing and never ends the process.
 * @throws RangeError when the wiring plugs a pedal twice or one that is none of the board's; no board that was read does.
 */
export function check(kit: Kit): Check {
  const { splits, report } = todaysWiring(kit);
  const [malformed] = report.malformed;
  if (malformed !== undefined) throw new RangeError(`the wiring cannot be judged: ${malformed.message}`);
  const { violations, wiring } = report;
  return {
    status: violations.length === 0 ? 'safe' : 'unsafe',
    findings: worstFirst(violations),
    soft: softFindings(kit.board, report, splits),
    wiring,
  };
}

/** What hums first, then what is close to a limit, then what has to be looked at, had or plugged. */
function softFindings(board: Board, report: AuditReport, splits: readonly OpenSplit[]): readonly SoftFinding[] {
  const { wiring } = report;
  const { supplies, parts } = wiring.buy;
  return [
    ...wiring.exposures.map((exposure) => ({ kind: 'exposed', ...exposure }) as const),
    ...tightPlaces(wiring),
    ...openSettings(wiring, splits),
    ...offPreferred(board, report),
    ...supplies.map((purchase) => ({ kind: 'not owned', thing: 'supply', purchase }) as const),
    ...parts.map((purchase) => ({ kind: 'not owned', thing: 'part', purchase }) as const),
    ...wiring.unpowered.filter((id) => !isKept(board, id)).map((pedal) => ({ kind: 'unfed', pedal }) as const),
  ];
}

/** A kept place is not plugged, and has no need to be. */
const isKept = ({ pedals }: Board, id: PedalId): boolean =>
  pedals.some((pedal) => pedal.id === id && pedal.kept !== null);

function tightPlaces({ outlets, totals }: JudgedPlan): readonly SoftFinding[] {
  const tightOutlets = outlets.flatMap(({ place, pedals, current }): readonly SoftFinding[] =>
    current !== null && isTight(current) ? [{ kind: 'tight', of: 'output', place, pedals, numbers: current }] : [],
  );
  const tightTotals = totals.flatMap(({ of, place, pedals, numbers }): readonly SoftFinding[] =>
    isTight(numbers) ? [{ kind: 'tight', of, place, pedals, numbers }] : [],
  );
  return [...tightOutlets, ...tightTotals];
}

/** Above nine tenths, and not too much. */
function isTight({ planned, limit }: LoadNumbers): boolean {
  const most = BigInt(limit) * planned.denominator;
  return planned.numerator <= most && planned.numerator * 10n > most * 9n;
}

const openSettings = ({ feeds }: Wiring, splits: readonly OpenSplit[]): readonly SoftFinding[] =>
  splits.flatMap(({ pedal, settings }) =>
    feeds
      .filter((feed) => feed.pedal === pedal)
      .map(({ supply, unit, outputs }) => ({
        kind: 'open setting',
        pedal,
        place: { supply, unit, outputs },
        settings,
      })),
  );

/** Of pedals that accept what they get. */
function offPreferred({ pedals }: Board, { wiring, violations }: AuditReport): readonly SoftFinding[] {
  const preferred = new Map(pedals.map(({ id, prefers }) => [id, prefers]));
  const refusing = new Set(violations.flatMap((one) => (one.rule === 'voltage' ? one.pedals : [])));
  return wiring.feeds.flatMap((feed): readonly SoftFinding[] => {
    const { pedal, supply, unit, outputs } = feed;
    const prefers = preferred.get(pedal) ?? null;
    const gets = feedMillivolts(feed);
    if (prefers === null || prefers === gets || refusing.has(pedal)) return [];
    return [{ kind: 'off preferred', pedal, place: { supply, unit, outputs }, prefers, gets }];
  });
}
