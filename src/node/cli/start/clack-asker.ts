import type { Readable, Writable } from 'node:stream';

import { confirm, isCancel, log, select, text } from '@clack/prompts';
import wrapAnsi from 'wrap-ansi';

import { escapedText } from '../../../domain/shown-text.js';
import { Cancelled, type Asker, type Choice, type TextOptions } from './asker.js';

/** The streams of a terminal. */
export type Terminal = { readonly input: Readable; readonly output: Writable; readonly width: number };

/** Of the answers to choose from: longer lists scroll. */
const mostInSight = 20;

/** Asks on a terminal: one question after the other, the answers of before staying in sight. */
export function clackAsker({ input, output, width }: Terminal): Asker {
  // The frame at the left takes three columns. Lines that are indented are laid out already.
  const laidOut = (words: string): string =>
    words
      .split('\n')
      .map((line) => (line.startsWith(' ') ? escapedText(line) : wrapAnsi(escapedText(line), Math.max(20, width - 4))))
      .join('\n');
  const answered = <Answer>(answer: Answer): Exclude<Answer, symbol> => {
    if (isCancel(answer)) throw new Cancelled('the conversation was broken off');
    return answer as Exclude<Answer, symbol>;
  };
  return {
    say: (words) => log.message(laidOut(words), { output }),
    text: async (question, { example, initial, check }: TextOptions = {}) =>
      answered(
        await text({
          message: laidOut(question),
          ...(example === undefined ? {} : { placeholder: example }),
          ...(initial === undefined ? {} : { initialValue: initial }),
          validate: (answer) => check?.(answer ?? '') ?? undefined,
          input,
          output,
        }),
      ),
    choose: async <Value extends string>(question: string, choices: readonly Choice<Value>[]) => {
      const options = choices.map(({ value, label, hint }) => ({
        value,
        label,
        ...(hint === undefined ? {} : { hint }),
      }));
      const chosen = answered(
        await select<string>({ message: laidOut(question), options, maxItems: mostInSight, input, output }),
      );
      const choice = choices.find(({ value }) => value === chosen);
      if (choice === undefined) throw new Error(`nobody offered ${chosen}`);
      return choice.value;
    },
    confirm: async (question, initial) =>
      answered(await confirm({ message: laidOut(question), initialValue: initial, input, output })),
  };
}
