import type { ChoosingAim } from '../../../domain/aim.js';
import { pedalNamed } from '../../../planning/check/output-question.js';
import type { Explanation } from '../../../planning/explain/explain.js';
import { explanationJson } from '../../../report/json/explanation-codec.js';
import { explanationText } from '../../../report/screen/explain-screen.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
import { fileAt } from '../../disk/file-at.js';
import { readInputs } from '../../disk/read-inputs.js';
import { explain } from '../../threads/planning.js';
import { exitCodes, type ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, readOne, refused } from '../pipeline.js';
import { searchAloud } from '../progress/aloud.js';

export type ExplainFlags = ReadingOptions & {
  readonly aim: ChoosingAim;
  readonly json: boolean;
  /** In seconds; no limit when left out. */
  readonly time?: number;
};

export type ExplainArguments = {
  readonly board: string;
  /** The catalogue file, or the id of a pedal where the board needs no catalogue; null when left out. */
  readonly second: string | null;
  /** The id of the pedal that is asked about behind a catalogue; null when left out. */
  readonly third: string | null;
};

/** Explains, and returns the exit code. */
export async function runExplain(
  { board: path, second, third }: ExplainArguments,
  flags: ExplainFlags,
): Promise<ExitCode> {
  const { aim, json, time } = flags;
  const remainingMs = patience(time);
  const isPedal = third === null && second !== null && (await isNoFile(second));
  const [catalogue, asked] = isPedal ? [null, second] : [second, third];
  return carryOut({
    read: async () => readOne(readInputs(path, catalogue, flags)),
    ask: ({ board }) => {
      if (asked === null) return { kind: 'asked', value: null };
      const meant = pedalNamed(board, asked);
      if (meant.kind === 'meant') return { kind: 'asked', value: meant.thing.id };
      return refused(path, [isPedal ? `${meant.fault} There is no file of that name either.` : meant.fault]);
    },
    call: async (kit, pedal) =>
      searchAloud(kit.board, (aloud) =>
        explain(kit, { aim, ...(pedal === null ? {} : { pedal }), remainingMs, ...aloud }),
      ),
    json,
    print: {
      json: explanationJson,
      screen: (kit, found, pedal, options) => explanationText(kit, found, pedal, options),
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
