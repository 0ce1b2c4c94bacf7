import { escapedText } from '../../domain/shown-text.js';
import { readInputs } from '../disk/read-inputs.js';
import { resolveWishes } from '../../planning/rewire/rewire-request.js';
import { answerReports } from '../../report/formats.js';
import { answerJson } from '../../report/json/json.js';
import { answerText } from '../../report/screen/terminal.js';
import { rewire } from '../threads/planning.js';
import { exitCodeOf, exitCodes, type ExitCode } from './exit-codes.js';
import { patience } from './patience.js';
import { printFaults } from './print-faults.js';
import { areReportsWritable, writeReports } from './report-files.js';
import { screenOf } from './screen-of.js';
import { searchAloud } from './search-aloud.js';

export type RewireFlags = {
  /** Ids of pedals that must stay where they are. */
  readonly keep: readonly string[];
  readonly buy: 'allow' | 'never';
  /** In the major units of the board's currency; the board's own budget when left out. */
  readonly budget?: number;
  readonly partial: boolean;
  readonly json: boolean;
  /** In seconds; no limit when left out. */
  readonly time?: number;
  /** The files to write reports to; how a name ends says which. */
  readonly report: readonly string[];
  /** Whether files of reports may be replaced. */
  readonly force?: boolean;
};

/** Reads the files, plans how to re-plug the board, prints, writes what reports are asked for, and returns the exit code. */
export async function runRewire(
  boardPath: string,
  cataloguePath: string | undefined,
  flags: RewireFlags,
): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const read = await readInputs(boardPath, cataloguePath ?? null);
  if (read.kind === 'faulty') {
    printFaults(read);
    return exitCodes.input;
  }
  const kit = read.value;
  const resolved = resolveWishes(kit.board, flags);
  if (resolved.kind === 'faulty') {
    process.stderr.write(resolved.faults.map((fault) => `${escapedText(`${boardPath}: ${fault}`)}\n`).join(''));
    return exitCodes.input;
  }
  const force = flags.force === true;
  const inputs = cataloguePath === undefined ? [boardPath] : [boardPath, cataloguePath];
  if (!(await areReportsWritable(flags.report, inputs, { force }))) return exitCodes.input;
  const answer = await searchAloud(kit.board.currency, (aloud) =>
    rewire(kit, { ...resolved.wishes, partial: flags.partial, remainingMs, ...aloud }),
  );
  process.stdout.write(
    flags.json ? answerJson(kit, answer) : answerText(kit, answer, screenOf(process.stdout, process.env)),
  );
  const areWritten = await writeReports(flags.report, answerReports, { kit, answer }, { force });
  return areWritten ? exitCodeOf(answer) : exitCodes.input;
}
