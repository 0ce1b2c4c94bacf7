import type { ChoosingAim } from '../../../domain/aim.js';
import { pedalNamed } from '../../../planning/check/output-question.js';
import type { Explanation } from '../../../planning/explain/explain.js';
import { explanationJson } from '../../../report/json/explanation-codec.js';
import { explanationText } from '../../../report/screen/explain-screen.js';
import { fileAt } from '../../disk/file-at.js';
import { explain } from '../../threads/planning.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, refused } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';
import { aboutBoard, type BoardFlags } from './board-question.js';

export type ExplainFlags = BoardFlags & { readonly aim: ChoosingAim };

/**
 * Explains, and returns the exit code. The second argument is the catalogue file, or the id of a pedal where the board needs no
 * catalogue; the third is the id of the pedal that is asked about behind a catalogue.
 */
export async function runExplain(
  [path, second, third]: readonly [board: string, second: string | undefined, third: string | undefined],
  flags: ExplainFlags,
): Promise<ExitCode> {
  const { aim, time } = flags;
  const remainingMs = patience(time);
  const isPedal = third === undefined && second !== undefined && (await isNoFile(second));
  const [catalogue, asked] = isPedal ? [undefined, second] : [second, third];
  return carryOut({
    ...aboutBoard([path, catalogue], flags),
    ask: ({ board }) => {
      if (asked === undefined) return { kind: 'asked', value: null };
      const meant = pedalNamed(board, asked);
      if (meant.kind === 'meant') return { kind: 'asked', value: meant.thing.id };
      return refused(path, [isPedal ? `${meant.fault} There is no file of that name either.` : meant.fault]);
    },
    call: async (kit, pedal) =>
      searchAloud(kit.board, (aloud) =>
        explain(kit, { aim, ...(pedal === null ? {} : { pedal }), remainingMs, ...aloud }),
      ),
    print: {
      json: explanationJson,
      screen: (kit, found, options, pedal) => explanationText(kit, found, pedal, options),
    },
    code: exitCodeFor,
  });
}

/** A word that could be an id and is the name of no file. */
const isNoFile = async (word: string): Promise<boolean> =>
  /^[\p{L}\p{N}_-]+$/u.test(word) && (await fileAt(word)) === null;

function exitCodeFor(explanation: Explanation): ExitCode {
  if (explanation.kind === 'stopped') return exitCodes.stopped;
  if (explanation.kind === 'impossible') return exitCodes.noPlan;
  return explanation.ended && !explanation.whole ? exitCodes.stopped : exitCodes.plan;
}
