import type { ChoosingAim } from '../../domain/aim.js';
import { pedalId } from '../../domain/quantities.js';
import { escapedText } from '../../domain/shown-text.js';
import { readInputs } from '../disk/read-inputs.js';
import type { Explanation } from '../../planning/explain/explain.js';
import { pedalFaults } from '../../planning/check/output-question.js';
import { explanationJson } from '../../report/json/explain-json.js';
import { explanationText } from '../../report/screen/explain-screen.js';
import { explain } from '../threads/planning.js';
import { exitCodes, type ExitCode } from './exit-codes.js';
import { patience } from './patience.js';
import { printFaults } from './print-faults.js';
import { screenOf } from './screen-of.js';
import { searchAloud } from './search-aloud.js';

export type ExplainFlags = {
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

/** Reads the two files, explains, prints, and returns the exit code. */
export async function runExplain(asked: ExplainArguments, flags: ExplainFlags): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const read = await readInputs(asked.board, asked.catalogue);
  if (read.kind === 'faulty') {
    printFaults(read);
    return exitCodes.input;
  }
  const kit = read.value;
  const faults = asked.pedal === null ? [] : pedalFaults(kit.board, { pedal: asked.pedal });
  if (faults.length > 0) {
    process.stderr.write(faults.map((fault) => `${escapedText(`${asked.board}: ${fault}`)}\n`).join(''));
    return exitCodes.input;
  }
  const pedal = asked.pedal === null ? null : pedalId(asked.pedal);
  const explanation = await searchAloud(kit.board.currency, (aloud) =>
    explain(kit, { aim: flags.aim, ...(pedal === null ? {} : { pedal }), remainingMs, ...aloud }),
  );
  process.stdout.write(
    flags.json
      ? explanationJson(kit, explanation, pedal)
      : explanationText(kit, explanation, pedal, screenOf(process.stdout, process.env)),
  );
  return exitCodeFor(explanation);
}

function exitCodeFor(explanation: Explanation): ExitCode {
  if (explanation.kind === 'stopped') return exitCodes.stopped;
  if (explanation.kind === 'impossible') return exitCodes.noPlan;
  return explanation.ended && !explanation.whole ? exitCodes.stopped : exitCodes.plan;
}
