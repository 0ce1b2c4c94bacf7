import type { Engine } from '../../../solver/engines/engine.js';
import type { ChoosingAim } from '../../domain/aim.js';
import { escapedText } from '../../domain/shown-text.js';
import { faultText, type InputFault } from '../../reading/faults/input-fault.js';
import type { Inputs } from '../../reading/inputs-from-text.js';
import type { ReadResult } from '../../reading/faults/input-fault.js';
import type { BoughtUnits } from '../../planning/compare/compare.js';
import { comparisonObject } from '../../report/json/comparison-codec.js';
import { safeJson } from '../../report/words/safe-text.js';
import { compare } from './planning.js';

/** How the boards of a folder are compared: the same for all. */
export type FolderJob = {
  readonly catalogue: { readonly file: string; readonly text: string };
  /** Whether rows of tables that nobody could use are left out. */
  readonly skipBadRows: boolean;
  readonly aim: ChoosingAim;
  /** How many best purchases; null for choices that differ in kind. */
  readonly best: number | null;
  readonly asked: readonly BoughtUnits[];
  /** For each board; Infinity is no limit. */
  readonly timeMs: number;
};

/** One board file of a folder. */
export type BoardTask = {
  /** Its name in the folder. */
  readonly file: string;
  readonly path: string;
  readonly text: string;
  readonly hash: string;
};

/** `defect` is one of boardfeed; what is `best found` was not proven in time. */
const boardStatuses = ['proven', 'impossible', 'best found', 'faulty', 'defect'] as const;
export type BoardStatus = (typeof boardStatuses)[number];
export const isBoardStatus = (text: string): text is BoardStatus => boardStatuses.some((status) => status === text);

/** What came of one board, as a line of JSON without its end. */
export type BoardResult = { readonly status: BoardStatus; readonly line: string };

type BoardContext = {
  readonly job: FolderJob;
  readonly read: (board: { readonly file: string; readonly text: string }) => ReadResult<Inputs>;
  readonly engine: Engine;
  /** Ends what is under way, whose result nobody waits for any more. */
  readonly signal: AbortSignal;
};

/** Compares one board. Whatever goes wrong with it is told by its line, and ends nothing else. */
export async function boardResult(task: BoardTask, { job, read, engine, signal }: BoardContext): Promise<BoardResult> {
  try {
    const inputs = read({ file: task.path, text: task.text });
    if (inputs.kind === 'faulty') return faultyResult(task, inputs.faults, inputs.more);
    const { aim, best, asked, timeMs } = job;
    const started = performance.now();
    const limit = timeMs === Infinity ? {} : { remainingMs: (): number => timeMs - (performance.now() - started) };
    const terms = { aim, asked, ...(best === null ? {} : { best }), ...limit };
    const comparison = await compare(inputs.value, { ...terms, signal, engine });
    const object = comparisonObject(inputs.value, comparison);
    return lineOf(task, object.status, { comparison: object });
  } catch (error) {
    return defectResult(task, error);
  }
}

/** A board file that cannot be read or is wrong. */
export function faultyResult(
  task: Pick<BoardTask, 'file'> & { readonly hash: string | null },
  faults: readonly InputFault[],
  more: number,
): BoardResult {
  const [first] = faults;
  const message = first === undefined ? 'the file cannot be read' : faultText(first);
  return lineOf(task, 'faulty', { error: { message, faults, more } });
}

/** A defect of boardfeed that a board has brought to light. */
export function defectResult(task: Pick<BoardTask, 'file' | 'hash'>, error: unknown): BoardResult {
  const message = escapedText(error instanceof Error ? error.message : String(error));
  return lineOf(task, 'defect', { error: { message: `boardfeed has a defect: ${message}`, faults: [], more: 0 } });
}

const lineOf = (
  { file, hash }: { readonly file: string; readonly hash: string | null },
  status: BoardStatus,
  body: object,
): BoardResult => ({ status, line: safeJson(JSON.stringify({ file, hash, status, ...body })) });
