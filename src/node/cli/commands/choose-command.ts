import type { ChoosingAim } from '../../../domain/aim.js';
import { answerReports } from '../../../report/formats.js';
import { answerJson } from '../../../report/json/plan-codec.js';
import { wantedJson } from '../../../report/json/wanted-codec.js';
import { answerText } from '../../../report/screen/terminal.js';
import { wantedText } from '../../../report/screen/wanted-screen.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { readInputs } from '../../disk/read-inputs.js';
import { chooseOrSeek } from '../../threads/planning.js';
import { exitCodeOf, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, nothingAsked, readOne } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';
import { allFiles } from '../written/all-files.js';
import { proofFile } from '../written/proof-file.js';
import { reportFiles } from '../written/report-files.js';
import { besideAnswer, type SheetFlags } from '../written/sheet-beside.js';
import { wiringFile } from '../written/wiring-file.js';

export type ChooseFlags = ReadingOptions &
  SheetFlags & {
    readonly aim: ChoosingAim;
    readonly partial: boolean;
    readonly json: boolean;
    /** In seconds; no limit when left out. */
    readonly time?: number;
    /** The file to write the proof to; none is written when left out. */
    readonly proof?: string;
    /** Whether the plan goes into the board file. */
    readonly record: boolean;
    /** Whether files of proof and reports may be replaced. */
    readonly force?: boolean;
  };

/** Chooses, or says what to look for where there is no catalogue, and returns the exit code. */
export async function runChoose(
  boardPath: string,
  cataloguePath: string | null,
  flags: ChooseFlags,
): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const { aim, partial, json, report, force = false } = flags;
  const proof = flags.proof !== undefined;
  const inputs = cataloguePath === null ? [boardPath] : [boardPath, cataloguePath];
  return carryOut({
    read: async () => readOne(readInputs(boardPath, cataloguePath, flags)),
    ask: nothingAsked,
    files: allFiles(
      proofFile(flags.proof, { force }),
      reportFiles(report, answerReports, inputs, { force }, besideAnswer(flags, remainingMs)),
      wiringFile(flags, boardPath, cataloguePath),
    ),
    call: async (kit) =>
      searchAloud(kit.board, (aloud) => chooseOrSeek(kit, { aim, partial, proof, remainingMs, ...aloud })),
    json,
    print: {
      json: (kit, answer) => (answer.kind === 'wanted' ? wantedJson(answer) : answerJson(kit, answer)),
      screen: (kit, answer, _, options) =>
        answer.kind === 'wanted' ? wantedText(answer, options) : answerText(kit, answer, options),
    },
    code: exitCodeOf,
  });
}
