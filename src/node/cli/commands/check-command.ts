import { check } from '../../../planning/check/check.js';
import { checkOutput } from '../../../planning/check/check-output.js';
import { resolveQuestion, type AskedOutput } from '../../../planning/check/output-question.js';
import { checkReports } from '../../../report/check-formats.js';
import { checkJson } from '../../../report/json/check-codec.js';
import { outputAnswerJson } from '../../../report/json/output-codec.js';
import { checkText } from '../../../report/screen/check-screen.js';
import { outputAnswerText } from '../../../report/screen/output-screen.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { readInputs } from '../../disk/read-inputs.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { carryOut, nothingAsked, readOne, refused } from '../pipeline.js';
import { filesOf } from '../written/report-files.js';

export type CheckFlags = ReadingOptions & {
  readonly json: boolean;
  /** The id of a pedal to ask about; goes with `output`. */
  readonly pedal?: string;
  readonly output?: Omit<AskedOutput, 'pedal'>;
  /** The files to write reports to. */
  readonly report: readonly string[];
  /** Whether files of reports may be replaced. */
  readonly force?: boolean;
};

/** Checks the wiring or answers the question about one output, and returns the exit code. */
export async function runCheck(
  boardPath: string,
  cataloguePath: string | undefined,
  flags: CheckFlags,
): Promise<ExitCode> {
  const { json, pedal, output } = flags;
  const read = async () => readOne(readInputs(boardPath, cataloguePath ?? null, flags));
  if (pedal === undefined || output === undefined)
    return carryOut({
      read,
      ask: nothingAsked,
      files: filesOf(
        flags.report,
        checkReports,
        cataloguePath === undefined ? [boardPath] : [boardPath, cataloguePath],
        {
          force: flags.force ?? false,
        },
      ),
      call: check,
      json,
      print: { json: checkJson, screen: (kit, checked, _, options) => checkText(kit, checked, options) },
      code: ({ status }) => (status === 'safe' ? exitCodes.plan : exitCodes.noPlan),
    });
  return carryOut({
    read,
    ask: (kit) => {
      const resolved = resolveQuestion(kit, { pedal, ...output });
      return resolved.kind === 'unknown'
        ? refused(boardPath, resolved.faults)
        : { kind: 'asked', value: resolved.question };
    },
    call: checkOutput,
    json,
    print: { json: outputAnswerJson, screen: (kit, answer, _, options) => outputAnswerText(kit, answer, options) },
    code: ({ fits }) => (fits ? exitCodes.plan : exitCodes.noPlan),
  });
}
