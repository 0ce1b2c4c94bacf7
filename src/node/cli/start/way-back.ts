import { Back, type Asker } from './asker.js';

/**
 * Holds a conversation in which every answer can be taken back. What is told afterwards hangs on the answers alone, so one step
 * back is the whole conversation once more, with all answers but the last, silently, up to that question. A text that was taken
 * back is typed there already. Before the first question there is nothing to go back to: it is asked again.
 */
export async function withWayBack<Result>(asker: Asker, talk: (asker: Asker) => Promise<Result>): Promise<Result> {
  let answers: readonly unknown[] = [];
  let takenBack: unknown = undefined;
  for (let isFirstTime = true; ; isFirstTime = false) {
    const heard = [...answers];
    try {
      return await talk(repeating(asker, { isFirstTime, answers, heard, takenBack }));
    } catch (error) {
      if (!(error instanceof Back)) throw error;
      takenBack = heard.at(-1);
      answers = heard.slice(0, -1);
    }
  }
}

type Before = {
  readonly isFirstTime: boolean;
  readonly answers: readonly unknown[];
  readonly heard: unknown[];
  readonly takenBack: unknown;
};

/** Gives the answers that are there already, then asks and adds to what was heard. */
function repeating(asker: Asker, { isFirstTime, answers, heard, takenBack }: Before): Asker {
  let asked = 0;
  const next = async <Answer>(ask: (isFirst: boolean) => Promise<Answer>): Promise<Answer> => {
    asked += 1;
    if (asked <= answers.length) return answers[asked - 1] as Answer;
    const answer = await ask(asked === answers.length + 1);
    heard.push(answer);
    return answer;
  };
  return {
    say: (text) => {
      if (isFirstTime || asked > answers.length) asker.say(text);
    },
    text: async (question, options) =>
      next(async (isFirst) =>
        asker.text(question, {
          ...options,
          ...(isFirst && typeof takenBack === 'string' && takenBack !== '' ? { typed: takenBack } : {}),
        }),
      ),
    choose: async (question, choices) => next(async () => asker.choose(question, choices)),
    confirm: async (question, initial) => next(async () => asker.confirm(question, initial)),
  };
}
