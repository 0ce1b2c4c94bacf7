import type { ReadResult } from '../../reading/faults/input-fault.js';
import type { Faulty } from '../../report/screen/faults-screen.js';
import type { ScreenOptions } from '../../report/screen/screen.js';
import { exitCodes, type ExitCode } from './exit-codes.js';
import { printFaults } from './printed/print-faults.js';
import { screenOf } from './printed/screen-of.js';
import { tell } from './printed/tell.js';

/** What has been read, or all that is wrong with the files. */
export type Read<Input> =
  | {
      readonly kind: 'read';
      readonly value: Input;
      /** What was left aside in reading, a sentence each. */
      readonly notes?: readonly string[];
    }
  | {
      readonly kind: 'faulty';
      readonly files: readonly Faulty[];
      /** What stands in the way besides. */
      readonly sentences?: readonly string[];
    };

/** A sentence for each thing that stands in the way of what was asked. */
type Refused = { readonly kind: 'refused'; readonly sentences: readonly string[] };

/** What was asked beside the files, as the files bear it out. */
export type Asked<Value> = { readonly kind: 'asked'; readonly value: Value } | Refused;

/** What a command reads, and what it asks of that. */
type Opening<Input, Question> = {
  readonly read: () => Promise<Read<Input>>;
  readonly ask: (input: Input) => Asked<Question>;
};

/** A command that reads files, asks planning one question and prints the answer. */
type Errand<Input, Question, Answer> = Opening<Input, Question> & {
  /** Files that are written besides: looked at before the work, written after it. */
  readonly files?: WrittenFiles<Input, Answer>;
  readonly call: (input: Input, question: Question) => Promise<Answer> | Answer;
  readonly json: boolean;
  /** Both with a line break at the end. */
  readonly print: {
    readonly json: (input: Input, answer: Answer, question: Question) => string;
    readonly screen: (input: Input, answer: Answer, options: ScreenOptions, question: Question) => string;
  };
  readonly code: (answer: Answer) => ExitCode;
};

export type WrittenFiles<Input, Answer> = {
  /** False when one cannot be written, which has then been said. */
  readonly areWritable: () => Promise<boolean>;
  /** False when the system refused one, which has then been said. */
  readonly write: (input: Input, answer: Answer) => Promise<boolean>;
};

/** Reads, asks, calls, prints, writes, and returns the exit code. */
export async function carryOut<Input, Question, Answer>(errand: Errand<Input, Question, Answer>): Promise<ExitCode> {
  const { files, call, print, code } = errand;
  const opened = await open(errand);
  if (opened === null) return exitCodes.input;
  const { input, question } = opened;
  if (files !== undefined && !(await files.areWritable())) return exitCodes.input;
  const answer = await call(input, question);
  process.stdout.write(
    errand.json
      ? print.json(input, answer, question)
      : print.screen(input, answer, screenOf(process.stdout, process.env), question),
  );
  const areWritten = files === undefined || (await files.write(input, answer));
  return areWritten ? code(answer) : exitCodes.input;
}

/** What was read, and what is asked of it; null when something is wrong with either, which has then been said. */
export async function open<Input, Question>({ read, ask }: Opening<Input, Question>) {
  const found = await read();
  if (found.kind === 'faulty') {
    if (found.files.length > 0) printFaults(...found.files);
    tell(...(found.sentences ?? []));
    return null;
  }
  tell(...(found.notes ?? []));
  const input = found.value;
  const asked = ask(input);
  if (asked.kind === 'asked') return { input, question: asked.value };
  tell(...asked.sentences);
  return null;
}

/** One file, or several that are one input to those who read them. */
export async function readOne<Input>(reading: Promise<ReadResult<Input>> | ReadResult<Input>): Promise<Read<Input>> {
  const read = await reading;
  return read.kind === 'read' ? read : { kind: 'faulty', files: [read] };
}

/** Nothing is asked beside the files. */
export const nothingAsked = (): Asked<null> => ({ kind: 'asked', value: null });

/** The sentences with what they are about before them. */
export const refused = (about: string, sentences: readonly string[]): Refused => ({
  kind: 'refused',
  sentences: sentences.map((sentence) => `${about}: ${sentence}`),
});
