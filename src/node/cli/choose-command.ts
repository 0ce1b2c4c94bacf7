import type { ChoosingAim } from '../../domain/aim.js';
import { readInputs } from '../disk/read-inputs.js';
import { answerReports } from '../../report/formats.js';
import { answerJson } from '../../report/json/json.js';
import { answerText } from '../../report/screen/terminal.js';
import { choose } from '../threads/planning.js';
import { exitCodeOf, exitCodes, type ExitCode } from './exit-codes.js';
import { patience } from './patience.js';
import { printFaults } from './print-faults.js';
import { isWritable, writeProof } from './proof-file.js';
import { areReportsWritable, writeReports } from './report-files.js';
import { screenOf } from './screen-of.js';
import { searchAloud } from './search-aloud.js';

export type ChooseFlags = {
  readonly aim: ChoosingAim;
  readonly partial: boolean;
  readonly json: boolean;
  /** In seconds; no limit when left out. */
  readonly time?: number;
  /** The file to write the proof to; none is written when left out. */
  readonly proof?: string;
  /** The files to write reports to; how a name ends says which. */
  readonly report: readonly string[];
  /** Whether files of proof and reports may be replaced. */
  readonly force?: boolean;
};

/** Reads the two files, chooses, prints, writes what files are asked for, and returns the exit code. */
export async function runChoose(boardPath: string, cataloguePath: string, flags: ChooseFlags): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const read = await readInputs(boardPath, cataloguePath);
  if (read.kind === 'faulty') {
    printFaults(read);
    return exitCodes.input;
  }
  const force = flags.force === true;
  const target = flags.proof === undefined ? null : { path: flags.proof, overwrite: force };
  const isProofWritable = target === null || (await isWritable(target));
  const areWritable = await areReportsWritable(flags.report, [boardPath, cataloguePath], { force });
  if (!isProofWritable || !areWritable) return exitCodes.input;
  const kit = read.value;
  const { aim, partial } = flags;
  const proof = flags.proof !== undefined;
  const answer = await searchAloud(kit.board.currency, (aloud) =>
    choose(kit, { aim, partial, proof, remainingMs, ...aloud }),
  );
  process.stdout.write(
    flags.json ? answerJson(kit, answer) : answerText(kit, answer, screenOf(process.stdout, process.env)),
  );
  const isProofWritten = target === null || (await writeProof(answer, target));
  const areWritten = await writeReports(flags.report, answerReports, { kit, answer }, { force });
  return isProofWritten && areWritten ? exitCodeOf(answer) : exitCodes.input;
}
