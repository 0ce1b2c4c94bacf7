import type { ChoosingAim } from '../domain/aim.js';
import { faultText } from '../files/input-fault.js';
import { readInputs } from '../files/read-inputs.js';
import type { Answer } from '../planning/answer.js';
import { choose } from '../planning/choose.js';
import { answerJson } from '../report/json.js';
import { answerText } from '../report/terminal.js';
import { exitCodes, type ExitCode } from './exit-codes.js';
import { progressLine } from './progress-line.js';
import { screenOf } from './screen-of.js';

export type ChooseFlags = {
  readonly aim: ChoosingAim;
  readonly partial: boolean;
  readonly json: boolean;
  /** In seconds; no limit when left out. */
  readonly time?: number;
};

/** Reads the two files, chooses, prints, and returns the exit code. */
export async function runChoose(boardPath: string, cataloguePath: string, flags: ChooseFlags): Promise<ExitCode> {
  const started = performance.now();
  const read = await readInputs(boardPath, cataloguePath);
  if (read.kind === 'faulty') {
    for (const fault of read.faults) process.stderr.write(`${faultText(fault)}\n`);
    if (read.more > 0) process.stderr.write(`… and ${read.more} more.\n`);
    return exitCodes.input;
  }
  const { board, catalogue } = read.value;
  const progress = progressLine(board.currency);
  const interrupt = new AbortController();
  const onInterrupt = (): void => {
    interrupt.abort();
  };
  process.once('SIGINT', onInterrupt);
  const patienceMs = flags.time === undefined ? Infinity : flags.time * 1000;
  try {
    const answer = await choose(board, catalogue, {
      aim: flags.aim,
      partial: flags.partial,
      remainingMs: () => patienceMs - (performance.now() - started),
      signal: interrupt.signal,
      onProgress: progress.show,
    });
    progress.end();
    const text = flags.json ? answerJson(board, catalogue, answer) : answerText(board, catalogue, answer, screenOf());
    process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
    return exitCodeOf(answer);
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
