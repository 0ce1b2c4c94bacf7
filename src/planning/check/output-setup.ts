import { withBoard } from '../../domain/changed-kit.js';
import type { Kit } from '../../domain/kit.js';
import type { AuditReport } from '../../audit/audit.js';
import type { Board, WiredFeed } from '../../domain/board.js';
import type { PedalId, SupplyId } from '../../domain/quantities.js';
import { partsInUse } from '../today/parts-in-use.js';
import { todaysWiring } from '../today/todays-wiring.js';

/** Can this pedal be plugged into that output? */
export type OutputQuestion = {
  readonly pedal: PedalId;
  readonly supply: SupplyId;
  /** From 1; the owned units of a supply come first. */
  readonly unit: number;
  readonly output: number;
};

/** What the question is asked of: today's wiring without the pedal, or nothing. */
export type OutputSetup = {
  /** With the wiring that counts, and without the owned leads that are in use elsewhere. */
  readonly board: Board;
  /** Whether today's wiring counts: when other pedals hang on the unit. */
  readonly inPlace: boolean;
  /** The feeds on the output itself. */
  readonly company: readonly WiredFeed[];
  /** All other feeds that count. */
  readonly others: readonly WiredFeed[];
  /** How it stands before the pedal comes. */
  readonly before: AuditReport;
};

export function setupOf(kit: Kit, question: OutputQuestion): OutputSetup {
  const { board } = kit;
  const rest = board.wiring.filter(({ pedal }) => pedal !== question.pedal);
  const inPlace = [...rest, ...board.inlets].some((wired) => isOnUnit(wired, question));
  const around = inPlace ? { ...board, wiring: rest } : aloneOn(board, rest, question);
  const company = around.wiring.filter((wired) => isOnOutput(wired, question));
  return {
    board: around,
    inPlace,
    company,
    others: around.wiring.filter((wired) => !company.includes(wired)),
    before: todaysWiring(withBoard(kit, around)).report,
  };
}

const isOnUnit = (wired: WiredFeed, { supply, unit }: OutputQuestion): boolean =>
  wired.supply === supply && wired.unit === unit;

/** Joined outputs are none that another pedal could share: the audit says so where one is asked for. */
const isOnOutput = (wired: WiredFeed, question: OutputQuestion): boolean =>
  isOnUnit(wired, question) && wired.join === null && wired.outputs[0] === question.output;

/**
 * Nothing is plugged, but for the inlet of the unit where it has one, and what the rest of today's wiring uses is no longer at
 * hand.
 */
function aloneOn(board: Board, rest: readonly WiredFeed[], { supply, unit }: OutputQuestion): Board {
  const inlets = board.inlets.filter(({ inletOf }) => inletOf.supply === supply && inletOf.unit === unit);
  const used = partsInUse([...rest, ...board.inlets.filter((wired) => !inlets.includes(wired))]);
  const left = [...board.owned.parts].map(([id, units]) => [id, Math.max(0, units - (used.get(id) ?? 0))] as const);
  return { ...board, wiring: [], inlets, owned: { ...board.owned, parts: new Map(left) } };
}
