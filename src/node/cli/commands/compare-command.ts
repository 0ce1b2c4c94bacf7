import type { ChoosingAim } from '../../../domain/aim.js';
import type { Inputs } from '../../../reading/inputs-from-text.js';
import { resolvePurchases } from '../../../planning/compare/asked-supplies.js';
import type { Bought } from '../../../planning/compare/compare.js';
import type { CompareStage, Comparison } from '../../../planning/compare/comparison.js';
import type { AskedSupply } from '../../../planning/compare/read-purchase.js';
import { comparisonReports } from '../../../report/comparison-formats.js';
import { comparisonJson } from '../../../report/json/comparison-codec.js';
import { comparisonText } from '../../../report/screen/comparison-screen.js';
import { readInputs } from '../../disk/read-inputs.js';
import { compare } from '../../threads/planning.js';
import { comparisonCode } from '../comparison-code.js';
import type { ExitCode } from '../exit-codes.js';
import { patience } from '../patience.js';
import { carryOut, readOne, refused } from '../pipeline.js';
import { compareProgressText } from '../progress/compare-progress.js';
import { statusLine } from '../progress/status-line.js';
import { comparisonFiles } from '../written/report-files.js';

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

/** Sets purchases side by side, and returns the exit code. */
export async function runCompare(boardPath: string, cataloguePath: string, flags: CompareFlags): Promise<ExitCode> {
  const remainingMs = patience(flags.time);
  const { option, json, report, force = false } = flags;
  return carryOut({
    read: async () => readOne(readInputs(boardPath, cataloguePath)),
    ask: ({ catalogue }) => {
      const resolved = resolvePurchases(option, catalogue);
      return resolved.kind === 'unknown'
        ? refused('--option', resolved.faults)
        : { kind: 'asked', value: resolved.purchases };
    },
    files: comparisonFiles(report, comparisonReports, [boardPath, cataloguePath], { force }),
    call: async (kit, purchases) => compareAloud(kit, flags, purchases, remainingMs),
    json,
    print: {
      json: comparisonJson,
      screen: (kit, comparison, _, options) => comparisonText(kit, comparison, options),
    },
    code: comparisonCode,
  });
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
