import type { ChoosingAim } from '../../../domain/aim.js';
import { pedalId } from '../../../domain/quantities.js';
import { pedalFaults } from '../../../planning/check/output-question.js';
import type { Explanation } from '../../../planning/explain/explain.js';
import { explanationJson } from '../../../report/json/explanation-codec.js';
import { explanationText } from '../../../report/screen/explain-screen.js';
import type { ReadingOptions } from '../../../reading/sheet/without-bad-rows.js';
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
  readonly catalogue: string;
  /** The id of the pedal that is asked about; the plan as a whole when null. */
  readonly pedal: string | null;
};

/** Explains, and returns the exit code. */
export async function runExplain(paths: ExplainArguments, flags: ExplainFlags): Promise<ExitCode> {
  const { aim, json, time } = flags;
  const remainingMs = patience(time);
  return carryOut({
    read: async () => readOne(readInputs(paths.board, paths.catalogue, flags)),
    ask: ({ board }) => {
      if (paths.pedal === null) return { kind: 'asked', value: null };
      const faults = pedalFaults(board, { pedal: paths.pedal });
      return faults.length > 0 ? refused(paths.board, faults) : { kind: 'asked', value: pedalId(paths.pedal) };
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

function exitCodeFor(explanation: Explanation): ExitCode {
  if (explanation.kind === 'stopped') return exitCodes.stopped;
  if (explanation.kind === 'impossible') return exitCodes.noPlan;
  return explanation.ended && !explanation.whole ? exitCodes.stopped : exitCodes.plan;
}
