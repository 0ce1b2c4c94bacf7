import type { ChoosingAim } from '../domain/aim.js';
import { readInputs, type Inputs } from '../files/read-inputs.js';
import type { Answer } from '../planning/answer.js';
import { choose } from '../planning/choose.js';
import { answerJson } from '../report/json.js';
import { answerText } from '../report/terminal.js';
import { exitCodes, type ExitCode } from './exit-codes.js';
import { printFaults } from './print-faults.js';
import { progressLine } from './progress-line.js';
import { isWritable, writeProof } from './proof-file.js';
import { areReportsWritable, writeReports } from './report-files.js';
import { screenOf } from './screen-of.js';

export type ChooseFlags = {
  readonly aim: ChoosingAim;
  readonly partial: boolean;
  readonly json: boolean;
  /** In seconds; no limit when left out. */
  readonly time?: number;
  /** The file to write the proof to; none is written when left out. */
  readonly proof?: string;
  /** The files to write reports to; how a name ends says which. */
  readonly report: readonly string[];
  /** Whether files of proof and reports may be replaced. */
  readonly force?: boolean;
};

/** Reads the two files, chooses, prints, writes what files are asked for, and returns the exit code. */
export async function runChoose(boardPath: string, cataloguePath: string, flags: ChooseFlags): Promise<ExitCode> {
  const started = performance.now();
  const patienceMs = flags.time === undefined ? Infinity : flags.time * 1000;
  const read = await readInputs(boardPath, cataloguePath);
  if (read.kind === 'faulty') {
    printFaults(read);
    return exitCodes.input;
  }
  const force = flags.force === true;
  const target = flags.proof === undefined ? null : { path: flags.proof, overwrite: force };
  const isProofWritable = target === null || (await isWritable(target));
  const areWritable = await areReportsWritable(flags.report, [boardPath, cataloguePath], { force });
  if (!isProofWritable || !areWritable) return exitCodes.input;
  const answer = await answerTo(read.value, flags, () => patienceMs - (performance.now() - started));
  const { board, catalogue } = read.value;
  process.stdout.write(
    flags.json
      ? answerJson(board, catalogue, answer)
      : answerText(board, catalogue, answer, screenOf(process.stdout, process.env)),
  );
  const isProofWritten = target === null || (await writeProof(answer, target));
  const areWritten = await writeReports(flags.report, { board, catalogue, answer }, { force });
  return isProofWritten && areWritten ? exitCodeOf(answer) : exitCodes.input;
}

/**
 * The answer, with progress on standard error. Ctrl-C asks for the best plan so far; after that it is the system's again, so
 * that a second one ends the process at once, whatever it is busy with.
 */
async function answerTo({ board, catalogue }: Inputs, flags: ChooseFlags, remainingMs: () => number): Promise<Answer> {
  const interrupt = new AbortController();
  const progress = progressLine(board.currency);
  const onInterrupt = (): void => {
    progress.end();
    process.stderr.write('Stopping with the best so far. Ctrl-C again ends at once.\n');
    interrupt.abort();
  };
  process.once('SIGINT', onInterrupt);
  try {
    const { aim, partial } = flags;
    const { signal } = interrupt;
    const proof = flags.proof !== undefined;
    return await choose(board, catalogue, { aim, partial, proof, remainingMs, signal, onProgress: progress.show });
  } finally {
    progress.end();
    process.removeListener('SIGINT', onInterrupt);
  }
}

function exitCodeOf(answer: Answer): ExitCode {
  switch (answer.kind) {
    case 'plan':
      return answer.gap === null ? exitCodes.plan : exitCodes.stopped;
    case 'impossible':
      return exitCodes.noPlan;
    case 'stopped':
      return exitCodes.stopped;
  }
}
