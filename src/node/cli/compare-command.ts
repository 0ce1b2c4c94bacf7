import type { ChoosingAim } from '../../domain/aim.js';
import { escapedText } from '../../domain/shown-text.js';
import { readInputs } from '../disk/read-inputs.js';
import type { Inputs } from '../../reading/inputs-from-text.js';
import { resolvePurchases } from '../../planning/compare/asked-supplies.js';
import type { Bought } from '../../planning/compare/compare.js';
import type { CompareStage, Comparison } from '../../planning/compare/comparison.js';
import type { AskedSupply } from '../../planning/compare/read-purchase.js';
import { comparisonReports } from '../../report/comparison-formats.js';
import { comparisonJson } from '../../report/json/comparison-json.js';
import { comparisonText } from '../../report/screen/comparison-screen.js';
import { compare } from '../threads/planning.js';
import { compareProgressText } from './compare-progress.js';
import { comparisonCode } from './comparison-code.js';
import { exitCodes, type ExitCode } from './exit-codes.js';
import { patience } from './patience.js';
import { printFaults } from './print-faults.js';
import { areReportsWritable, writeReports } from './report-files.js';
import { screenOf } from './screen-of.js';
import { statusLine } from './status-line.js';

export type CompareFlags = {
  readonly aim: ChoosingAim;
  /** How many best purchases. */
  readonly best: number;
  /** Purchases to set beside them. */
  readonly option: readonly (readonly AskedSupply[])[];
  readonly json: boolean;
  /** In seconds, for each board; no limit when left out. */
  readonly time?: number;
  /** The files to write reports to; how a name ends says which. */
  readonly report: readonly string[];
  /** Whether files of reports may be replaced. */
  readonly force?: boolean;
};

/** Reads the two files, sets purchases side by side, prints, writes what reports are asked for, and returns the exit code. */
export async function runCompare(boardPath: string, cataloguePath: string, flags: CompareFlags): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const read = await readInputs(boardPath, cataloguePath);
  if (read.kind === 'faulty') {
    printFaults(read);
    return exitCodes.input;
  }
  const kit = read.value;
  const resolved = resolvePurchases(flags.option, kit.catalogue);
  if (resolved.kind === 'unknown') {
    process.stderr.write(resolved.faults.map((fault) => `${escapedText(`--option: ${fault}`)}\n`).join(''));
    return exitCodes.input;
  }
  const force = flags.force === true;
  if (!(await areReportsWritable(flags.report, [boardPath, cataloguePath], { force }))) return exitCodes.input;
  const comparison = await compareAloud(kit, flags, resolved.purchases, remainingMs);
  process.stdout.write(
    flags.json
      ? comparisonJson(kit, comparison)
      : comparisonText(kit, comparison, screenOf(process.stdout, process.env)),
  );
  const areWritten = await writeReports(flags.report, comparisonReports, { kit, comparison }, { force });
  return areWritten ? comparisonCode(comparison) : exitCodes.input;
}

/** The comparison, with progress on standard error. Ctrl-C asks for what is known so far; a second one ends the process. */
async function compareAloud(
  kit: Inputs,
  { aim, best }: CompareFlags,
  asked: readonly Bought[],
  remainingMs: () => number,
): Promise<Comparison> {
  const interrupt = new AbortController();
  let stage: CompareStage = { kind: 'best', found: 0, wanted: best };
  const progress = statusLine((seconds, width) => compareProgressText(stage, seconds, width));
  const onInterrupt = (): void => {
    progress.end();
    process.stderr.write('Stopping with what is known so far. Ctrl-C again ends at once.\n');
    interrupt.abort();
  };
  process.once('SIGINT', onInterrupt);
  try {
    const { signal } = interrupt;
    const onStage = (reached: CompareStage): void => {
      stage = reached;
    };
    return await compare(kit, { aim, best, asked, remainingMs, signal, onStage });
  } finally {
    progress.end();
    process.removeListener('SIGINT', onInterrupt);
  }
}
