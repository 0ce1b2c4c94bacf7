import { labelsJson } from '../../../report/json/labels-codec.js';
import { labelsReports } from '../../../report/labels-formats.js';
import { labelsText } from '../../../report/screen/labels-screen.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { readInputs } from '../../disk/read-inputs.js';
import { decisiveLabels } from '../../threads/planning.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, nothingAsked, readOne } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';
import { filesOf } from '../written/report-files.js';

export type AskFlags = ReadingOptions & {
  readonly json: boolean;
  /** In seconds; no limit when left out. */
  readonly time?: number;
  /** The files to write reports to. */
  readonly report: readonly string[];
  /** Whether files of reports may be replaced. */
  readonly force?: boolean;
};

/** Says which labels decide, and returns the exit code. */
export async function runAsk(boardPath: string, cataloguePath: string | undefined, flags: AskFlags): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const inputs = cataloguePath === undefined ? [boardPath] : [boardPath, cataloguePath];
  return carryOut({
    read: async () => readOne(readInputs(boardPath, cataloguePath ?? null, flags)),
    ask: nothingAsked,
    files: filesOf(flags.report, labelsReports, inputs, { force: flags.force ?? false }),
    call: async (kit) => searchAloud(kit.board, (aloud) => decisiveLabels(kit, { remainingMs, ...aloud })),
    json: flags.json,
    print: { json: labelsJson, screen: (kit, found, _, options) => labelsText(kit, found, options) },
    code: (found) => {
      if (found.kind === 'labels') return found.whole ? exitCodes.plan : exitCodes.stopped;
      return found.kind === 'stopped' ? exitCodes.stopped : exitCodes.noPlan;
    },
  });
}
