import { resolveWishes } from '../../../planning/rewire/rewire-request.js';
import { answerReports } from '../../../report/formats.js';
import { answerJson } from '../../../report/json/plan-codec.js';
import { answerText } from '../../../report/screen/terminal.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { readInputs } from '../../disk/read-inputs.js';
import { rewire } from '../../threads/planning.js';
import { exitCodeOf, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, readOne, refused } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';
import { allFiles } from '../written/all-files.js';
import { proofFile } from '../written/proof-file.js';
import { reportFiles } from '../written/report-files.js';
import { besideAnswer, type SheetFlags } from '../written/sheet-beside.js';
import { wiringFile } from '../written/wiring-file.js';

export type RewireFlags = ReadingOptions &
  SheetFlags & {
    /** Ids of pedals that must stay where they are. */
    readonly keep: readonly string[];
    readonly buy: 'allow' | 'never';
    /** In the major units of the board's currency; the board's own budget when left out. */
    readonly budget?: number;
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

/** Plans how to re-plug the board, and returns the exit code. */
export async function runRewire(
  boardPath: string,
  cataloguePath: string | undefined,
  flags: RewireFlags,
): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const { partial, json, report, record, force = false } = flags;
  const proof = flags.proof !== undefined;
  const inputs = cataloguePath === undefined ? [boardPath] : [boardPath, cataloguePath];
  return carryOut({
    read: async () => readOne(readInputs(boardPath, cataloguePath ?? null, flags)),
    ask: ({ board }) => {
      const resolved = resolveWishes(board, flags);
      return resolved.kind === 'faulty'
        ? refused(boardPath, resolved.faults)
        : { kind: 'asked', value: resolved.wishes };
    },
    files: allFiles(
      proofFile(flags.proof, { force }),
      reportFiles(report, answerReports, inputs, { force }, besideAnswer(flags, remainingMs)),
      wiringFile(flags, boardPath, cataloguePath ?? null),
    ),
    call: async (kit, wishes) =>
      searchAloud(kit.board, (aloud) => rewire(kit, { ...wishes, partial, proof, remainingMs, ...aloud })),
    json,
    print: {
      json: answerJson,
      screen: (kit, answer, _, options) => answerText(kit, answer, { ...options, recorded: record }),
    },
    code: exitCodeOf,
  });
}
