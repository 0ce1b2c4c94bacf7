import type { Readable, Writable } from 'node:stream';
import { styleText } from 'node:util';

import { confirm, isCancel, log, S_BAR, text } from '@clack/prompts';
import wrapAnsi from 'wrap-ansi';

import { escapedText, listed } from '../../../domain/shown-text.js';
import { Back, Cancelled, type Asker, type Choice, type TextOptions } from './asker.js';

/** The streams of a terminal. */
type Terminal = { readonly input: Readable; readonly output: Writable; readonly width: number };

/** The columns that the frame at the left takes. */
const frame = 3;

/** Asks on a terminal: one question after the other, the answers of before staying in sight. */
export function clackAsker({ input, output, width }: Terminal): Asker {
  const answered = withKeys(input);
  const wrapped = (line: string, used: number): readonly string[] =>
    wrapAnsi(escapedText(line), Math.max(20, width - frame - 1 - used)).split('\n');
  // Lines that are indented are laid out already.
  const laidOut = (words: string): readonly string[] =>
    words.split('\n').flatMap((line) => (line.startsWith(' ') ? [escapedText(line)] : wrapped(line, 0)));
  const framed = (lines: readonly string[]): string => lines.join(`\n${styleText('gray', S_BAR)}  `);

  const ask = async (lines: readonly string[], { initial, typed, check }: TextOptions): Promise<string> =>
    answered(
      await text({
        message: framed(lines),
        ...(initial === undefined ? {} : { placeholder: initial, defaultValue: initial }),
        ...(typed === undefined ? {} : { initialValue: typed }),
        validate: (answer = '') => {
          const fault = answer === '' && initial !== undefined ? null : check?.(answer);
          return fault === null || fault === undefined ? undefined : laidOut(fault).join(`\n${' '.repeat(frame)}`);
        },
        input,
        output,
      }),
    );
  return {
    say: (words) => log.message(laidOut(words).join('\n'), { output }),
    text: async (question, options = {}) => ask(laidOut(question), options),
    choose: async (question, choices) => {
      const room = Math.max(...choices.map(({ key }) => key.length)) + 4;
      const lines = choices.flatMap(({ key, label }) =>
        wrapped(label, room).map((line, at) => `  ${(at === 0 ? key : '').padEnd(room - 2)}${line}`),
      );
      const answer = await ask([...laidOut(question), ...lines], { check: (typed) => refusalOf(typed, choices) });
      const choice = chosen(answer, choices);
      if (choice === undefined) throw new Error(`nobody offered ${answer}`);
      return choice.value;
    },
    confirm: async (question, initial) =>
      answered(await confirm({ message: laidOut(question).join('\n'), initialValue: initial, input, output })),
  };
}

const chosen = <Value extends string>(answer: string, choices: readonly Choice<Value>[]): Choice<Value> | undefined =>
  choices.find(({ key }) => key === answer.trim().toLowerCase());

const refusalOf = (answer: string, choices: readonly Choice<string>[]): string | null =>
  chosen(answer, choices) === undefined
    ? `Type ${listed(
        choices.map(({ key }) => key),
        'or',
      )}, then Enter.`
    : null;

/** Makes of what a prompt ended with an answer. Escape goes back where Ctrl-C breaks off: the prompts tell them apart by no more. */
function withKeys(input: Readable): <Answer>(answer: Answer) => Exclude<Answer, symbol> {
  let last: string | undefined;
  input.on('keypress', (_, key?: { readonly name?: string }) => {
    last = key?.name;
  });
  return <Answer>(answer: Answer): Exclude<Answer, symbol> => {
    if (isCancel(answer)) throw last === 'escape' ? new Back('one question back') : new Cancelled('broken off');
    return answer as Exclude<Answer, symbol>;
  };
}
