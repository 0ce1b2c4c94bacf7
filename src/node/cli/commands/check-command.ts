import { check } from '../../../planning/check/check.js';
import { checkOutput } from '../../../planning/check/check-output.js';
import { resolveQuestion, type AskedOutput } from '../../../planning/check/output-question.js';
import { checkJson } from '../../../report/json/check-codec.js';
import { outputAnswerJson } from '../../../report/json/output-codec.js';
import { checkReports } from '../../../report/page-formats.js';
import { checkText } from '../../../report/screen/check-screen.js';
import { outputAnswerText } from '../../../report/screen/output-screen.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { carryOut, nothingAsked, refused } from '../pipeline.js';
import { aboutBoard, pageFiles, type BoardFiles, type ReportedFlags } from './board-question.js';

export type CheckFlags = ReportedFlags & {
  /** The id of a pedal to ask about; goes with `output`. */
  readonly pedal?: string;
  readonly output?: Omit<AskedOutput, 'pedal'>;
};

/** Checks the wiring or answers the question about one output, and returns the exit code. */
export async function runCheck(files: BoardFiles, flags: CheckFlags): Promise<ExitCode> {
  const { pedal, output } = flags;
  if (pedal === undefined || output === undefined)
    return carryOut({
      ...aboutBoard(files, flags),
      ask: nothingAsked,
      files: pageFiles(files, flags, checkReports),
      call: check,
      print: { json: checkJson, screen: checkText },
      code: ({ status }) => (status === 'safe' ? exitCodes.plan : exitCodes.noPlan),
    });
  return carryOut({
    ...aboutBoard(files, flags),
    ask: (kit) => {
      const resolved = resolveQuestion(kit, { pedal, ...output });
      return resolved.kind === 'unknown'
        ? refused(files[0], resolved.faults)
        : { kind: 'asked', value: resolved.question };
    },
    call: checkOutput,
    print: { json: outputAnswerJson, screen: outputAnswerText },
    code: ({ fits }) => (fits ? exitCodes.plan : exitCodes.noPlan),
  });
}
