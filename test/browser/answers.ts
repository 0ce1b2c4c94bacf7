/** What the core answers about a random board. Runs in Node and, bundled, in a browser's worker. */
import fc from 'fast-check';

import {
  answerJson,
  answerText,
  check,
  checkJson,
  choose,
  compare,
  comparisonJson,
  explain,
  explanationJson,
  inputsFromText,
  kitOf,
  reportText,
  webTiming,
  type Answer,
  type Board,
  type Timing,
} from '../../src/core.js';
import { caseOf } from '../support/arbitraries.js';
import { boardFileOf, catalogueFileOf } from '../support/as-files.js';
import { wiredOf } from '../support/wired.js';

export type Answers = {
  readonly kind: Answer['kind'];
  /** Whether a wiring that was checked is unsafe. */
  readonly unsafe: boolean;
  /** All that was answered, as it is printed. */
  readonly printed: readonly string[];
};

/** No patience ends before the work does, so that nothing depends on how fast a machine is. */
const unhurried: Timing = {
  ...webTiming,
  later: async (_ms, signal) =>
    new Promise((resolve) => {
      signal.addEventListener('abort', () => resolve(false));
      if (signal.aborted) resolve(false);
    }),
};

const cases = caseOf({ min: 1, max: 6 }, { min: 1, max: 3 }, 4);

export async function answersTo(seed: number): Promise<Answers> {
  const [given] = fc.sample(cases, { seed, numRuns: 1 });
  if (given === undefined) throw new Error('no case');
  const read = inputsFromText(
    { file: 'board.json', text: JSON.stringify(boardFileOf(given.board)) },
    { file: 'shop.json', text: JSON.stringify(catalogueFileOf(given.catalogue)) },
  );
  if (read.kind === 'faulty') throw new Error(JSON.stringify(read.faults));
  const kit = read.value;
  const answer = await choose(kit, { timing: unhurried });
  const comparison = await compare(kit, { timing: unhurried });
  const explanation = await explain(kit, { timing: unhurried });
  const checked = wiringsFrom(answer, kit.board).map((board) => {
    const wired = kitOf(board, kit.catalogue);
    return { wired, found: check(wired) };
  });
  return {
    kind: answer.kind,
    unsafe: checked.some(({ found }) => found.status === 'unsafe'),
    printed: [
      answerJson(kit, answer),
      answerText(kit, answer, { width: 80, colour: false }),
      reportText('page', { kit, answer }),
      comparisonJson(kit, comparison),
      explanationJson(kit, explanation, null),
      ...checked.map(({ wired, found }) => checkJson(wired, found)),
    ],
  };
}

/** The board plugged as planned, and with every pedal where the next one should be. */
function wiringsFrom(answer: Answer, board: Board): readonly Board[] {
  if (answer.kind !== 'plan') return [board];
  const wiring = answer.wiring.feeds.map(wiredOf);
  const astray = wiring.map((feed, at) => ({ ...(wiring[(at + 1) % wiring.length] ?? feed), pedal: feed.pedal }));
  return [
    { ...board, wiring },
    { ...board, wiring: astray },
  ];
}
