import type { Kit } from '../../../domain/kit.js';
import type { Answer } from '../../../planning/answer.js';
import type { Wanted } from '../../../planning/wanted/wanted.js';
import { answerReports } from '../../../report/formats.js';
import type { WrittenFiles } from '../pipeline.js';
import { allFiles } from '../written/all-files.js';
import { proofFile, type ProofFlags } from '../written/proof-file.js';
import { reportFiles } from '../written/report-files.js';
import { answerInput, type SheetFlags } from '../written/sheet-beside.js';
import { wiringFile } from '../written/wiring-file.js';
import { readPaths, type BoardFiles, type BoardFlags } from './board-question.js';

/** What commands are told that make a plan. */
export type PlanFlags = BoardFlags &
  SheetFlags &
  ProofFlags & {
    readonly partial: boolean;
    /** Whether the plan goes into the board file. */
    readonly record: boolean;
  };

/** All that is written of a plan: its proof, reports, and the board file with it. */
export const planFiles = (
  files: BoardFiles,
  flags: PlanFlags,
  remainingMs: () => number,
): WrittenFiles<Kit, Answer | Wanted> =>
  allFiles(
    proofFile(flags),
    reportFiles(flags, answerReports, readPaths(files), answerInput(flags, remainingMs)),
    wiringFile(flags, ...files),
  );
