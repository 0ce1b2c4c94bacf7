import { Back, Cancelled, type Asker } from '../../../../../src/node/cli/start/asker.js';

/** Breaks the conversation off. */
export const stop = Symbol('stop');
/** Goes back one question. */
export const back = Symbol('back');

/** A question, by words of it, and what is answered: a text, the value of a choice, yes or no. */
export type Step = readonly [question: string, answer: string | boolean | typeof stop | typeof back];

export type Scripted = {
  readonly asker: Asker;
  /** All that was said, and why answers were refused. */
  readonly heard: readonly string[];
  /** What was typed there already, text by text. */
  readonly offered: readonly (string | undefined)[];
  /** The steps that were not needed. */
  readonly left: () => readonly Step[];
};

/** Answers by a script. A text that is refused is answered by the next step, which names the same question. */
export function scripted(steps: readonly Step[]): Scripted {
  const ahead = [...steps];
  const heard: string[] = [];
  const offered: (string | undefined)[] = [];
  const answerTo = (question: string): string | boolean => {
    const [words, answer] = ahead.shift() ?? ['(the end of the script)', ''];
    if (!question.includes(words)) throw new Error(`asked "${question}", expected "${words}"`);
    if (answer === stop) throw new Cancelled('stopped by the script');
    if (answer === back) throw new Back('back by the script');
    return answer;
  };
  const asker: Asker = {
    say: (text) => void heard.push(text),
    text: (question, { check, initial, typed: before } = {}) =>
      settled(() => {
        for (;;) {
          const typed = String(answerTo(question));
          const answer = typed === '' ? (initial ?? '') : typed;
          const refusal = check?.(answer) ?? null;
          if (refusal === null) {
            offered.push(before);
            return answer;
          }
          heard.push(refusal);
        }
      }),
    choose: (question, choices) =>
      settled(() => {
        const answer = answerTo(question);
        const choice = choices.find(({ value }) => value === answer);
        if (choice === undefined) throw new Error(`"${question}" does not offer ${String(answer)}`);
        return choice.value;
      }),
    confirm: (question) =>
      settled(() => {
        heard.push(question);
        return answerTo(question) === true;
      }),
  };
  return { asker, heard, offered, left: () => ahead };
}

const settled = <Value>(work: () => Value): Promise<Value> => new Promise((settle) => settle(work()));
