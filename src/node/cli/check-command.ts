import type { Kit } from '../../domain/kit.js';
import { escapedText } from '../../domain/shown-text.js';
import { readInputs } from '../disk/read-inputs.js';
import { check } from '../../planning/check/check.js';
import { checkOutput } from '../../planning/check/check-output.js';
import { resolveQuestion, type AskedOutput } from '../../planning/check/output-question.js';
import { checkJson } from '../../report/json/check-json.js';
import { checkText } from '../../report/screen/check-screen.js';
import { outputAnswerJson } from '../../report/json/output-json.js';
import { outputAnswerText } from '../../report/screen/output-screen.js';
import { exitCodes, type ExitCode } from './exit-codes.js';
import { printFaults } from './print-faults.js';
import { screenOf } from './screen-of.js';

export type CheckFlags = {
  readonly json: boolean;
  /** The id of a pedal to ask about; goes with `output`. */
  readonly pedal?: string;
  readonly output?: Omit<AskedOutput, 'pedal'>;
};

/** Reads the files, checks the wiring or answers the question, prints, and returns the exit code. */
export async function runCheck(
  boardPath: string,
  cataloguePath: string | undefined,
  { json, pedal, output }: CheckFlags,
): Promise<ExitCode> {
  const read = await readInputs(boardPath, cataloguePath ?? null);
  if (read.kind === 'faulty') {
    printFaults(read);
    return exitCodes.input;
  }
  if (pedal !== undefined && output !== undefined) return answerQuestion(read.value, { pedal, ...output }, json);
  const kit = read.value;
  const checked = check(kit);
  process.stdout.write(json ? checkJson(kit, checked) : checkText(kit, checked, screenOf(process.stdout, process.env)));
  return checked.status === 'safe' ? exitCodes.plan : exitCodes.noPlan;
}

function answerQuestion(kit: Kit, asked: AskedOutput, json: boolean): ExitCode {
  const resolved = resolveQuestion(kit, asked);
  if (resolved.kind === 'unknown') {
    process.stderr.write(resolved.faults.map((fault) => `${escapedText(fault)}\n`).join(''));
    return exitCodes.input;
  }
  const answer = checkOutput(kit, resolved.question);
  process.stdout.write(
    json ? outputAnswerJson(kit, answer) : outputAnswerText(kit, answer, screenOf(process.stdout, process.env)),
  );
  return answer.fits ? exitCodes.plan : exitCodes.noPlan;
}
